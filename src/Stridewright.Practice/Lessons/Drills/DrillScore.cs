using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Puts drills on paper.</summary>
internal static class DrillScore
{
    /// <summary>Two strokes of the left hand in one bar.</summary>
    /// <param name="Words">Over the bar; empty: none.</param>
    /// <param name="IsBurst">One right after the other; else half a bar apart.</param>
    public readonly record struct Pair(ValueList<Pitch> First, ValueList<Pitch> Second, bool IsBurst, string Words);

    /// <summary>A bar for each pair, for the left hand alone, in the metre and key of the piece. The strokes of a burst follow
    /// each other after <paramref name="unit"/>.</summary>
    public static Score OfPairs(string title, Metre metre, Key key, ScoreTime unit, IReadOnlyList<Pair> pairs)
    {
        var bars = pairs.Select(
            (pair, i) =>
                new DraftBar
                {
                    Number = (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                    Metre = metre,
                    Key = key,
                    Length = metre.BarLength,
                    Directions = pair.Words.Length > 0 ? [new Direction(ScoreTime.Zero) { Words = pair.Words }] : [],
                    Strokes =
                    [
                        new Stroke(Hand.Left, 1, ScoreTime.Zero, unit, pair.First, "chord"),
                        new Stroke(
                            Hand.Left,
                            1,
                            pair.IsBurst ? unit : SlowPlace(metre, unit),
                            unit,
                            pair.Second,
                            "chord"
                        ),
                    ],
                }
        );
        var draft = new Draft
        {
            Title = title,
            LeftHandOnly = true,
            Bars = bars.ToValueList(),
        };
        return Numbered(Notator.Write(draft));
    }

    /// <summary>A value of the piece that two strokes of a bar can be told apart by: a quarter or an eighth.</summary>
    public static ScoreTime Unit(Metre metre, ScoreTime apart) =>
        apart >= ScoreTime.Quarter && metre.BarLength >= new ScoreTime(3, 4) && !metre.IsCompound
            ? ScoreTime.Quarter
            : ScoreTime.Eighth;

    /// <summary>Where the second stroke of a slow pass comes: at the half of the bar, or the beat after it.</summary>
    private static ScoreTime SlowPlace(Metre metre, ScoreTime unit)
    {
        var beats = metre.BarLength.Per(metre.Beat);
        var half = metre.Beat * ((beats.Numerator / beats.Denominator + 1) / 2);
        return half >= unit * 2 ? half : unit * 2;
    }

    /// <summary>Several versions of the same bars one after the other, each with its words over its first bar.</summary>
    public static Score InTurn(string title, IReadOnlyList<(string Words, Score Score)> versions)
    {
        var bars = versions.SelectMany(
            (v, version) =>
                v.Score.Bars.Select(
                    (bar, i) =>
                        bar with
                        {
                            Marks =
                                i == v.Score.Bars.Count - 1 ? new BarMarks { DoubleBarAfter = true } : BarMarks.None,
                            Chords = [],
                            Directions =
                            [
                                .. i == 0
                                    ? (IEnumerable<Direction>)[new Direction(ScoreTime.Zero) { Words = v.Words }]
                                    : [],
                                .. bar
                                    .Directions.Where(d =>
                                        version == 0 && (d.BeatsPerMinute is not null || d.Swing is not null)
                                    )
                                    .Select(d => d with { Words = null, Section = null, Footnote = null }),
                            ],
                        }
                )
        );
        return Numbered(
            versions[0].Score with
            {
                Title = title,
                Subtitle = null,
                Footnotes = [],
                Bars = bars.ToValueList(),
            }
        );
    }

    /// <summary>Bars numbered from 1, ids of their own, the last one closed; rolled chords stay, words of songs go.</summary>
    public static Score Numbered(Score score) =>
        score with
        {
            Bars = score
                .Bars.Select(
                    (bar, i) =>
                        bar with
                        {
                            Number = (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                            Id = FormattableString.Invariant($"d{i + 1}"),
                            Implicit = false,
                            Marks = i == score.Bars.Count - 1 ? new BarMarks { FinalBarAfter = true } : bar.Marks,
                            Above = [],
                            Voices = bar
                                .Voices.Select(v => v with { Events = v.Events.Select(WithoutIds).ToValueList() })
                                .ToValueList(),
                        }
                )
                .ToValueList(),
        };

    private static ScoreEvent WithoutIds(ScoreEvent e) =>
        e with
        {
            Lyrics = [],
            Notes = e.Notes.Select(n => n with { Id = "" }).ToValueList(),
            Graces = e.Graces.Select(n => n with { Id = "" }).ToValueList(),
        };
}
