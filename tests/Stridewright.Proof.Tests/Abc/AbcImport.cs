using System.Text;
using System.Text.RegularExpressions;
using NAudio.Midi;
using Stridewright.Engraving;
using Stridewright.Proof.Tests.Abc;

[assembly: AssemblyFixture(typeof(AbcImport))]

namespace Stridewright.Proof.Tests.Abc;

/// <summary>
/// The engraving library's own reading of ABC: notes as it plays them. Its reader fails on most endings and its player takes
/// repeats, so both are made plain bar lines: notes come in the order in which they are written.
/// </summary>
public sealed partial class AbcImport : IDisposable
{
    private Engine? _engine;

    /// <summary>The top note at each onset, in quarters from the beginning.</summary>
    /// <param name="fresh">Start the library anew: a tune without sharps and flats in its key would get those of the tune
    /// read before.</param>
    public IReadOnlyList<(double At, int Key)> Read(string abc, bool fresh)
    {
        Assert.SkipUnless(Engraver.IsSupported, Engraver.UnsupportedMessage);
        var plain = RepeatsAndEndings().Replace(abc, "|");
        if (fresh)
        {
            Dispose();
        }
        _engine ??= Engine.Start(TimeSpan.FromSeconds(60), TestContext.Current.CancellationToken);
        Assert.True(_engine.Load("{\"inputFrom\":\"abc\"}"u8, Encoding.UTF8.GetBytes(plain)));
        var file = new MidiFile(new MemoryStream(_engine.Midi()), strictChecking: false);
        double quarter = file.DeltaTicksPerQuarterNote;
        return
        [
            .. file
                .Events.SelectMany(track => track)
                .OfType<NoteOnEvent>()
                .Where(note => note.Velocity > 0)
                .GroupBy(note => note.AbsoluteTime)
                .OrderBy(onset => onset.Key)
                .Select(onset => (onset.Key / quarter, onset.Max(note => note.NoteNumber))),
        ];
    }

    public void Dispose()
    {
        _engine?.Dispose();
        _engine = null;
    }

    [GeneratedRegex(@"(\[(?=\d)|:*\|+:*|::)(\d(,\d)*)?")]
    private static partial Regex RepeatsAndEndings();
}
