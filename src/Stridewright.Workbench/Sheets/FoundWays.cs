using System.Collections.Concurrent;
using Stridewright.Arranging;

namespace Stridewright.Workbench.Sheets;

/// <summary>Other ways of the bars of one setting, under their names: each bar's are looked for once.</summary>
internal sealed class FoundWays
{
    private readonly ConcurrentDictionary<int, Lazy<List<(string Name, OtherWay Way)>>> _byBar = new();

    public List<(string Name, OtherWay Way)> Of(Arrangement arrangement, int bar, CancellationToken cancellation)
    {
        var found = _byBar.GetOrAdd(
            bar,
            _ => new(() => SpotCraft.Named(OtherWays.Of(arrangement, bar, SpotRequest.UsualEach, cancellation)))
        );
        try
        {
            return found.Value;
        }
        catch (OperationCanceledException)
        {
            _byBar.TryRemove(bar, out _);
            throw;
        }
    }
}
