using Stridewright.Music;

namespace Stridewright.Workbench.Sheets;

/// <summary>One hand of a score on a staff of its own, for lessons at two pianos or one hand each.</summary>
internal static class HandAlone
{
    public static Score Of(Score score, Hand hand) =>
        score with
        {
            Subtitle = WorkbenchMessages.HandAlone(hand),
            LeftHandOnly = hand == Hand.Left,
            RightHandOnly = hand == Hand.Right,
            Bars = score
                .Bars.Select(b =>
                    b with
                    {
                        Voices = b.Voices.Where(v => v.Hand == hand).ToValueList(),
                        Above = hand == Hand.Right ? b.Above : [],
                    }
                )
                .ToValueList(),
        };
}
