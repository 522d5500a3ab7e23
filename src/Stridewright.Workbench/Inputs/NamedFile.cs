using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>One file that somebody named, and what is wrong with it.</summary>
internal sealed class NamedFile(string path, List<Problem> problems)
{
    /// <summary>All its bytes; else null and a problem.</summary>
    /// <param name="isFolder">What to say of a folder.</param>
    public byte[]? Bytes(string isFolder, CancellationToken cancellation)
    {
        var problem =
            Directory.Exists(path) ? isFolder
            : File.Exists(path) ? ""
            : WorkbenchMessages.NotFound;
        var bytes = problem.Length > 0 ? null : InputBytes.TryRead(path, cancellation, out problem);
        if (bytes is null)
        {
            Fail(problem);
        }
        return bytes;
    }

    public void Fail(string message) => problems.Add(new Problem(path, null, "", message));

    /// <summary>The errors among what was found, each with its place; where there is none, one for the whole.</summary>
    public void Fail(IEnumerable<Diagnostic> found, string otherwise)
    {
        var errors = found.Where(f => f.Severity == Severity.Error).ToList();
        problems.AddRange(errors.Select(e => new Problem(path, null, e.Place.ToString(), e.Message)));
        if (errors.Count == 0)
        {
            Fail(otherwise);
        }
    }

    /// <summary>Says what a file is that is no score.</summary>
    public void FailAs(InputKind kind) =>
        Fail(
            kind switch
            {
                InputKind.Empty => WorkbenchMessages.EmptyFile,
                InputKind.Abc => WorkbenchMessages.AbcToCheck,
                _ => WorkbenchMessages.NotAScore,
            }
        );
}
