using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads single bars of a setting as they can be kept.</summary>
internal static class Spots
{
    /// <summary>The word for keys struck one after the other, a grid unit apart.</summary>
    public const string Broken = "broken";

    /// <summary>What one hand does in a bar of a setting.</summary>
    /// <param name="bar">Place among the setting's bars, from 0.</param>
    public static KeptBar Of(Solution solution, int bar, Hand hand) =>
        hand == Hand.Left ? Left(solution, bar) : Right(solution, bar);

    /// <summary>Places of the bars in which two settings of one piece differ in either hand.</summary>
    public static IEnumerable<int> Differing(Solution a, Solution b) =>
        Enumerable
            .Range(0, a.Lattice.Bars.Length)
            .Where(bar => !Right(a, bar).Equals(Right(b, bar)) || !Left(a, bar).Equals(Left(b, bar)));

    /// <summary>The word for what a stroke of the left hand is there for.</summary>
    public static string Role(LeftSlot slot, LeftShape shape) =>
        shape.IsRun ? "run"
        : slot.IsBass ? "bass"
        : "chord";

    private static KeptBar Right(Solution solution, int bar)
    {
        var lattice = solution.Lattice;
        var (start, end) = (lattice.Bars[bar].Start, lattice.Bars[bar].End);
        var struck = solution.Right.Notes.Where(n => n.Tick >= start && n.Tick < end).ToList();
        var strokes = struck.Select(n => new KeptStroke(
            lattice.Tick * (n.Tick - start),
            lattice.Tick * (n.End - n.Tick),
            [.. n.Below, n.Top],
            n.IsFiller ? "fill" : "tune",
            false,
            n.Crushed is { } crushed ? [crushed] : [],
            n.UnderHeld ? 2 : 1,
            n.IsFiller ? null : n.Tune
        ));
        var sounding = solution.Right.Notes.Where(n => !n.IsFiller).Select(n => n.Tune).ToHashSet();
        var leftOut = Enumerable
            .Range(0, lattice.Notes.Length)
            .Where(i => lattice.Notes[i].Start >= start && lattice.Notes[i].Start < end && !sounding.Contains(i));
        return new KeptBar(bar, Hand.Right, strokes.ToValueList()) { LeftOut = leftOut.ToValueList() };
    }

    private static KeptBar Left(Solution solution, int bar)
    {
        var lattice = solution.Lattice;
        var strokes = solution
            .Left.Notes.Where(n => n.Slot.Bar == bar)
            .Select(n => new KeptStroke(
                lattice.Tick * (n.Slot.Tick - lattice.Bars[bar].Start),
                lattice.Tick * (n.Slot.End - n.Slot.Tick),
                n.Shape.Pitches,
                n.Shape.Broken ? Broken : Role(n.Slot, n.Shape),
                n.Shape.Kind == LeftKind.RolledTenth,
                [],
                1,
                null
            ));
        return new KeptBar(bar, Hand.Left, strokes.ToValueList());
    }
}
