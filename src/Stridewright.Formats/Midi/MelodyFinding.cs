namespace Stridewright.Formats.Midi;

/// <summary>
/// Which part has the tune. A name that says so counts most; else the part that is most like one: one note at a time, high,
/// about one to four notes a beat, sounding most of the time, over a scale's worth of tones (common practice).
/// </summary>
internal static class MelodyFinding
{
    private const double NameWeight = 4,
        SingleWeight = 1.5,
        HeightWeight = 1.5;

    private static readonly string[] Tune =
    [
        "melod",
        "lead",
        "vocal",
        "voice",
        "vox",
        "tune",
        "sopran",
        "solo",
        "song",
    ];
    private static readonly string[] Other =
    [
        "bass",
        "drum",
        "chord",
        "accomp",
        "pad",
        "left",
        "guitar",
        "comp",
        "tenor",
    ];

    public static MidiPart Find(IReadOnlyList<MidiPart> parts, int ticksPerQuarter)
    {
        var span = parts.Max(p => p.Strokes.Max(s => s.End)) - parts.Min(p => p.Strokes[0].Tick);
        return parts.MaxBy(p => Likeness(p, ticksPerQuarter, span))!;
    }

    private static double Likeness(MidiPart part, int ticksPerQuarter, long span)
    {
        var groups = MidiPart.Struck([.. part.Strokes], ticksPerQuarter).ToList();
        var single = groups.Count(g => g.Count == 1) / (double)groups.Count;
        // From C3 (0) to C6 (1).
        var height = Math.Clamp((groups.Average(g => g.Max(s => s.Key)) - 48) / 36, 0, 1);
        var sounding = Sounding(part);
        var rate = groups.Count / Math.Max(1, sounding / (double)ticksPerQuarter);
        var pace = Math.Clamp(rate < 1 ? rate : 4 / rate, 0, 1);
        var tones = Math.Min(1, part.Strokes.Select(s => s.Key % 12).Distinct().Count() / 7.0);
        return NameWeight * NameSays(part.Name)
            + SingleWeight * single
            + HeightWeight * height
            + pace
            + tones
            + sounding / (double)Math.Max(1, span);
    }

    private static int NameSays(string name)
    {
        bool Holds(string word) => name.Contains(word, StringComparison.OrdinalIgnoreCase);
        return Tune.Any(Holds) ? 1
            : Other.Any(Holds) ? -1
            : 0;
    }

    // Ticks in which at least one key is down.
    private static long Sounding(MidiPart part)
    {
        long sounding = 0,
            until = 0;
        foreach (var stroke in part.Strokes)
        {
            sounding += Math.Max(0, stroke.End - Math.Max(until, stroke.Tick));
            until = Math.Max(until, stroke.End);
        }
        return sounding;
    }
}
