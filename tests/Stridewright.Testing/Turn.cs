using Xunit;

namespace Stridewright.Testing;

/// <summary>
/// Heavy test programs of one checkout take turns: each has the whole machine while it runs, so that a browser is not
/// kept waiting by the searches of another program. An assembly fixture; what takes no turn runs beside it.
/// </summary>
public sealed class Turn : IAsyncLifetime
{
    // Above the folders of all test programs of a checkout: artifacts/bin/Stridewright.X.Tests/debug.
    private static readonly string Place = Path.Combine(AppContext.BaseDirectory, "..", "..", "turn");
    private FileStream? _held;

    /// <summary>Waits until no other program has the turn; a program that dies gives it back.</summary>
    public async ValueTask InitializeAsync()
    {
        while (_held is null)
        {
            try
            {
                _held = new FileStream(Place, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException)
            {
                await Task.Delay(200);
            }
        }
    }

    public ValueTask DisposeAsync() => _held?.DisposeAsync() ?? ValueTask.CompletedTask;
}
