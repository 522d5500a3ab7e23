using System.Threading.Channels;

namespace Stridewright.Workbench.Sheets;

/// <summary>Does work on one thread of its own, in order of asking. What was cancelled before its turn is not begun.</summary>
internal sealed class OneAtATime : IDisposable
{
    private readonly Channel<Action> _queue;
    private readonly CancellationTokenSource _stop = new();
    private readonly Thread _thread;

    /// <param name="most">How many may wait; more are refused.</param>
    public OneAtATime(int most)
    {
        _queue = Channel.CreateBounded<Action>(most);
        _thread = new Thread(Work) { IsBackground = true, Name = "engraver" };
        _thread.Start();
    }

    /// <summary>The work's result, or its exception.</summary>
    /// <exception cref="BusyException">Too many wait already.</exception>
    public Task<T> Do<T>(Func<CancellationToken, T> work, CancellationToken cancellation)
    {
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        var accepted = _queue.Writer.TryWrite(() =>
        {
            using var either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, _stop.Token);
            try
            {
                either.Token.ThrowIfCancellationRequested();
                done.SetResult(work(either.Token));
            }
            catch (OperationCanceledException)
            {
                done.SetCanceled(either.Token);
            }
#pragma warning disable CA1031 // It belongs to the one who asked.
            catch (Exception fault)
#pragma warning restore CA1031
            {
                done.SetException(fault);
            }
        });
        return accepted ? done.Task : throw new BusyException();
    }

    /// <summary>Stops the work at hand and waits for its end.</summary>
    public void Dispose()
    {
        _queue.Writer.TryComplete();
        _stop.Cancel();
        _thread.Join();
        _stop.Dispose();
    }

    private void Work()
    {
        while (_queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            while (_queue.Reader.TryRead(out var work))
            {
                work();
            }
        }
    }
}

/// <summary>More is asked at once than can be done: ask again in a moment.</summary>
public sealed class BusyException : Exception
{
    public BusyException()
        : base(WorkbenchMessages.Busy) { }

    public BusyException(string message)
        : base(message) { }

    public BusyException(string message, Exception inner)
        : base(message, inner) { }
}
