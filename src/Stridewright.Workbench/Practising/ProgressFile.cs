using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Practising;

/// <summary>Writes progress as a table into a file.</summary>
public static class ProgressFile
{
    /// <returns>Null: nothing was written, and why.</returns>
    public static WrittenFile? Write(
        string path,
        ProgressReport report,
        bool replace,
        CancellationToken cancellation,
        out string problem
    )
    {
        var full = Path.GetFullPath(path);
        var outputs = new OutputFiles(Path.GetDirectoryName(full)!, replace, []);
        return outputs.TryWrite([new(Path.GetFileName(full), ProgressCsv.Of(report))], cancellation, out problem)?[0];
    }
}
