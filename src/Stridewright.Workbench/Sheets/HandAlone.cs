using Stridewright.Music;
using Stridewright.Practice.Lessons;

namespace Stridewright.Workbench.Sheets;

/// <summary>One hand of a score on a staff of its own, for lessons at two pianos or one hand each.</summary>
internal static class HandAlone
{
    public static Score Of(Score score, Hand hand) =>
        Excerpts.Hand(score, hand) with
        {
            Subtitle = WorkbenchMessages.HandAlone(hand),
        };
}
