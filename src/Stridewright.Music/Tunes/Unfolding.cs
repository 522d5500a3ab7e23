namespace Stridewright.Music;

/// <summary>
/// Plays out a tune's form: the order of its sections, its repeats and its numbered endings. Both functions go through
/// the bars a bounded number of times whatever the marks say, so unclosed or contradicting repeats never loop.
/// </summary>
public static class Unfolding
{
    /// <summary>The unfolded tune has at most this many bars, unless it has more as written.</summary>
    public const int MaxBars = 4096;

    /// <summary>
    /// The tune as it sounds: sections in their order, repeats and endings played out, no repeat marks left. Bar
    /// numbers and section labels stay with their bars. A form that would pass <see cref="MaxBars"/> is not played
    /// out: each bar stands once, as written. A repeat end without a start goes back to the latest of: the bar after
    /// the last repeat end with its endings, the bar after the last double or final bar line, the last section label,
    /// the beginning (ABC 2.1, 4.8).
    /// </summary>
    public static Tune Unfold(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var ordered = BySectionOrder(tune);
        var bars = PlayOut(ordered.Bars) ?? ordered.Bars.ToList();
        var last = bars.Count - 1;
        return ordered with
        {
            Bars = WithoutBrokenTies(bars.Select((bar, i) => Unmarked(bar, i == last)).ToList()).ToValueList(),
        };
    }

    /// <summary>
    /// The tune with its sections put in <see cref="Tune.SectionOrder"/>, each with its own repeats still in it; the
    /// result has no section order. Bars before the first label come first. Names without a section are passed over;
    /// of two sections of the same name the first counts. Without an order, without any known name, or where the result
    /// would pass <see cref="MaxBars"/>, the bars stay as written.
    /// </summary>
    public static Tune BySectionOrder(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var starts = Enumerable.Range(0, tune.Bars.Count).Where(i => tune.Bars[i].Section is not null).ToList();
        var sections = new Dictionary<string, List<TuneBar>>(StringComparer.Ordinal);
        for (var s = 0; s < starts.Count; s++)
        {
            var end = s + 1 < starts.Count ? starts[s + 1] : tune.Bars.Count;
            var bars = tune.Bars.Skip(starts[s]).Take(end - starts[s]).ToList();
            sections.TryAdd(bars[0].Section!, bars);
        }
        var order = tune.SectionOrder.Where(sections.ContainsKey).Select(name => sections[name]).ToList();
        if (order.Count == 0 || order.Sum(s => (long)s.Count) + starts[0] > MaxBars)
        {
            return tune with { SectionOrder = [] };
        }
        var all = tune.Bars.Take(starts[0]).Concat(order.SelectMany(s => s)).ToList();
        return tune with { SectionOrder = [], Bars = WithoutBrokenTies(all).ToValueList() };
    }

    /// <summary>
    /// The tune with every repeat's start marked, so that a score that is written from it says where to go back to
    /// whatever the reader's own rule for a missing start. The place is that of <see cref="Unfold"/>.
    /// </summary>
    public static Tune WithRepeatStarts(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var bars = tune.Bars.ToList();
        for (var from = 0; from < bars.Count; )
        {
            var (start, end, times) = NextRepeat(tune.Bars, from);
            if (times > 1 && start > 0)
            {
                bars[start] = bars[start] with { Marks = bars[start].Marks with { RepeatStart = true } };
            }
            from = end;
        }
        return tune with { Bars = bars.ToValueList() };
    }

    // Null when the result would be too long, or empty because no bar's endings are ever played.
    private static List<TuneBar>? PlayOut(ValueList<TuneBar> bars)
    {
        var played = new List<TuneBar>();
        var from = 0;
        while (from < bars.Count)
        {
            var (start, end, times) = NextRepeat(bars, from);
            for (var i = from; i < start; i++)
            {
                played.Add(bars[i]);
            }
            for (var time = 1; time <= times; time++)
            {
                // Inside the repeat, a pass ends at the first repeat end that sends it back.
                for (var i = start; i < end; i++)
                {
                    if (bars[i].Marks.Ending.Count == 0 || bars[i].Marks.Ending.Contains(time))
                    {
                        played.Add(bars[i]);
                        if (bars[i].Marks.RepeatEnd > 0 && time < times)
                        {
                            break;
                        }
                    }
                }
                if (played.Count > MaxBars)
                {
                    return null;
                }
            }
            from = end;
        }
        return played.Count is 0 or > MaxBars ? null : played;
    }

    // The next repeated part at or after a bar: its first bar, the bar after it and its endings, how often it is
    // played. Where nothing repeats any more it begins after the tune.
    private static (int Start, int End, int Times) NextRepeat(ValueList<TuneBar> bars, int from)
    {
        var start = from;
        var marked = false;
        for (var i = from; i < bars.Count; i++)
        {
            var marks = bars[i].Marks;
            if (marks.RepeatStart)
            {
                (start, marked) = (i, true);
            }
            else if (i > from && !marked && IsFreshStart(bars[i - 1], bars[i]))
            {
                start = i;
            }
            if (marks.RepeatEnd > 0)
            {
                var end = i + 1;
                while (end < bars.Count && bars[end].Marks is { RepeatStart: false, Ending.Count: > 0 })
                {
                    end++;
                }
                var times = 1;
                for (var bar = start; bar < end; bar++)
                {
                    var last = bars[bar].Marks.Ending.Count == 0 ? 0 : bars[bar].Marks.Ending.Max();
                    times = Math.Max(times, Math.Max(last, bars[bar].Marks.RepeatEnd));
                }
                return (start, end, Math.Min(times, MaxBars + 1));
            }
        }
        return (bars.Count, bars.Count, 0);
    }

    private static bool IsFreshStart(TuneBar before, TuneBar bar) =>
        bar.Section is not null || before.Marks.DoubleBarAfter || before.Marks.FinalBarAfter;

    // Without repeats and endings; a final bar line inside the result becomes a double one.
    private static TuneBar Unmarked(TuneBar bar, bool isLast) =>
        bar with
        {
            Marks = new BarMarks
            {
                DoubleBarAfter = bar.Marks.DoubleBarAfter || (bar.Marks.FinalBarAfter && !isLast),
                FinalBarAfter = bar.Marks.FinalBarAfter && isLast,
            },
        };

    // A tie holds only where the next bar played goes on with the same pitch at once.
    private static List<TuneBar> WithoutBrokenTies(List<TuneBar> bars)
    {
        for (var i = 0; i < bars.Count; i++)
        {
            var notes = bars[i].Notes;
            if (notes.Count == 0 || notes[^1] is not { TiedToNext: true } last)
            {
                continue;
            }
            var next = i + 1 < bars.Count && bars[i + 1].Notes is { Count: > 0 } following ? following[0] : null;
            if (next is null || !next.At.IsZero || next.Pitch != last.Pitch)
            {
                bars[i] = bars[i] with { Notes = [.. notes.SkipLast(1), last with { TiedToNext = false }] };
            }
        }
        return bars;
    }
}
