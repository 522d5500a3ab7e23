using Stridewright.Music;
using Stridewright.Practice.Listening;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>
/// Made-up piano pieces in textures that ragtime has not: running figures in both hands, broken chords, repeated notes and
/// chords, tremolo, two voices in a hand, crossing hands, grace notes, rolled chords, quintuplets against eighths.
/// </summary>
internal static class Studies
{
    private static readonly int[] Scale = [0, 2, 4, 5, 7, 9, 11];

    public static IReadOnlyList<ExpectedScore> All { get; } =
    [.. Enumerable.Range(0, 12).Select(seed => ExpectedScore.Of(Of(seed, bars: 24)))];

    public static ScoreNotes Of(int seed, int bars)
    {
        var random = new Random(seed);
        return new ScoreNotes
        {
            Title = "Study",
            Bars = Enumerable.Range(0, bars).Select(i => BarOf(i, random, seed)).ToValueList(),
        };
    }

    private static NotesBar BarOf(int index, Random random, int seed)
    {
        var notes = new List<WrittenKey>();
        var root = random.Next(7);
        Texture(notes, Hand.Right, (seed + index / 8) % 6, 35 + root, random);
        Texture(notes, Hand.Left, (seed + index / 12 + 3) % 6, 22 + root, random);
        return new NotesBar
        {
            Number = (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
            Metre = Metre.FourFour,
            Length = ScoreTime.Whole,
            Notes = notes.OrderBy(n => n.At).ThenByDescending(n => n.Grace).ToValueList(),
        };
    }

    // Degrees count from C0, seven an octave.
    private static void Texture(List<WrittenKey> notes, Hand hand, int texture, int degree, Random random)
    {
        void Add(
            ScoreTime at,
            ScoreTime length,
            int step,
            string voice = "1",
            bool grace = false,
            bool rolled = false
        ) =>
            notes.Add(
                new WrittenKey(at, length, 12 + 12 * (step / 7) + Scale[step % 7], hand, voice, "")
                {
                    Grace = grace,
                    Rolled = rolled,
                }
            );
        switch (texture)
        {
            case 0: // a running line
                var here = degree;
                for (var i = 0; i < 16; i++)
                {
                    Add(ScoreTime.Sixteenth * i, ScoreTime.Sixteenth, here);
                    here = Math.Clamp(here + random.Next(-2, 3), degree - 7, degree + 9);
                }
                break;
            case 1: // broken chords
                int[] figure = [0, 4, 2, 4, 0, 4, 2, 4];
                for (var i = 0; i < 16; i++)
                {
                    Add(ScoreTime.Sixteenth * i, ScoreTime.Sixteenth, degree + figure[i % 8] + (i >= 8 ? 1 : 0));
                }
                break;
            case 2: // repeated chords under a held melody
                for (var i = 0; i < 8; i++)
                {
                    Add(ScoreTime.Eighth * i, ScoreTime.Eighth, degree);
                    Add(ScoreTime.Eighth * i, ScoreTime.Eighth, degree + 2);
                    if (i % 4 == 0)
                    {
                        Add(ScoreTime.Eighth * i, ScoreTime.Half, degree + 6 + random.Next(4), "2");
                    }
                }
                break;
            case 3: // melody with grace notes, and rests
                for (var i = 0; i < 4; i++)
                {
                    var step = degree + random.Next(8);
                    if (random.Next(3) == 0)
                    {
                        Add(ScoreTime.Quarter * i, ScoreTime.Zero, step + 1, grace: true);
                    }
                    Add(ScoreTime.Quarter * i, ScoreTime.Quarter, step);
                }
                break;
            case 4: // quintuplets
                for (var i = 0; i < 10; i++)
                {
                    Add(new ScoreTime(i, 10), new ScoreTime(1, 10), degree + (i * 3) % 7);
                }
                break;
            default: // tremolo, then a rolled chord
                for (var i = 0; i < 16; i++)
                {
                    Add(new ScoreTime(i, 32), new ScoreTime(1, 32), degree + (i % 2 == 0 ? 0 : 7));
                }
                foreach (var step in (int[])[0, 2, 4, 7])
                {
                    Add(ScoreTime.Half, ScoreTime.Half, degree + step, rolled: true);
                }
                break;
        }
    }
}
