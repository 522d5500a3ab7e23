using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Turns wishes in a person's words into a brief; all faults are found at once.</summary>
internal sealed class BriefReader(ITools tools)
{
    private readonly List<Problem> _faults = [];

    public ValueList<Problem> Faults => _faults.ToValueList();

    /// <param name="before">Holds where nothing is wished; null: the usual.</param>
    public Brief Read(Wishes wishes, Brief? before = null)
    {
        var brief = before ?? new Brief();
        if (wishes.Level is not null && (wishes.LeftLevel is not null || wishes.RightLevel is not null))
        {
            Fault("level", WorkbenchMessages.BothLevels);
        }
        if (wishes.Effort is not null && (wishes.Level ?? wishes.LeftLevel ?? wishes.RightLevel) is not null)
        {
            Fault("effort", WorkbenchMessages.EffortAndLevel);
        }
        CheckManners(wishes.Play);
        var hands = (PlayerOf(wishes.Player) ?? PlayerIn(wishes.PlayerText))?.Hands ?? brief.Hands;
        return brief with
        {
            Feel = wishes.Feel is { } feel ? FeelOf(feel) : brief.Feel,
            LeftLevel = LevelOf("left", wishes.LeftLevel) ?? LevelOf("level", wishes.Level) ?? brief.LeftLevel,
            RightLevel = LevelOf("right", wishes.RightLevel) ?? wishes.Level ?? brief.RightLevel,
            MostEffort = EffortOf(wishes.Effort) ?? brief.MostEffort,
            Raggedness = RaggednessOf(wishes.Raggedness) ?? brief.Raggedness,
            Tonic = wishes.Key is { } key ? TonicOf(key) : brief.Tonic,
            BeatsPerMinute = TempoOf(wishes.BeatsPerMinute) ?? brief.BeatsPerMinute,
            Hands = HandsOf(wishes.Span, wishes.OctaveWidth, hands) with
            {
                NoOctaves = wishes.NoOctaves || hands.NoOctaves,
            },
            LeftHandOnly = wishes.LeftHandOnly || brief.LeftHandOnly,
            Lyrics = wishes.Lyrics || brief.Lyrics,
            LeftManners = wishes.Play.Count > 0 ? Chosen(wishes.Play, Manners.Left) : brief.LeftManners,
            RightManners = wishes.Play.Count > 0 ? Chosen(wishes.Play, Manners.Right) : brief.RightManners,
            Harmony = HarmonyOf(wishes, brief.Harmony),
            Form =
                wishes.Form is { } form ? FormOf(form)
                : wishes.Minutes is null ? brief.Form
                : brief.Form ?? FormLine.Usual,
            Seconds = wishes.Minutes is { } minutes ? SecondsOf(minutes) : brief.Seconds,
            ShowPlain = wishes.ShowPlain || brief.ShowPlain,
            Singer = SingerOf(wishes, brief.Singer),
            Seed = wishes.Seed ?? brief.Seed,
        };
    }

    /// <param name="before">Hold where nothing is wished; null: the usual.</param>
    public PlayerHands HandsOf(string? span, string? octaveWidth, PlayerHands? before = null)
    {
        var hands = before ?? new PlayerHands();
        if (octaveWidth is not null)
        {
            var read = tools.TryReadOctaveWidth(octaveWidth, out var mm, out var problem);
            hands = read ? hands with { OctaveMm = mm } : Fault("octave-width", problem, hands);
        }
        if (span is not null)
        {
            var read = tools.TryReadSpan(span, hands.OctaveMm, out var mm, out var problem);
            hands = read ? hands.WithSpan(mm) : Fault("span", problem, hands);
        }
        return hands;
    }

    /// <summary>The player of a file; null without one, and where it cannot be read.</summary>
    public Player? PlayerOf(string? file)
    {
        var faults = new List<Problem>();
        var player = file is null ? null : PlayerFile.Read(file, faults, CancellationToken.None);
        _faults.AddRange(faults.Select(f => f with { File = "player" }));
        return player;
    }

    /// <summary>Figures of an arrangement file, at least one of a kind; a file or a figure that cannot be read is a
    /// fault.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public ValueList<(FigureText Text, OwnFigure Figure)> FiguresOf(string file, CancellationToken cancellation)
    {
        var stored = StoredArrangement.At(tools, file, out var problems, cancellation);
        var figures = new List<(FigureText, OwnFigure Figure)>();
        foreach (var text in stored?.File.Figures ?? [])
        {
            if (OwnFigures.Read(text.Lines, out var unread) is { } figure)
            {
                figures.Add((text, figure));
            }
            else
            {
                problems.Add(new Problem("", null, text.Name, unread!));
            }
        }
        if (problems.Count == 0 && figures.TrueForAll(f => f.Figure.Kind is null))
        {
            problems.Add(new Problem("", null, "", WorkbenchMessages.NoFiguresOfAKind(OwnFigures.Kinds.Keys)));
        }
        _faults.AddRange(problems.Select(p => p with { File = "figures" }));
        return figures.ToValueList();
    }

    private Player? PlayerIn(string? text)
    {
        if (text is null)
        {
            return null;
        }
        var reading = PlayerText.Read(text);
        _faults.AddRange(reading.Diagnostics.Select(d => new Problem("player", null, d.Place.ToString(), d.Message)));
        return reading.Value;
    }

    /// <param name="given">Null: all of them.</param>
    public KeptFingers KeepOf(string? given) =>
        given?.ToLowerInvariant() switch
        {
            null or "all" => KeptFingers.All,
            "edited" => KeptFingers.Edited,
            "none" => KeptFingers.None,
            _ => Fault("keep", WorkbenchMessages.Keep(given), KeptFingers.All),
        };

    /// <param name="given">Null: all fingers.</param>
    public FingerDensity DensityOf(string? given) =>
        given?.ToLowerInvariant() switch
        {
            null or "all" => FingerDensity.All,
            "changes" => FingerDensity.Changes,
            "hard" => FingerDensity.Hard,
            _ => Fault("density", WorkbenchMessages.Density(given), FingerDensity.All),
        };

    public double? TempoOf(double? given)
    {
        if (given is { } bpm && !(bpm >= Brief.SlowestBeats && bpm <= Brief.FastestBeats))
        {
            Fault("bpm", WorkbenchMessages.Tempo(bpm, Brief.SlowestBeats, Brief.FastestBeats));
        }
        return given;
    }

    private Feel? FeelOf(string text)
    {
        var feel = BriefWords.Feels.Find(text);
        if (feel is null)
        {
            Fault("feel", WorkbenchMessages.Feel(text));
        }
        return feel;
    }

    private static ValueList<T> Chosen<T>(ValueList<string> words, IReadOnlyDictionary<string, T> known)
        where T : struct => words.Select(w => known.Find(w)).OfType<T>().ToValueList();

    private void CheckManners(ValueList<string> words)
    {
        var known = Manners.Left.Keys.Concat(Manners.Right.Keys).ToList();
        foreach (var word in words.Where(w => !known.Contains(w.ToLowerInvariant())))
        {
            Fault("play", WorkbenchMessages.Manner(word, string.Join(", ", known)));
        }
    }

    private HarmonyWish HarmonyOf(Wishes wishes, HarmonyWish before)
    {
        var richness = wishes.Harmony is { } word ? BriefWords.Richnesses.Find(word) : before.Richness;
        if (richness is null)
        {
            Fault("harmony", WorkbenchMessages.Harmony(wishes.Harmony!));
        }
        var single = wishes.Without.Select(UnwantedChange.Read).OfType<UnwantedChange>().ToValueList();
        var kindWords = wishes.Without.Where(w => UnwantedChange.Read(w) is null).ToValueList();
        foreach (var unknown in kindWords.Where(w => BriefWords.HarmonyChanges.Find(w) is null))
        {
            var kinds = string.Join(", ", BriefWords.HarmonyChanges.Keys);
            Fault("without", WorkbenchMessages.HarmonyKind(unknown, kinds));
        }
        return new HarmonyWish
        {
            Richness = richness ?? before.Richness,
            Without = wishes.Without.Count > 0 ? Chosen(kindWords, BriefWords.HarmonyChanges) : before.Without,
            WithoutAt = wishes.Without.Count > 0 ? single : before.WithoutAt,
        };
    }

    private Singer? SingerOf(Wishes wishes, Singer? before)
    {
        var range = before?.Range;
        if (wishes.Range is { } text && !VocalRange.TryRead(text, out range, out var problem))
        {
            Fault("range", problem);
        }
        return wishes.Accompany || before is not null ? new Singer(range) : null;
    }

    private FormLine? FormOf(string text)
    {
        if (text == "plain")
        {
            return null;
        }
        var form = FormLine.Read(text, out var fault);
        if (fault is not null)
        {
            Fault("form", fault);
        }
        return form;
    }

    private double? SecondsOf(string text)
    {
        var seconds = Durations.Seconds(text);
        if (seconds is not (>= Durations.Shortest and <= Durations.Longest))
        {
            Fault("minutes", WorkbenchMessages.Minutes(text));
        }
        return seconds;
    }

    private int? LevelOf(string wish, int? given)
    {
        if (given is { } level && level is < Brief.LowestLevel or > Brief.HighestLevel)
        {
            Fault(wish, WorkbenchMessages.Level(level, Brief.LowestLevel, Brief.HighestLevel));
        }
        return given;
    }

    private double? EffortOf(double? given)
    {
        if (given is { } most && !(most >= Brief.LeastEffort && most <= Brief.GreatestEffort))
        {
            Fault("effort", WorkbenchMessages.Effort(most));
        }
        return given;
    }

    private double? RaggednessOf(double? given)
    {
        if (given is { } share && share is not (>= 0 and <= 1))
        {
            Fault("raggedness", WorkbenchMessages.Raggedness(share));
        }
        return given;
    }

    private Tone? TonicOf(string text)
    {
        if (Tone.TryParse(text, out var tone) && Math.Abs(tone.Fifths) <= Brief.FurthestTonic)
        {
            return tone;
        }
        Fault("key", WorkbenchMessages.Key(text));
        return null;
    }

    private void Fault(string wish, string message) => _faults.Add(new Problem(wish, null, "", message));

    private T Fault<T>(string wish, string message, T unchanged)
    {
        Fault(wish, message);
        return unchanged;
    }
}
