using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>Sets a piece again without something that was said to be needed: if it is needed, the judge asks for it
/// again.</summary>
internal sealed class Unrelaxed(Tune tune, Arrangement arrangement)
{
    private readonly Settled _settled = Reworking.Settled(arrangement);

    /// <summary>Whether a bar's neighbourhood cannot be played thicker.</summary>
    public bool NeedsThinning(int bar)
    {
        var index = arrangement
            .Solution!.Lattice.Bars.ToList()
            .FindIndex(b => b.Number == arrangement.Score.Bars[bar].Number);
        var run = new HashSet<int> { index };
        while (_settled.ThinBars.Any(b => (run.Contains(b - 1) || run.Contains(b + 1)) && run.Add(b))) { }
        return Again(_settled with { ThinBars = [.. _settled.ThinBars.Where(b => !run.Contains(b))] }) is not { } again
            || again.ThinBars.Any(run.Contains)
            || IsSlower(again);
    }

    /// <summary>Whether strained shapes at their usual price are too many.</summary>
    public bool NeedsDearerStrain(Hand hand) =>
        Again(
            hand == Hand.Left
                ? _settled with
                {
                    LeftStrain = Settled.UsualStrain,
                }
                : _settled with
                {
                    RightStrain = Settled.UsualStrain,
                }
        )
            is not { } again
        || (hand == Hand.Left ? again.LeftStrain : again.RightStrain) > Settled.UsualStrain
        || again.ThinBars.Count > _settled.ThinBars.Count
        || IsSlower(again);

    private bool IsSlower(Settled again) => again.BeatsPerMinute is { } beats && beats < arrangement.BeatsPerMinute;

    private Settled? Again(Settled settled) =>
        Arranger.Arrange(tune, arrangement.Brief with { Settled = settled }).Arrangement is { } done
            ? Reworking.Settled(done)
            : null;
}
