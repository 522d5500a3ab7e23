using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>What work on single bars is made of, whoever asks for it.</summary>
internal static class SpotCraft
{
    /// <summary>What is kept, with these bars in place of what was kept of them.</summary>
    public static ValueList<KeptBar> With(ValueList<KeptBar> kept, IEnumerable<KeptBar> added)
    {
        var now = added.ToList();
        return kept.Where(k => !now.Exists(n => n.Bar == k.Bar && n.Hand == k.Hand))
            .Concat(now)
            .OrderBy(k => k.Bar)
            .ThenBy(k => k.Hand)
            .ToValueList();
    }

    /// <summary>Index of the bar with a printed number; −1: there is none.</summary>
    public static int BarOf(Arrangement arrangement, string number)
    {
        for (var i = 0; i < arrangement.Score.Bars.Count; i++)
        {
            if (arrangement.Score.Bars[i].Number == number)
            {
                return i;
            }
        }
        return -1;
    }

    /// <summary>Ways under the names they are asked for by, such as <c>rhythm-2</c>.</summary>
    public static List<(string Name, OtherWay Way)> Named(ValueList<OtherWay> ways) =>
        [
            .. ways.GroupBy(w => w.Kind)
                .SelectMany(kind =>
                    kind.Select((w, i) => (FormattableString.Invariant($"{Words.Of(w.Kind)}-{i + 1}"), w))
                ),
        ];

    public static WayFound Found(string name, OtherWay way) =>
        new(
            name,
            way.Dearer / 1000.0,
            way.Changes,
            way.OtherBars,
            way.EffortBefore,
            way.EffortAfter,
            way.Style.Select(s => new StyleMoved(s.Words, s.Before, s.After, s.Reference)).ToValueList()
        );

    public static ValueList<KeptSpot> KeptSpots(Arrangement arrangement, ValueList<KeptBar> kept) =>
        kept.Select(k => new KeptSpot(arrangement.Score.Bars[k.Bar].Number, Words.Of(k.Hand))).ToValueList();

    /// <summary>A brief for the setting that came of keeping bars: set again with it, it is the same.</summary>
    public static Brief Keeping(Brief brief, ValueList<KeptBar> kept, Arrangement after) =>
        brief with
        {
            Kept = kept,
            Settled = Reworking.Settled(after),
            // Levels chosen for an effort are settled with the rest.
            LeftLevel = after.Brief.LeftLevel,
            RightLevel = after.Brief.RightLevel,
            MostEffort = null,
        };
}
