using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>Reads a take from a Standard MIDI File.</summary>
internal static class TakeInput
{
    /// <summary>What was played; else null and at least one problem.</summary>
    public static Performance? Read(
        ITools tools,
        string file,
        List<Problem> problems,
        out ValueList<Diagnostic> findings,
        CancellationToken cancellation
    )
    {
        findings = [];
        var named = new NamedFile(file, problems);
        if (named.Bytes(WorkbenchMessages.FolderForFile, cancellation) is not { } bytes)
        {
            return null;
        }
        if (InputKinds.Of(file, bytes) != InputKind.Midi)
        {
            named.Fail(WorkbenchMessages.NotATake);
            return null;
        }
        using var stream = new MemoryStream(bytes, writable: false);
        var reading = tools.ReadTake(stream);
        findings = reading.Diagnostics;
        if (reading.Value is null)
        {
            named.Fail(findings, WorkbenchMessages.NotATake);
        }
        return reading.Value;
    }
}
