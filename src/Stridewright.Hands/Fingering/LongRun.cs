namespace Stridewright.Hands;

/// <summary>
/// A run by step through two octaves or more takes the same finger on keys an octave apart, as handbooks finger scales. The
/// fingers are those of its first octave, found by the same search; the first and last key are free.
/// </summary>
internal static class LongRun
{
    private const int Steps = RunContext.Steps;
    private const int LeastKeys = 2 * Steps + 1;

    /// <summary>The grasps with what a long run expects of them.</summary>
    public static List<Grasp> Marked(List<Grasp> grasps, LineCosts line)
    {
        for (int from = 0, count; from + LeastKeys <= grasps.Count; from += Math.Max(1, count - 1))
        {
            count = CountFrom(grasps, from);
            if (count < LeastKeys)
            {
                count = 1;
                continue;
            }
            var octave = grasps.GetRange(from, Steps + 1);
            octave[0] = octave[0] with { IsFree = true };
            var extended = RunContext.Extended(octave, line);
            var (fingers, _) = new FingerSearch(line).Solve(extended, default);
            var own = Enumerable.Range(0, extended.Count).Where(i => !extended[i].IsImagined).ToList();
            int[] first = [.. own.Select(i => (int)fingers[i][0])];
            // A thumb on the first key or on the eighth comes again; an outer finger stands at the end only.
            var shift = first[0] != 1 && first[Steps] == 1 ? 1 : 0;
            for (var i = 1; i < count - 1; i++)
            {
                var expected = first[(i - shift) % Steps + shift];
                grasps[from + i] = grasps[from + i] with { ExpectedFinger = expected };
            }
        }
        return grasps;
    }

    /// <summary>Keys from here on that go by step in one direction and return every octave.</summary>
    private static int CountFrom(List<Grasp> grasps, int from)
    {
        var count = 1;
        while (
            from + count < grasps.Count
            && RunContext.IsStep(grasps, from + count, Math.Sign(Key(from + 1) - Key(from)))
            && (count < Steps || Math.Abs(Key(from + count) - Key(from + count - Steps)) == RunContext.Octave)
        )
        {
            count++;
        }
        return count;

        int Key(int i) => grasps[i].InnerKey;
    }
}
