using Stridewright.Music;

namespace Stridewright.Workbench.Handouts;

/// <summary>Some bars of a score by themselves.</summary>
/// <param name="First">Index of the first bar.</param>
/// <param name="Count">How many.</param>
internal sealed record Excerpt(int First, int Count)
{
    /// <summary>Null where the text names no bars of the score.</summary>
    /// <param name="range">Printed numbers such as <c>5-8</c> or <c>5</c>; null: all bars.</param>
    public static Excerpt? Of(Score score, string? range)
    {
        if (range is null)
        {
            return new(0, score.Bars.Count);
        }
        var ends = range.Split(['-', '–'], 2, StringSplitOptions.TrimEntries);
        var numbers = score.Bars.Select(b => b.Number).ToList();
        var (first, last) = (numbers.IndexOf(ends[0]), numbers.IndexOf(ends[^1]));
        return first < 0 || last < first ? null : new(first, last - first + 1);
    }

    public bool IsAllOf(Score score) => Count == score.Bars.Count;

    public bool Has(int bar) => bar >= First && bar < First + Count;

    /// <summary>The bars without a head, repeats and what is tied into them or out of them.</summary>
    /// <param name="paced">The score whose tempo stands over the first one; null: none does.</param>
    public Score Cut(Score score, Score? paced)
    {
        var tempo = paced?.Bars[0].Directions.Where(d => d.BeatsPerMinute is not null).Take(1).ToList() ?? [];
        return score with
        {
            Title = "",
            Subtitle = null,
            Composer = null,
            Footnotes = [],
            Bars = score.Bars.Skip(First).Take(Count).Select(Bar).ToValueList(),
        };

        ScoreBar Bar(ScoreBar bar, int i)
        {
            var own = bar.Directions.Where(d => i > 0 || d.BeatsPerMinute is null);
            return bar with
            {
                Marks = BarMarks.None,
                Directions = i == 0 ? [.. tempo, .. own] : own.ToValueList(),
                Voices = bar
                    .Voices.Select(v => v with { Events = Untied(v.Events, i == 0, i == Count - 1, bar.Length) })
                    .ToValueList(),
                Above = Untied(bar.Above, i == 0, i == Count - 1, bar.Length),
            };
        }
    }

    private static ValueList<ScoreEvent> Untied(
        ValueList<ScoreEvent> events,
        bool first,
        bool last,
        ScoreTime length
    ) =>
        events
            .Select(e =>
                e with
                {
                    Notes = e
                        .Notes.Select(n =>
                            n with
                            {
                                TieStop = n.TieStop && !(first && e.At == ScoreTime.Zero),
                                TieStart = n.TieStart && !(last && e.At + e.Length >= length),
                            }
                        )
                        .ToValueList(),
                }
            )
            .ToValueList();
}
