using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>Reads the notes of a score to play: any piano score in MusicXML, or an arrangement file.</summary>
internal static class NotesInput
{
    /// <summary>The notes; else null and at least one problem.</summary>
    public static ScoreNotes? Read(
        ITools tools,
        string file,
        List<Problem> problems,
        out ValueList<Diagnostic> findings,
        CancellationToken cancellation
    )
    {
        findings = [];
        var named = new NamedFile(file, problems);
        if (named.Bytes(WorkbenchMessages.FolderToCheck, cancellation) is not { } bytes)
        {
            return null;
        }
        var kind = InputKinds.Of(file, bytes);
        var reading = kind switch
        {
            InputKind.MusicXml => Notes(tools, bytes),
            InputKind.Arrangement => Arranged(tools, bytes, cancellation),
            _ => null,
        };
        findings = reading?.Diagnostics ?? [];
        if (reading is null)
        {
            named.FailAs(kind);
        }
        else if (reading.Value is null)
        {
            named.Fail(findings, WorkbenchMessages.NoScoreInside);
        }
        return reading?.Value;
    }

    private static Reading<ScoreNotes> Notes(ITools tools, byte[] bytes)
    {
        using var stream = new MemoryStream(bytes, writable: false);
        return tools.ReadNotes(stream);
    }

    private static Reading<ScoreNotes> Arranged(ITools tools, byte[] bytes, CancellationToken cancellation)
    {
        var stored = StoredArrangement.Read(tools, bytes);
        if (stored.Value is not { } held)
        {
            return new(null, stored.Diagnostics);
        }
        var result = tools.Arrange(held.Tune, held.File.Brief, cancellation);
        return result.Arrangement is { } made
            ? new(ScoreNotes.Of(made.Score), stored.Diagnostics)
            : new(null, [result.Refusal!]);
    }
}
