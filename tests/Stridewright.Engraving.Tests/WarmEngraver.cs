using Stridewright.Engraving.Tests;

[assembly: AssemblyFixture(typeof(WarmEngraver))]

namespace Stridewright.Engraving.Tests;

/// <summary>One warm engraver for all tests.</summary>
public sealed class WarmEngraver : IDisposable
{
    private readonly Lazy<Engraver> _engraver = new(() => Engraver.Create(TimeSpan.FromSeconds(60)));

    public Engraver Engraver
    {
        get
        {
            Assert.SkipUnless(Engraver.IsSupported, Engraver.UnsupportedMessage);
            return _engraver.Value;
        }
    }

    /// <summary>Engraves a score that must come out without any finding.</summary>
    public EngravedScore Engrave(string musicXml, PageSetup? setup = null)
    {
        var read = Engraver.Engrave(musicXml, setup ?? PageSetup.Default, TestContext.Current.CancellationToken);
        Assert.Equal([], read.Diagnostics.Select(d => d.ToString()));
        return read.Value!;
    }

    public void Dispose()
    {
        if (_engraver.IsValueCreated)
        {
            _engraver.Value.Dispose();
        }
    }
}
