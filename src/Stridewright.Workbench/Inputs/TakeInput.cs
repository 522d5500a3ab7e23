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
        if (Directory.Exists(file) || !File.Exists(file))
        {
            return Fail("", Directory.Exists(file) ? WorkbenchMessages.FolderForFile : WorkbenchMessages.NotFound);
        }
        if (InputBytes.TryRead(file, cancellation, out var problem) is not { } bytes)
        {
            return Fail("", problem);
        }
        if (InputKinds.Of(file, bytes) != InputKind.Midi)
        {
            return Fail("", WorkbenchMessages.NotATake);
        }
        using var stream = new MemoryStream(bytes, writable: false);
        var reading = tools.ReadTake(stream);
        findings = reading.Diagnostics;
        if (reading.Value is { } take)
        {
            return take;
        }
        foreach (var error in findings.Where(f => f.Severity == Severity.Error))
        {
            Fail(error.Place.ToString(), error.Message);
        }
        return null;

        Performance? Fail(string place, string message)
        {
            problems.Add(new Problem(file, null, place, message));
            return null;
        }
    }
}
