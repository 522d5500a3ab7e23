using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Signs of touch where the style has them: in stop-time the left hand's strokes are short and the right hand's
/// syncopations accented; the pedal is marked in bars that ask for it (common practice).</summary>
internal static class Articulation
{
    private const int Unit = Lattice.TicksPerUnit;

    /// <summary>A syncopation in stop-time: struck on a weak unit and held through the next.</summary>
    public static bool IsAccented(Lattice lattice, RightNote note)
    {
        var bar = lattice.Bars[lattice.BarAt(note.Tick)];
        var at = note.Tick - bar.Start + bar.Lead;
        return bar.Treatment.Left == LeftManner.StopTime
            && at % Unit == 0
            && at / Unit % 2 == 1
            && note.End - note.Tick >= 2 * Unit;
    }

    /// <summary>A stroke of the left hand that is let go at once.</summary>
    public static bool IsShort(Lattice lattice, LeftSlot slot) =>
        lattice.Bars[slot.Bar].Treatment.Left == LeftManner.StopTime;

    /// <summary>Down with the bass, up with the last chord or at the next harmony.</summary>
    public static IEnumerable<Direction> Pedalled(Lattice lattice, LatticeBar bar)
    {
        var isHeld = bar.Treatment.Left is not (LeftManner.StopTime or LeftManner.Break or LeftManner.Silent);
        if (!bar.Treatment.Pedal || !isHeld || bar.IsShort || bar.Groove.Chords.Count == 0)
        {
            yield break;
        }
        var up = Math.Min(bar.Start + bar.Groove.Chords.Max(), lattice.ChordAt(bar.Start).End);
        yield return new Direction(ScoreTime.Zero) { Pedal = true };
        yield return new Direction(lattice.Tick * (up - bar.Start)) { Pedal = false };
    }
}
