using Microsoft.AspNetCore.Http;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web;

/// <summary>When nobody has asked for anything for a while, the desk gives back the memory that it only needs at work.</summary>
internal sealed class Resting : IDisposable
{
    private static readonly TimeSpan After = TimeSpan.FromSeconds(10);
    private readonly Timer _timer = new(_ => SheetDesk.Rest());
    private int _asking;

    /// <summary>Serves a request; the last of those at work begins the wait anew.</summary>
    public async Task During(HttpContext context, RequestDelegate next)
    {
        Interlocked.Increment(ref _asking);
        _timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        try
        {
            await next(context);
        }
        finally
        {
            if (Interlocked.Decrement(ref _asking) == 0)
            {
                _timer.Change(After, Timeout.InfiniteTimeSpan);
            }
        }
    }

    public void Dispose() => _timer.Dispose();
}
