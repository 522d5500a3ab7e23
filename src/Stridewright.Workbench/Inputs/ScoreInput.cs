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
        var named = new NamedFile(file, problems);
        if (named.Bytes(WorkbenchMessages.FolderToCheck, cancellation) is not { } read)
        {
            return null;
        }
        bytes = read;
        if (InputKinds.Of(file, bytes) is not InputKind.MusicXml and var kind)
        {
            named.FailAs(kind);
            return null;
        }
        using var stream = new MemoryStream(bytes, writable: false);
        var reading = tools.ReadMusicXmlScore(stream);
        findings = reading.Diagnostics;
        if (reading.Value is { Bars.Count: > 0 } score)
        {
            return score;
        }
        named.Fail(findings, WorkbenchMessages.NoScoreInside);
        return null;
    }
}
