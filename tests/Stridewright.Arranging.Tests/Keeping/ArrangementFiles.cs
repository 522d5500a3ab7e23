using CsCheck;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Keeping;

/// <summary>Random arrangement files in which everything may be set.</summary>
internal static class ArrangementFiles
{
    private static readonly Gen<Pitch> Pitches =
        from midi in Gen.Int[21, 108]
        from sharps in Gen.Int[-7, 7]
        select Pitch.At(midi, Key.FromSignature(sharps, Mode.Major).Spell(midi));

    private static readonly Gen<ScoreTime> Times =
        from above in Gen.Int[0, 40]
        from below in Gen.Int[1, 7].Select(i => i == 7 ? 48 : 1 << (i - 1))
        select new ScoreTime(above, below);

    private static readonly Gen<KeptStroke> Strokes =
        from at in Times
        from length in Times
        from pitches in Pitches.Array[1, 4]
        from role in Gen.Int[0, 3].Select(i => ((string[])["bass", "chord", "tune", "fill-in"])[i])
        from rolled in Gen.Bool
        from graces in Pitches.Array[0, 2]
        from voice in Gen.Int[1, 2]
        from tune in Gen.Int[-5, 900]
        select new KeptStroke(
            at,
            length.IsZero ? ScoreTime.Sixteenth : length,
            pitches.DistinctBy(p => p.Midi).Order().ToValueList(),
            role,
            rolled,
            graces.ToValueList(),
            voice,
            tune < 0 ? null : tune
        );

    private static readonly Gen<KeptBar> KeptBars =
        from bar in Gen.Int[0, 300]
        from hand in Gen.Enum<Hand>()
        from strokes in Strokes.Array[0, 5]
        from leftOut in Gen.Int[0, 99].Array[0, 3]
        select new KeptBar(bar, hand, strokes.OrderBy(s => s.At).ToValueList())
        {
            LeftOut = leftOut.Distinct().ToValueList(),
        };

    private static readonly Gen<FormLine?> Forms =
        from parts in Gen.Int[0, 9].Array[0, 6]
        from letters in Gen.Char['A', 'Z'].Array[7]
        from manners in Gen.Int[0, 21].Array[7]
        select parts.Length == 0
            ? null
            : FormLine.Read(
                "A " + string.Join("  ", parts.Select((p, i) => FormPart(p, letters[i], manners[i]))),
                out _
            );

    private static readonly Gen<Brief> Briefs =
        from feel in Gen.Int[-1, 3].Select(i => i < 0 ? (Feel?)null : (Feel)i)
        from left in Gen.Int[1, 6]
        from right in Gen.Int[1, 6]
        from raggedness in Gen.Double[0, 1]
        from tonic in Gen.Int[-9, 7]
        from tempo in Gen.Double[-200, 480]
        from span in Gen.Double[120, 300]
        from octave in Gen.Double[120, 180]
        from flags in Gen.Bool.Array[5]
        from singer in Gen.Select(Gen.Int[0, 2], Gen.Int[24, 60], Gen.Int[1, 30])
        from harmony in Gen.Select(Gen.Enum<Richness>(), Gen.Enum<HarmonyChangeKind>().Array[0, 3])
        from manners in Gen.Select(Gen.Enum<LeftManner>().Array[0, 3], Gen.Enum<RightManner>().Array[0, 3])
        from form in Forms
        from kept in KeptBars.Array[0, 4]
        from seed in Gen.Int
        select new Brief
        {
            Feel = feel,
            LeftLevel = left,
            RightLevel = right,
            Raggedness = raggedness,
            Tonic = tonic < -7 ? null : new Tone(tonic),
            BeatsPerMinute = tempo < 10 ? null : tempo,
            Hands = new PlayerHands
            {
                SpanMm = span,
                OctaveMm = octave,
                NoOctaves = flags[0],
                NoStrain = flags[1],
            },
            LeftHandOnly = flags[2],
            Lyrics = flags[3],
            ShowPlain = flags[4],
            Singer =
                singer.Item1 == 0 ? null
                : singer.Item1 == 1 ? new Singer()
                : new Singer(new VocalRange(SungAt(singer.Item2), SungAt(singer.Item2 + singer.Item3))),
            Harmony = new HarmonyWish { Richness = harmony.Item1, Without = harmony.Item2.ToValueList() },
            LeftManners = manners.Item1.ToValueList(),
            RightManners = manners.Item2.ToValueList(),
            Form = form,
            Kept = kept.DistinctBy(k => (k.Bar, k.Hand)).ToValueList(),
            Seed = seed,
        };

    public static Gen<ArrangementFile> Any { get; } =
        from brief in Gen.Frequency((5, Briefs), (1, Gen.Int[1, 1].Select(_ => new Brief())))
        from figures in Gen.Int[0, 2]
        select new ArrangementFile(
            brief,
            Enumerable
                .Range(1, figures)
                .Select(i => new FigureText($"run home {i}", ["over ii7 V7", "  left: figure 1", "tune"]))
                .ToValueList(),
            "X:1\nT:Lamps\nK:C\nCDEF|\n"
        );

    private static Pitch SungAt(int midi) => Pitch.At(midi, default(Key).Spell(midi));

    private static string FormPart(int part, char letter, int manner)
    {
        var name = part switch
        {
            0 => "intro",
            1 => "vamp",
            2 => $"trio:{letter}",
            3 => "tag",
            4 => "end",
            _ => letter.ToString(),
        };
        string[] words = [.. Manners.Left.Keys, .. Manners.Right.Keys, "high", "breaks", "ff"];
        return manner < words.Length && manner % 3 > 0 ? $"{name}({words[manner]}, {words[manner / 2]})" : name;
    }
}
