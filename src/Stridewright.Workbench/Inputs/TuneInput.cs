using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench.Inputs;

/// <summary>The tunes of a file of any kind.</summary>
/// <param name="Stored">The arrangement file that the one tune comes from; null: another kind of file.</param>
internal sealed record TuneInput(ValueList<Tune> Tunes, ValueList<Diagnostic> Findings, ArrangementFile? Stored = null)
{
    /// <param name="part">Part that has the tune; null for the likeliest.</param>
    public static TuneInput Read(ITools tools, InputFile input, byte[] bytes, string? part)
    {
        using var stream = new MemoryStream(bytes, writable: false);
        switch (InputKinds.Of(input.FullPath, bytes))
        {
            case InputKind.Abc:
                var book = tools.ReadAbc(stream, part);
                return new(book.Value ?? [], book.Diagnostics);
            case InputKind.MusicXml:
                return One(tools.ReadMusicXmlTune(stream, part));
            case InputKind.Midi:
                return One(tools.ReadMidiTune(stream, part));
            case InputKind.Arrangement:
                var stored = StoredArrangement.Read(tools, bytes);
                return stored.Value is { } held
                    ? new([held.Tune], stored.Diagnostics, held.File)
                    : new([], stored.Diagnostics);
            case InputKind.Empty:
                return Failed(WorkbenchMessages.EmptyFile);
            default:
                return Failed(WorkbenchMessages.UnknownKind);
        }
    }

    private static TuneInput One(Reading<Tune> reading) =>
        new(reading.Value is { } tune ? [tune] : [], reading.Diagnostics);

    private static TuneInput Failed(string message) => new([], [new Diagnostic(Severity.Error, Place.Whole, message)]);
}
