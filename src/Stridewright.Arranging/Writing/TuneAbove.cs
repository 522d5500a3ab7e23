using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Shows the voice's tune with its words on the small staff above, as it is sung: for who accompanies and for who
/// sings from the same page.</summary>
internal static class TuneAbove
{
    /// <param name="score">Bar by bar the lattice of the plan.</param>
    public static Score Show(Score score, Plan plan)
    {
        var octaves = plan.VoiceOctaves;
        var sung = Register.Move(plan.Piece.Sung(), new Interval(7 * octaves, 12 * octaves));
        var above = TuneBars.Of(sung, plan.Lattice);
        return score with { Bars = score.Bars.Select((b, i) => b with { Above = above[i] }).ToValueList() };
    }
}
