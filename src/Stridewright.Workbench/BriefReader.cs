using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Turns wishes in a person's words into a brief; all faults are found at once.</summary>
internal sealed class BriefReader(ITools tools)
{
    /// <summary>Tempi beyond these are typing errors: a beat of six seconds, or one of an eighth of a second.</summary>
    public const double Slowest = 10,
        Fastest = 480;

    /// <summary>Signatures are written with up to seven accidentals; so are tonics here.</summary>
    private const int FurthestFifth = 7;

    private readonly List<Problem> _faults = [];

    public ValueList<Problem> Faults => _faults.ToValueList();

    public Brief Read(Wishes wishes)
    {
        var brief = new Brief();
        if (wishes.Level is not null && (wishes.LeftLevel is not null || wishes.RightLevel is not null))
        {
            Fault("level", WorkbenchMessages.BothLevels);
        }
        CheckManners(wishes.Play);
        return brief with
        {
            Feel = wishes.Feel is { } feel ? FeelOf(feel) : null,
            LeftLevel = LevelOf("left", wishes.LeftLevel) ?? LevelOf("level", wishes.Level) ?? brief.LeftLevel,
            RightLevel = LevelOf("right", wishes.RightLevel) ?? wishes.Level ?? brief.RightLevel,
            Raggedness = RaggednessOf(wishes.Raggedness) ?? brief.Raggedness,
            Tonic = wishes.Key is { } key ? TonicOf(key) : null,
            BeatsPerMinute = TempoOf(wishes.BeatsPerMinute),
            Hands = HandsOf(wishes.Span, wishes.OctaveWidth) with { NoOctaves = wishes.NoOctaves },
            LeftHandOnly = wishes.LeftHandOnly,
            Lyrics = wishes.Lyrics,
            LeftManners = Chosen(wishes.Play, Manners.Left),
            RightManners = Chosen(wishes.Play, Manners.Right),
            Harmony = HarmonyOf(wishes),
            Form =
                wishes.Form is { } form ? FormOf(form)
                : wishes.Minutes is null ? null
                : FormLine.Usual,
            Seconds = wishes.Minutes is { } minutes ? SecondsOf(minutes) : null,
            ShowPlain = wishes.ShowPlain,
            Singer = SingerOf(wishes),
            Seed = wishes.Seed ?? brief.Seed,
        };
    }

    public PlayerHands HandsOf(string? span, string? octaveWidth)
    {
        var hands = new PlayerHands();
        if (octaveWidth is not null)
        {
            var read = tools.TryReadOctaveWidth(octaveWidth, out var mm, out var problem);
            hands = read ? hands with { OctaveMm = mm } : Fault("octave-width", problem, hands);
        }
        if (span is not null)
        {
            var read = tools.TryReadSpan(span, hands.OctaveMm, out var mm, out var problem);
            hands = read ? hands with { SpanMm = mm } : Fault("span", problem, hands);
        }
        return hands;
    }

    public double? TempoOf(double? given)
    {
        if (given is { } bpm && !(bpm >= Slowest && bpm <= Fastest))
        {
            Fault("bpm", WorkbenchMessages.Tempo(bpm, Slowest, Fastest));
        }
        return given;
    }

    private Feel? FeelOf(string text)
    {
        Feel? feel = text.ToLowerInvariant() switch
        {
            "classic" => Feel.Classic,
            "stride" => Feel.Stride,
            "waltz" => Feel.Waltz,
            "six-eight" => Feel.SixEight,
            _ => null,
        };
        if (feel is null)
        {
            Fault("feel", WorkbenchMessages.Feel(text));
        }
        return feel;
    }

    private static ValueList<T> Chosen<T>(ValueList<string> words, IReadOnlyDictionary<string, T> manners) =>
        words.Select(w => w.ToLowerInvariant()).Where(manners.ContainsKey).Select(w => manners[w]).ToValueList();

    private void CheckManners(ValueList<string> words)
    {
        var known = Manners.Left.Keys.Concat(Manners.Right.Keys).ToList();
        foreach (var word in words.Where(w => !known.Contains(w.ToLowerInvariant())))
        {
            Fault("play", WorkbenchMessages.Manner(word, string.Join(", ", known)));
        }
    }

    private HarmonyWish HarmonyOf(Wishes wishes)
    {
        Richness? richness = wishes.Harmony?.ToLowerInvariant() switch
        {
            null or "plain" => Richness.Plain,
            "seasoned" => Richness.Seasoned,
            "rich" => Richness.Rich,
            _ => null,
        };
        if (richness is null)
        {
            Fault("harmony", WorkbenchMessages.Harmony(wishes.Harmony!));
        }
        var without = new List<HarmonyChangeKind>();
        foreach (var word in wishes.Without)
        {
            var found = Enum.GetValues<HarmonyChangeKind>()
                .Where(k => Words.Of(k).Equals(word, StringComparison.OrdinalIgnoreCase))
                .ToList();
            if (found.Count == 0)
            {
                var kinds = string.Join(", ", Enum.GetValues<HarmonyChangeKind>().Select(Words.Of));
                Fault("without", WorkbenchMessages.HarmonyKind(word, kinds));
            }
            without.AddRange(found);
        }
        return new HarmonyWish { Richness = richness ?? Richness.Plain, Without = without.ToValueList() };
    }

    private Singer? SingerOf(Wishes wishes)
    {
        VocalRange? range = null;
        if (wishes.Range is { } text && !VocalRange.TryRead(text, out range, out var problem))
        {
            Fault("range", problem);
        }
        return wishes.Accompany ? new Singer(range) : null;
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
        if (Tone.TryParse(text, out var tone) && Math.Abs(tone.Fifths) <= FurthestFifth)
        {
            return tone;
        }
        Fault("key", WorkbenchMessages.Key(text));
        return null;
    }

    private void Fault(string wish, string message) => _faults.Add(new Problem(wish, null, "", message));

    private PlayerHands Fault(string wish, string message, PlayerHands unchanged)
    {
        Fault(wish, message);
        return unchanged;
    }
}
