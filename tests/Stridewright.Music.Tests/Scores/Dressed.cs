using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Testing;

/// <summary>Dresses a plain draft with everything a score can carry, by a seed.</summary>
internal static class Dressed
{
    [System.Diagnostics.CodeAnalysis.SuppressMessage(
        "Security",
        "CA5394",
        Justification = "Variety for tests, repeatable by its seed"
    )]
    public static Draft Up(Draft draft, int seed)
    {
        var random = new Random(seed);
        bool Often() => random.Next(2) == 0;
        bool Seldom() => random.Next(5) == 0;
        var key = Key.FromSignature(random.Next(-7, 8), (Mode)random.Next(7));
        return draft with
        {
            Composer = Often() ? "Trad. & anon." : null,
            Subtitle = Often() ? "Level 4 <easy>" : null,
            Bars = draft
                .Bars.Select(bar =>
                    bar with
                    {
                        Key = key = Seldom() ? key.Plus(Interval.PerfectFourth.Plus(new Interval(-3, -5))) : key,
                        Metre = Seldom() ? bar.Metre with { Sign = MetreSign.Cut } : bar.Metre,
                        Chords = Often() ? Chords(bar) : [],
                        Directions = Seldom() ? Directions(bar) : [],
                        Marks = new BarMarks
                        {
                            RepeatStart = Seldom(),
                            RepeatEnd = Seldom() ? random.Next(1, 5) : 0,
                            Ending = Seldom() ? [1, 2] : [],
                            DoubleBarAfter = Seldom(),
                            FinalBarAfter = Seldom(),
                        },
                        Strokes = bar.Strokes.Select(Stroke).ToValueList(),
                    }
                )
                .ToValueList(),
        };

        ValueList<PlacedChord> Chords(DraftBar bar) =>
            [
                new PlacedChord(
                    bar.Length / 2,
                    new ChordSymbol(new Tone(random.Next(-6, 7)), (ChordKind)random.Next(33))
                    {
                        Bass = Often() ? new Tone(random.Next(-6, 7)) : null,
                        Degrees = Often()
                            ? [new ChordDegree(random.Next(1, 14), random.Next(-1, 2), (DegreeChange)random.Next(3))]
                            : [],
                    }
                ),
            ];

        ValueList<Direction> Directions(DraftBar bar) =>
            [
                new Direction(Often() ? ScoreTime.Zero : bar.Length / 2)
                {
                    Words = Often() ? "Not fast" : null,
                    BeatsPerMinute = Often() ? random.NextDouble() * 200 + 20 : null,
                    BeatUnit = new NoteValue(Often() ? 4 : 2, random.Next(2)),
                    Dynamic =
                        Often() ? "mf"
                        : Often() ? "loud"
                        : null,
                    Swing =
                        Often() ? (5, 3)
                        : Often() ? (1, 1)
                        : null,
                },
            ];

        Stroke Stroke(Stroke stroke) =>
            stroke with
            {
                Pitches = stroke.Pitches.Select(Altered).ToValueList(),
                Staccato = Seldom(),
                Accent = Seldom(),
                Rolled = Seldom(),
                Graces = Enumerable.Repeat(stroke.Pitches[0], Seldom() ? random.Next(1, 4) : 0).ToValueList(),
                Lyrics = Seldom()
                    ?
                    [
                        new Lyric(
                            random.Next(1, 3),
                            random.Next().ToString(CultureInfo.InvariantCulture),
                            Often(),
                            Often()
                        ),
                    ]
                    : [],
            };

        // Both notes of a chord alike, so that they keep rising.
        Pitch Altered(Pitch pitch) => pitch with { Tone = pitch.Tone.PlusFifths(Sharpened) };
    }

    private const int Sharpened = 7;
}
