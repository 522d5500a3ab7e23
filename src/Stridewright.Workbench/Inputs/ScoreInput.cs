using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>Reads one two-staff score from a file in MusicXML.</summary>
internal static class ScoreInput
{
    /// <summary>The score, if it has bars; else null and at least one problem.</summary>
    public static Score? Read(
        ITools tools,
        string file,
        List<Problem> problems,
        out ValueList<Diagnostic> findings,
        CancellationToken cancellation
    ) => Read(tools, file, problems, out findings, out _, cancellation);

    /// <inheritdoc cref="Read(ITools, string, List{Problem}, out ValueList{Diagnostic}, CancellationToken)"/>
    /// <param name="bytes">What the file holds; empty where it cannot be read.</param>
    public static Score? Read(
        ITools tools,
        string file,
        List<Problem> problems,
        out ValueList<Diagnostic> findings,
        out byte[] bytes,
        CancellationToken cancellation
    )
    {
        (findings, bytes) = ([], []);
        if (Directory.Exists(file) || !File.Exists(file))
        {
            return Fail(Directory.Exists(file) ? WorkbenchMessages.FolderToCheck : WorkbenchMessages.NotFound);
        }
        if (InputBytes.TryRead(file, cancellation, out var problem) is not { } read)
        {
            return Fail(problem);
        }
        bytes = read;
        switch (InputKinds.Of(file, bytes))
        {
            case InputKind.MusicXml:
                break;
            case InputKind.Empty:
                return Fail(WorkbenchMessages.EmptyFile);
            case InputKind.Abc:
                return Fail(WorkbenchMessages.AbcToCheck);
            default:
                return Fail(WorkbenchMessages.NotAScore);
        }
        using var stream = new MemoryStream(bytes, writable: false);
        var reading = tools.ReadMusicXmlScore(stream);
        findings = reading.Diagnostics;
        if (reading.Value is { Bars.Count: > 0 } score)
        {
            return score;
        }
        var errors = findings.Where(f => f.Severity == Severity.Error).ToList();
        problems.AddRange(errors.Select(e => new Problem(file, null, e.Place.ToString(), e.Message)));
        return errors.Count > 0 ? null : Fail(WorkbenchMessages.NoScoreInside);

        Score? Fail(string message)
        {
            problems.Add(new Problem(file, null, "", message));
            return null;
        }
    }
}
