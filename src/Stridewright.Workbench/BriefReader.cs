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

    /// <summary>Spans from a small child's hand to more than the largest published (trade.md: 241 mm), in mm.</summary>
    public const double SmallestSpan = 100,
        LargestSpan = 320;

    /// <summary>Octaves from the narrowest keyboards made (about 140 mm) outwards, in mm.</summary>
    public const double NarrowestOctave = 120,
        WidestOctave = 200;

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
        return brief with
        {
            Feel = wishes.Feel is { } feel ? FeelOf(feel) : null,
            LeftLevel = LevelOf("left", wishes.LeftLevel) ?? LevelOf("level", wishes.Level) ?? brief.LeftLevel,
            RightLevel = LevelOf("right", wishes.RightLevel) ?? wishes.Level ?? brief.RightLevel,
            Raggedness = RaggednessOf(wishes.Raggedness) ?? brief.Raggedness,
            Tonic = wishes.Key is { } key ? TonicOf(key) : null,
            BeatsPerMinute = TempoOf(wishes.BeatsPerMinute),
            Hands = HandsOf(wishes.Span, wishes.OctaveWidth) with { NoOctaves = wishes.NoOctaves },
            Seed = wishes.Seed ?? brief.Seed,
        };
    }

    public PlayerHands HandsOf(string? span, string? octaveWidth)
    {
        var usual = new PlayerHands();
        var octave = octaveWidth is null ? usual.OctaveMm : OctaveOf(octaveWidth, usual.OctaveMm);
        return new PlayerHands
        {
            OctaveMm = octave,
            SpanMm = span is null ? usual.SpanMm : MmOf("span", span, octave, SmallestSpan, LargestSpan, usual.SpanMm),
        };
    }

    public double? TempoOf(double? given)
    {
        if (given is { } bpm && !(bpm >= Slowest && bpm <= Fastest))
        {
            Fault("bpm", WorkbenchMessages.Tempo(bpm, Slowest, Fastest));
        }
        return given;
    }

    private double OctaveOf(string text, double usual)
    {
        if (text.Length == 0 || !char.IsAsciiDigit(text[0]))
        {
            Fault("octave-width", WorkbenchMessages.OctaveInFigures);
            return usual;
        }
        return MmOf("octave-width", text, usual, NarrowestOctave, WidestOctave, usual);
    }

    private double MmOf(string wish, string text, double octaveMm, double lowest, double highest, double usual)
    {
        if (!tools.TryReadSpan(text, octaveMm, out var mm, out var error))
        {
            Fault(wish, error);
            return usual;
        }
        if (!(mm >= lowest && mm <= highest))
        {
            Fault(wish, WorkbenchMessages.Width(text, lowest, highest));
            return usual;
        }
        return mm;
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
}
