using System.Runtime.InteropServices;

namespace Stridewright.Cli;

/// <summary>
/// Turns the first interruption (Ctrl-C, or the system's wish to end the program) into a cancellation, so that nothing
/// half-written stays; a second one ends the program at once.
/// </summary>
internal sealed class Interruption : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration[] _signals;

    public Interruption() =>
        _signals = [
            PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop),
            PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop),
        ];

    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        foreach (var signal in _signals)
        {
            signal.Dispose();
        }
        _stop.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        context.Cancel = !_stop.IsCancellationRequested;
        _stop.Cancel();
    }
}
