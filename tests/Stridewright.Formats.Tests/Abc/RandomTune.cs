using CsCheck;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Random tunes with everything that a tune may hold, at any place, sensible or not.</summary>
internal static class RandomTune
{
    private static readonly Metre[] Metres =
    [
        Metre.TwoFour,
        Metre.FourFour,
        new(4, 4, MetreSign.Common),
        new(2, 2, MetreSign.Cut),
        Metre.ThreeFour,
        Metre.SixEight,
        new(12, 8),
        new(5, 4),
        new(7, 16),
    ];

    // Of a whole note: plain, dotted, and in tuplets of 3, 5, 7, 9, 11 and of tuplets.
    private static readonly ScoreTime[] Lengths =
    [
        .. "1/8 1/4 1/16 3/16 3/8 1/2 1/32 7/32 1/12 1/12 1/12 1/6 1/24 1/20 1/10 1/28 1/36 1/18 1/44 1/60 5/4"
            .Split(' ')
            .Select(t => new ScoreTime(int.Parse(t.Split('/')[0]), int.Parse(t.Split('/')[1]))),
    ];

    private static readonly string[] Symbols =
        "C G7 F#m7b5 Bb7(b9)/D N.C. Ebmaj7#5 D/F# A7sus4 C(add4)(no5) Gdim7 Cger6 E7(#9)(b13)/G# Am(maj9) Fb Cped".Split(
            ' '
        );

    private static readonly string[] Names =
    [
        "A",
        "B",
        "Trio",
        "] a",
        "%",
        "x..y",
        "Ça \\% \\u0041 ",
        "1",
        "\u266d\ud834\udd1e",
    ];

    private static readonly string[] Syllables =
    [
        "la",
        "Don't",
        "to-day",
        "a b",
        "*",
        "_",
        "|x",
        "~",
        "%",
        "\\",
        "\\-",
        " ",
        "é",
        "5.",
        "\u00a0",
        "\\u0041",
        "w:",
    ];

    private static readonly Gen<Pitch> Pitches =
        from midi in Gen.Int[55, 72]
        from fifths in Gen.Int[-1, 1].Select(i => 12 * i)
        select Pitch.At(midi, new Tone(7 * midi % 12 + fifths));

    private static readonly Gen<Lyric> Lyrics =
        from verse in Gen.Frequency((8, Gen.Int[1, 3]), (1, Gen.Const(42)))
        from text in Of(Syllables)
        from hyphen in Gen.Bool
        from extends in Gen.Bool
        select new Lyric(verse, text, hyphen, extends);

    private static readonly Gen<TuneNote> Notes =
        from length in Of(Lengths)
        from pitch in Pitches
        from isRest in Gen.Int[0, 5].Select(i => i == 0)
        from graces in Gen.Frequency((6, Gen.Const(Array.Empty<Pitch>())), (1, Pitches.Array[1, 3]))
        from lyrics in Gen.Frequency((2, Gen.Const(Array.Empty<Lyric>())), (1, Lyrics.Array[1, 3]))
        select new TuneNote(isRest ? new ScoreTime(-1, 1) : default, length, pitch)
        {
            Graces = graces.ToValueList(),
            Lyrics = lyrics.OrderBy(l => l.Verse).ToValueList(),
        };

    private static readonly Gen<BarMarks> Marks =
        from start in Gen.Int[0, 4]
        from end in Gen.Int[-8, 5]
        from ending in Gen.Frequency((4, Gen.Const(Array.Empty<int>())), (1, Gen.Int[1, 12].Array[1, 3]))
        from isDouble in Gen.Int[0, 5]
        from isFinal in Gen.Int[0, 7]
        select new BarMarks
        {
            RepeatStart = start == 0,
            RepeatEnd = end < 2 ? 0 : end,
            Ending = ending.Distinct().Order().ToValueList(),
            DoubleBarAfter = isDouble == 0,
            FinalBarAfter = isFinal == 0,
        };

    private static readonly Gen<(Metre Metre, Key Key)> Signs =
        from metre in Of(Metres)
        from sharps in Gen.Frequency((9, Gen.Int[-7, 7]), (1, Gen.Int[-12, 12]))
        from mode in Gen.Enum<Mode>()
        select (metre, Key.FromSignature(sharps, mode));

    private static readonly Gen<TuneBar> Bars =
        from notes in Notes.Array[0, 9]
        from silence in Gen.Frequency((1, Gen.Const(0)), (3, Gen.Int[1, 20]))
        from isFull in Gen.Bool
        from chords in Gen.Select(Gen.Int[0, 19], Of(Symbols)).Array[0, 3]
        from marks in Marks
        from number in Gen.Frequency(
            (5, Gen.Const(0).Select(_ => (string?)null)),
            (1, Of(Names).Select(n => (string?)n))
        )
        from section in Gen.Frequency(
            (5, Gen.Const(0).Select(_ => (string?)null)),
            (1, Of(Names).Select(n => (string?)n.Trim()))
        )
        from signs in Signs
        select Bar(notes, new ScoreTime(silence, 16), isFull, chords, signs) with
        {
            Number = number ?? "",
            Section = section,
            Marks = marks,
        };

    /// <summary>With at least one note.</summary>
    public static Gen<Tune> Tunes { get; } =
        (
            from bars in Bars.Array[1, 12]
            from changes in Gen.Int[0, 3].Array[12]
            from title in Of(Names)
            from composer in Of(Names)
            from hasComposer in Gen.Bool
            from tempo in Gen.Frequency(
                (1, Gen.Const(-1.0)),
                (2, Gen.Double[5, 1000]),
                (2, Gen.Int[40, 90].Select(i => i * 1.5))
            )
            from order in Gen.Frequency(
                (2, Gen.Const(Array.Empty<string>())),
                (1, Of(Names).Array[1, 4]),
                (1, Of(["A", "b", "B"]).Array[1, 4])
            )
            from ties in Gen.Bool.Array[120]
            select new Tune
            {
                Title = title,
                Composer = hasComposer ? composer : null,
                QuartersPerMinute = tempo < 0 ? null : tempo,
                SectionOrder = order.ToValueList(),
                Bars = Tied(Steady(bars, changes), ties),
            }
        ).Where(tune => tune.Bars.Any(b => b.Notes.Count > 0));

    private static Gen<T> Of<T>(T[] all) => Gen.Int[0, all.Length - 1].Select(i => all[i]);

    private static TuneBar Bar(
        TuneNote[] notes,
        ScoreTime silence,
        bool isFull,
        (int At, string Text)[] chords,
        (Metre Metre, Key Key) signs
    )
    {
        var line = new List<TuneNote>();
        var at = ScoreTime.Zero;
        foreach (var note in notes)
        {
            var length = isFull ? ScoreTime.Min(note.Length, signs.Metre.BarLength - at) : note.Length;
            if (length <= ScoreTime.Zero)
            {
                break;
            }
            if (note.At >= ScoreTime.Zero)
            {
                line.Add(note with { At = at, Length = length });
            }
            at += length;
        }
        var full = isFull ? signs.Metre.BarLength : at + silence;
        return new TuneBar
        {
            Number = "",
            Metre = signs.Metre,
            Key = signs.Key,
            Length = full.IsZero ? signs.Metre.BarLength : full,
            Notes = line.ToValueList(),
            Chords = chords
                .Select(c => new PlacedChord(
                    new ScoreTime(c.At, 20),
                    ChordText.TryParse(c.Text, out var chord) ? chord : throw new FormatException(c.Text)
                ))
                .Where(c => c.At < (full.IsZero ? signs.Metre.BarLength : full))
                .OrderBy(c => c.At)
                .ToValueList(),
        };
    }

    // Metre and key mostly go on; bars are numbered where they have no name.
    private static List<TuneBar> Steady(TuneBar[] bars, int[] changes)
    {
        var steady = new List<TuneBar>();
        for (var i = 0; i < bars.Length; i++)
        {
            var bar = bars[i].Number.Length > 0 ? bars[i] : bars[i] with { Number = $"{i + 1}" };
            steady.Add(i > 0 && changes[i] > 0 ? bar with { Metre = steady[^1].Metre, Key = steady[^1].Key } : bar);
        }
        return steady;
    }

    private static ValueList<TuneBar> Tied(List<TuneBar> bars, bool[] ties)
    {
        var n = 0;
        for (var b = 0; b < bars.Count; b++)
        {
            var notes = bars[b].Notes.ToArray();
            for (var i = 0; i < notes.Length; i++)
            {
                var end = notes[i].At + notes[i].Length;
                var next =
                    i + 1 < notes.Length ? (notes[i + 1].At == end ? notes[i + 1] : null)
                    : b + 1 < bars.Count
                    && end == bars[b].Length
                    && bars[b + 1].Notes is [{ At.IsZero: true } first, ..]
                        ? first
                    : null;
                if (next is not null && (next.Pitch == notes[i].Pitch) && ties[n++ % ties.Length])
                {
                    notes[i] = notes[i] with { TiedToNext = true };
                }
            }
            bars[b] = bars[b] with { Notes = notes.ToValueList() };
        }
        return bars.ToValueList();
    }
}
