using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>Where a page can be turned: a hand strikes nothing for a whole beat before or after a bar line.</summary>
internal static class FreeHands
{
    /// <summary>Ids of the bars after which a hand is free.</summary>
    public static ValueList<string> After(Score score)
    {
        var free = new List<string>();
        for (var i = 0; i + 1 < score.Bars.Count; i++)
        {
            var (bar, next) = (score.Bars[i], score.Bars[i + 1]);
            if (
                score.LeftHandOnly
                || new[] { Hand.Right, Hand.Left }.Any(hand =>
                    IsIdle(bar, hand, bar.Length - bar.Metre.Beat, bar.Length)
                    || IsIdle(next, hand, ScoreTime.Zero, next.Metre.Beat)
                )
            )
            {
                free.Add(bar.Id);
            }
        }
        return free.ToValueList();
    }

    private static bool IsIdle(ScoreBar bar, Hand hand, ScoreTime from, ScoreTime to) =>
        !bar
            .Voices.Where(v => v.Hand == hand)
            .SelectMany(v => v.Events)
            .Any(e => e.At >= from && e.At < to && e.Notes.Any(n => !n.TieStop));
}
