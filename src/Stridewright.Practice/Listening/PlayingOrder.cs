using Stridewright.Music;

namespace Stridewright.Practice.Listening;

/// <summary>The order in which the bars of a score are played: repeats and endings, then da capo or dal segno to the end, to
/// <c>fine</c>, or over into the coda; after going back no repeat is taken and the last ending is (common practice).</summary>
internal static class PlayingOrder
{
    public static List<int> Of(ScoreNotes score)
    {
        var bars = score.Bars;
        var order = Timeline.PlayOrder(bars.Select(b => b.Marks).ToList()).ToList();
        var turn = order.FindLastIndex(i => (bars[i].Routes & (Routes.DaCapo | Routes.DalSegno)) != 0);
        if (turn < 0)
        {
            return order;
        }
        var from = bars[order[turn]].Routes.HasFlag(Routes.DaCapo) ? 0 : Find(bars, Routes.Segno, 0);
        var rest = order.Skip(turn + 1).ToList();
        order.RemoveRange(turn + 1, order.Count - turn - 1);
        var last = order[turn];
        var hasEnd = Enumerable.Range(from, Math.Max(0, last - from + 1)).Any(i => (bars[i].Routes & Ends) != 0);
        for (var i = from; i < bars.Count; i++)
        {
            if (IsEarlierEnding(bars, i))
            {
                continue;
            }
            order.Add(i);
            if (bars[i].Routes.HasFlag(Routes.Fine) || (i == last && hasEnd))
            {
                return order;
            }
            if (bars[i].Routes.HasFlag(Routes.ToCoda) && Find(bars, Routes.Coda, i + 1) is > 0 and var coda)
            {
                order.AddRange(Enumerable.Range(coda, bars.Count - coda));
                return order;
            }
            if (i == last)
            {
                order.AddRange(rest);
                return order;
            }
        }
        return order;
    }

    private const Routes Ends = Routes.Fine | Routes.ToCoda;

    // Where a sign stands; the beginning where there is none.
    private static int Find(ValueList<NotesBar> bars, Routes sign, int from)
    {
        for (var i = from; i < bars.Count; i++)
        {
            if (bars[i].Routes.HasFlag(sign))
            {
                return i;
            }
        }
        return 0;
    }

    // A bar of an ending after which another one of the same repeat follows.
    private static bool IsEarlierEnding(ValueList<NotesBar> bars, int index)
    {
        var ending = bars[index].Marks.Ending;
        var next = index;
        while (next < bars.Count && bars[next].Marks.Ending.Equals(ending))
        {
            next++;
        }
        return ending.Count > 0 && next < bars.Count && bars[next].Marks.Ending.Count > 0;
    }
}
