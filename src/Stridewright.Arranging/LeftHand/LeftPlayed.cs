using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Whether the left hand plays a bar in the manner asked for, read off its notes alone.</summary>
internal static class LeftPlayed
{
    private const int Tenths = 3,
        Octaves = 3,
        RunNotes = 3;

    /// <summary>Bars, by index, that do something else than they were asked for.</summary>
    public static IEnumerable<int> FellBack(Lattice lattice, LeftLine line)
    {
        var notes = line.Notes.ToLookup(n => n.Slot.Bar);
        return Enumerable
            .Range(0, lattice.Bars.Length)
            .Where(i => lattice.Bars[i].Treatment.Left != LeftManner.Stride)
            .Where(i => !IsPlayed(lattice.Bars[i].Treatment.Left, [.. notes[i]], [.. notes[i + 1]], lattice, i));
    }

    private static bool IsPlayed(LeftManner manner, LeftNote[] bar, LeftNote[] next, Lattice lattice, int index)
    {
        var lows = bar.Select(n => n.Shape.Low).ToArray();
        var landing = next.Length > 0 ? next[0].Shape.Low : -1;
        return manner switch
        {
            LeftManner.WalkingOctaves => bar.Length >= Octaves
                && bar.All(n => n.Shape.High - n.Shape.Low == 12)
                && ByStep([.. lows, .. Landing(landing)]),
            LeftManner.WalkingTenths => bar.Count(n => IsTenth(n.Shape)) >= Tenths
                && ByStep([.. bar.Where(n => IsTenth(n.Shape)).Select(n => n.Shape.Low)]),
            LeftManner.ChromaticApproach => bar.Length > 0 && Math.Abs(lows[^1] - landing) == 1,
            LeftManner.BackBeatTenths => Pairs(bar).Any(p => p.First.Slot.IsBass && p.Apart is -15 or -16),
            LeftManner.BrokenTenths => HasBroken([.. bar.SelectMany(n => n.Strokes()).Select(s => s.Pitches)]),
            LeftManner.ContraryRun => Against(bar, lattice, index),
            LeftManner.LowPedal => bar.Where(n => n.Slot.IsBass).Select(n => n.Shape.Low).Distinct().Count() == 1,
            LeftManner.CadenceFigure => landing >= 0
                && lows.Length >= 3
                && (lows[^1] - landing) % 12 is 7 or -5
                && lows[^1] - lows[^2] == 1
                && lows[^2] - lows[^3] == 1,
            LeftManner.StopTime or LeftManner.Break => bar.Length <= 1,
            LeftManner.Silent => bar.Length == 0,
            _ => true,
        };
    }

    private static int[] Landing(int key) => key >= 0 ? [key] : [];

    private static bool IsTenth(LeftShape shape) => shape.Pitches.Count == 2 && shape.High - shape.Low is 15 or 16;

    // Steps one way.
    private static bool ByStep(int[] keys)
    {
        var steps = keys.Zip(keys.Skip(1), (a, b) => b - a).ToList();
        return steps.Count > 0
            && steps.All(s => Math.Abs(s) is 1 or 2)
            && steps.All(s => Math.Sign(s) == Math.Sign(steps[0]));
    }

    private static IEnumerable<(LeftNote First, int Apart)> Pairs(LeftNote[] bar) =>
        bar.Zip(bar.Skip(1), (a, b) => (a, b.Shape.Low - a.Shape.Low));

    // Bass, fifth above, tenth above, one after the other.
    private static bool HasBroken(ValueList<Pitch>[] strokes)
    {
        for (var i = 2; i < strokes.Length; i++)
        {
            var (a, b, c) = (strokes[i - 2], strokes[i - 1], strokes[i]);
            if (
                (a.Count, b.Count, c.Count) == (1, 1, 1)
                && b[0].Midi - a[0].Midi is >= 6 and <= 8
                && c[0].Midi - a[0].Midi is 15 or 16
            )
            {
                return true;
            }
        }
        return false;
    }

    // Notes running by step against the way from the tune's first note to its last, or into the next bar.
    private static bool Against(LeftNote[] bar, Lattice lattice, int index)
    {
        var (from, to) = (lattice.Bars[index].Start, lattice.Bars[index].End);
        var keys = lattice.Notes.Where(n => n.Start >= from && n.Start <= to).ToList();
        var within = keys.Where(n => n.Start < to).ToList();
        if (within.Count == 0)
        {
            return false;
        }
        var way = Math.Sign(within[^1].Key - within[0].Key);
        way = way != 0 ? way : Math.Sign(keys[^1].Key - within[0].Key);
        var (running, most) = (1, 1);
        foreach (var (_, apart) in Pairs(bar))
        {
            running = apart * way is -1 or -2 ? running + 1 : 1;
            most = Math.Max(most, running);
        }
        return way != 0 && most >= RunNotes;
    }
}
