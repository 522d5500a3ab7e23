using System.Diagnostics;

namespace Stridewright.Testing;

/// <summary>A guard against work that never ends. Its bound lies far above what the work takes, so that a slow or
/// shared machine never meets it; how fast things are is measured in bench.</summary>
public static class Hang
{
    /// <summary>What ends within this does not hang.</summary>
    public static readonly TimeSpan Bound = TimeSpan.FromMinutes(2);

    /// <summary>Does the work and fails when it took longer than the bound.</summary>
    /// <exception cref="TimeoutException">The work took longer.</exception>
    public static T Never<T>(Func<T> work, string? what = null)
    {
        var watch = Stopwatch.StartNew();
        var result = work();
        return watch.Elapsed <= Bound ? result : throw new TimeoutException($"{what} took {watch.Elapsed}");
    }
}
