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
        if (Directory.Exists(file) || !File.Exists(file))
        {
            return Fail(Directory.Exists(file) ? WorkbenchMessages.FolderToCheck : WorkbenchMessages.NotFound);
        }
        if (InputBytes.TryRead(file, cancellation, out var problem) is not { } bytes)
        {
            return Fail(problem);
        }
        switch (InputKinds.Of(file, bytes))
        {
            case InputKind.MusicXml:
                using (var stream = new MemoryStream(bytes, writable: false))
                {
                    var reading = tools.ReadNotes(stream);
                    findings = reading.Diagnostics;
                    return reading.Value ?? FailWith(reading.Diagnostics);
                }
            case InputKind.Arrangement:
                var stored = StoredArrangement.Read(tools, bytes);
                if (stored.Value is not { } held)
                {
                    return FailWith(stored.Diagnostics);
                }
                findings = stored.Diagnostics;
                var result = tools.Arrange(held.Tune, held.File.Brief, cancellation);
                return result.Arrangement is { } made ? ScoreNotes.Of(made.Score) : FailWith([result.Refusal!]);
            case InputKind.Empty:
                return Fail(WorkbenchMessages.EmptyFile);
            case InputKind.Abc:
                return Fail(WorkbenchMessages.AbcToCheck);
            default:
                return Fail(WorkbenchMessages.NotAScore);
        }

        ScoreNotes? FailWith(IEnumerable<Diagnostic> found)
        {
            var errors = found.Where(f => f.Severity == Severity.Error).ToList();
            problems.AddRange(errors.Select(e => new Problem(file, null, e.Place.ToString(), e.Message)));
            return errors.Count > 0 ? null : Fail(WorkbenchMessages.NoScoreInside);
        }

        ScoreNotes? Fail(string message)
        {
            problems.Add(new Problem(file, null, "", message));
            return null;
        }
    }
}
