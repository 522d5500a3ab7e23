using Stridewright.Music;
using Stridewright.Practice.Listening;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>Small scores and takes made by hand.</summary>
internal static class Played
{
    /// <summary>A bar of 4/4 for each list of notes: place and length in quarters, key, hand.</summary>
    public static ScoreNotes Score(params (double At, double Length, int Key, Hand Hand)[][] bars) =>
        new() { Title = "By hand", Bars = bars.Select((notes, i) => Bar(i + 1, notes)).ToValueList() };

    public static NotesBar Bar(int number, params (double At, double Length, int Key, Hand Hand)[] notes) =>
        new()
        {
            Number = number.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Metre = Metre.FourFour,
            Length = ScoreTime.Whole,
            Notes = notes
                .OrderBy(n => n.At)
                .Select(n => new WrittenKey(
                    Time(n.At),
                    Time(n.Length),
                    n.Key,
                    n.Hand,
                    n.Hand == Hand.Right ? "1" : "2",
                    ""
                ))
                .ToValueList(),
        };

    public static ScoreTime Time(double quarters) => new((long)Math.Round(quarters * 24), 96);

    /// <summary>Bars of stride: bass on one and three, chord on two and four, a tune of eighths with ties over the beat.</summary>
    public static ExpectedScore Stride(int bars, (int Long, int Short)? swing = null)
    {
        int[] tune = [72, 74, 76, 79, 77, 74, 71, 69];
        var made = Enumerable
            .Range(0, bars)
            .Select(b =>
                Bar(
                    b + 1,
                    [
                        (0, 1, 36 + b % 5, Hand.Left),
                        (1, 1, 52, Hand.Left),
                        (1, 1, 55, Hand.Left),
                        (1, 1, 60, Hand.Left),
                        (2, 1, 43 - b % 3, Hand.Left),
                        (3, 1, 53, Hand.Left),
                        (3, 1, 57, Hand.Left),
                        (3, 1, 60, Hand.Left),
                        (0, 0.5, tune[b % 8], Hand.Right),
                        (0.5, 1, tune[(b + 1) % 8] + 1, Hand.Right),
                        (1.5, 0.5, tune[(b + 2) % 8], Hand.Right),
                        (2, 0.5, tune[(b + 3) % 8] + 2, Hand.Right),
                        (2.5, 0.5, tune[(b + 4) % 8], Hand.Right),
                        (3, 0.5, tune[(b + 5) % 8] + 1, Hand.Right),
                        (3.5, 0.5, tune[(b + 6) % 8], Hand.Right),
                    ]
                ) with
                {
                    Directions = b == 0 && swing is not null ? [new Direction(ScoreTime.Zero) { Swing = swing }] : [],
                }
            );
        return ExpectedScore.Of(new ScoreNotes { Title = "Stride", Bars = made.ToValueList() });
    }

    /// <summary>Plays each note at its place, as the function has it; not a number: not at all.</summary>
    public static Take Take(
        ExpectedScore score,
        Func<ExpectedNote, double> onset,
        Func<ExpectedNote, int>? key = null
    ) =>
        new(
            score
                .Notes.Select(n => (Note: n, At: onset(n)))
                .Where(n => !double.IsNaN(n.At))
                .Select(n => new PlayedNote(n.At, n.At + 0.2, key?.Invoke(n.Note) ?? n.Note.Key, 64))
                .OrderBy(n => n.Onset)
                .ThenBy(n => n.Key)
                .ToValueList()
        );
}
