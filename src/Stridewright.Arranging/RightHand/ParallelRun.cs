using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A run in parallel octaves from the level that has them, sixths at the one below, else thirds, at the end of a phrase: by
/// steps from the tune's last note to the next
/// phrase's first, from below, or from above where it stays under what the tune holds.
/// </summary>
internal static class ParallelRun
{
    public const int Least = 3;
    private const int Most = 6;
    private const int Unit = Lattice.TicksPerUnit;
    private const int LowestKey = 60;

    public static RightOnset[] Place(Lattice lattice, RightOnset[] onsets, Brief brief)
    {
        var reach = new Reach(brief.Hands, Hand.Right);
        var octave = !brief.Hands.NoOctaves && reach.Of(LowestKey, LowestKey + 12) <= Stretch.Possible;
        int[] under =
        [
            .. brief.RightLevel >= 5 && octave ? [7] : Array.Empty<int>(),
            .. brief.RightLevel >= 4 ? [5] : Array.Empty<int>(),
            2,
        ];
        foreach (var (_, end) in Devices.Stretches(lattice, RightManner.ParallelRun))
        {
            onsets = [.. onsets.Concat(Run(lattice, lattice.Bars[end - 1], under)).OrderBy(o => o.Tick)];
        }
        return onsets;
    }

    /// <summary>What is struck with a note of a run.</summary>
    public static Pitch Under(Lattice lattice, int tick, Pitch top, int steps) =>
        steps == 7 ? top with { Octave = top.Octave - 1 } : RunScale.Move(lattice, tick, top, -steps);

    private static IEnumerable<RightOnset> Run(Lattice lattice, LatticeBar bar, int[] under)
    {
        var last = Array.FindLastIndex(lattice.Notes, n => n.Start < bar.End);
        if (last < 0 || last + 1 >= lattice.Notes.Length)
        {
            return [];
        }
        var (held, next) = (lattice.Notes[last], lattice.Notes[last + 1]);
        var breath = bar.End - held.Start >= Most * Unit ? (bar.End - held.Start) / 2 : Unit;
        var from = Math.Max(bar.Start, bar.End - Most * Unit);
        while (from < held.Start + breath)
        {
            from += Unit;
        }
        var count = (bar.End - from) / Unit;
        if (count < Least)
        {
            return [];
        }
        var (up, down) = (Steps(-1), Steps(1));
        // The widest interval that has room, then the run that begins nearest.
        var (run, steps) = under
            .SelectMany(u => new[] { up, down }.Select(r => (Run: r, Under: u)))
            .Where(c => c.Run == up || c.Run[0].Midi <= held.Key)
            .Where(c => c.Run.Where((_, i) => 2 * (from + i * Unit - held.Start) < held.Length).All(UnderHeld))
            .Where(c => c.Run.All(p => Under(lattice, from, p, c.Under).Midi >= LowestKey))
            .OrderBy(c => Array.IndexOf(under, c.Under))
            .ThenBy(c => Math.Abs(c.Run[0].Midi - held.Key) + (c.Run[0].Midi == held.Key ? 12 : 0))
            .FirstOrDefault(([], 0));
        return run.Select(
            (p, i) =>
                new RightOnset(from + i * Unit, -1)
                {
                    Use = RightUse.Run,
                    Keys = (p.Midi, p.Midi),
                    StepsUnder = steps,
                }
        );

        // The tune keeps half its length before anything is struck above it.
        bool UnderHeld(Pitch pitch) => pitch.Midi <= held.Key;

        Pitch[] Steps(int side) =>
            [.. Enumerable.Range(0, count).Select(i => RunScale.Move(lattice, from, next.Pitch, side * (count - i)))];
    }
}
