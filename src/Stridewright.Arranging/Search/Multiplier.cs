namespace Stridewright.Arranging;

/// <summary>
/// Holds a share of a whole piece down: one extra price, the same everywhere, is raised until it holds. The least that
/// does is found by halving, since a search is exact at each price and the share falls as the price rises.
/// </summary>
internal static class Multiplier
{
    /// <summary>The solution at the least extra price that holds, to within <paramref name="dearest"/> / 2^
    /// <paramref name="halvings"/>; at the dearest when none does.</summary>
    public static T Least<T>(long dearest, int halvings, Func<long, T> solve, Func<T, bool> holds)
    {
        var found = solve(0);
        if (holds(found))
        {
            return found;
        }
        found = solve(dearest);
        if (!holds(found))
        {
            return found;
        }
        var (low, high) = (0L, dearest);
        for (var i = 0; i < halvings; i++)
        {
            var middle = (low + high) / 2;
            var solution = solve(middle);
            if (holds(solution))
            {
                (high, found) = (middle, solution);
            }
            else
            {
                low = middle;
            }
        }
        return found;
    }
}
