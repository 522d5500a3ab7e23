using CsCheck;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests;

/// <summary>Tunes for tests: from text, and at random.</summary>
internal static class Tunes
{
    private static readonly Metre[] Metres =
    [
        Metre.TwoFour,
        Metre.FourFour,
        new(2, 2, MetreSign.Cut),
        Metre.ThreeFour,
        Metre.SixEight,
        new(9, 8),
        new(3, 2),
        new(5, 4),
    ];

    private const int Lowest = 44,
        Highest = 100;

    // 48ths of a whole note; negative: a rest.
    private static readonly int[] Lengths = [3, 6, 6, 12, 12, 12, 18, 24, 4, 4, 8, -6, -12];

    private static readonly string[] Symbols =
    [
        "C",
        "F",
        "G7",
        "Am",
        "Dm7",
        "E7",
        "F#dim7",
        "Bb",
        "Ebmaj7",
        "C/E",
        "D7b9",
        "Gsus4",
        "N.C.",
        "Caug",
        "Bm7b5",
        "Ab6",
        "G9",
    ];

    /// <summary>A tune written in ABC without the usual first fields.</summary>
    public static Tune Abc(string head, string body) =>
        AbcReader.Read(new StringReader($"X:1\nT:Test\n{head}\n{body}\n")).Value![0];

    /// <summary>The tunes that come with the project.</summary>
    public static IReadOnlyList<Tune> Samples { get; } =
    [
        .. Directory
            .EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*.abc")
            .Order(StringComparer.Ordinal)
            .Select(file => AbcReader.Read(new StringReader(File.ReadAllText(file))).Value![0]),
    ];

    /// <summary>Tunes with everything that may stand in one: pick-ups, repeats, endings, rests, wide leaps, quick notes,
    /// triplets, odd chord symbols, far keys.</summary>
    public static Gen<Tune> Any { get; } = Of(1);

    /// <summary>The same with leaps of up to four octaves and a half.</summary>
    public static Gen<Tune> Wild { get; } = Of(4);

    private static Gen<Tune> Of(int stretch) =>
        from metre in Gen.Int[0, Metres.Length - 1].Select(i => Metres[i])
        from sharps in Gen.Int[-6, 6]
        from minor in Gen.Bool
        from bars in Bar(metre).Array[1, 12]
        from form in Gen.Int[0, 3]
        from pickUp in Gen.Bool
        from octave in Gen.Int[-1, 2]
        select Build(
            metre,
            Key.FromSignature(sharps, minor ? Mode.Minor : Mode.Major),
            [.. bars.Select(b => b with { Keys = [.. b.Keys.Select(k => k * stretch)] })],
            form,
            pickUp,
            octave
        );

    private static Gen<(int[] Lengths, int[] Keys, int Symbol)> Bar(Metre metre) =>
        from lengths in Gen.Int[0, Lengths.Length - 1].Select(i => Lengths[i]).Array[1, 14]
        from keys in Gen.Int[-9, 12].Array[14]
        from symbol in Gen.Int[-8, Symbols.Length - 1]
        select (lengths, keys, symbol);

    private static Tune Build(
        Metre metre,
        Key key,
        (int[] Lengths, int[] Keys, int Symbol)[] bars,
        int form,
        bool pickUp,
        int octave
    )
    {
        var built = new List<TuneBar>();
        for (var i = 0; i < bars.Length; i++)
        {
            var isPickUp = pickUp && i == 0 && bars.Length > 1;
            var length = isPickUp ? new ScoreTime(1, metre.Unit) : metre.BarLength;
            built.Add(
                new TuneBar
                {
                    Number = i.ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Metre = metre,
                    Key = key,
                    Length = length,
                    Notes = Notes(bars[i].Lengths, bars[i].Keys, length, key, octave),
                    Chords =
                        bars[i].Symbol >= 0 && ChordText.TryParse(Symbols[bars[i].Symbol], out var chord)
                            ? [new PlacedChord(ScoreTime.Zero, chord)]
                            : [],
                    Marks = new BarMarks
                    {
                        RepeatStart = form == 1 && i == (pickUp ? 1 : 0),
                        RepeatEnd = form is 1 or 2 && i == bars.Length / 2 ? 2 : 0,
                        Ending =
                            form == 2 && i == bars.Length / 2 ? [1]
                            : form == 2 && i == bars.Length / 2 + 1 ? [2]
                            : [],
                        DoubleBarAfter = form == 3 && i % 4 == 3,
                    },
                }
            );
        }
        return new Tune { Title = "Any", Bars = built.ToValueList() };
    }

    // Lengths are 48ths of a whole note; negative ones are rests.
    private static ValueList<TuneNote> Notes(int[] lengths, int[] keys, ScoreTime bar, Key key, int octave)
    {
        var notes = new List<TuneNote>();
        var at = ScoreTime.Zero;
        for (var i = 0; i < lengths.Length && at < bar; i++)
        {
            var length = ScoreTime.Min(new ScoreTime(Math.Abs(lengths[i]), 48), bar - at);
            if (lengths[i] > 0)
            {
                var midi = Math.Clamp(67 + keys[i] + 12 * octave, Lowest, Highest);
                notes.Add(new TuneNote(at, length, Pitch.At(midi, key.Spell(midi))));
            }
            at += length;
        }
        return notes.ToValueList();
    }
}
