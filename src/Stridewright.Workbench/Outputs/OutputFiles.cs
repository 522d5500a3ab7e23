using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Outputs;

/// <summary>One file to be written.</summary>
/// <param name="Name">In the folder of the outputs, or a full path.</param>
internal sealed record OutputFile(string Name, byte[] Bytes);

/// <summary>
/// Writes the outputs of one tune so that each is there whole or not at all. All are first written beside their places
/// under a temporary name and flushed to the disk, then renamed. What differs from an existing file is not replaced
/// unless wished, and an input of the run is never replaced.
/// </summary>
internal sealed class OutputFiles(string folder, bool replace, IEnumerable<string> inputs)
{
    private readonly Lazy<HashSet<string>> _inputs = new(() =>
        new HashSet<string>(inputs.Select(RealPath), StringComparer.OrdinalIgnoreCase)
    );

    /// <summary>The files as they stand now, or null and the sentence that says why nothing of this tune was written.</summary>
    public ValueList<WrittenFile>? TryWrite(
        IEnumerable<OutputFile> outputs,
        CancellationToken cancellation,
        out string problem
    )
    {
        var staged = new List<(string Temporary, string Path)>();
        var placed = new List<string>();
        var path = folder;
        try
        {
            var written = new List<WrittenFile>();
            Directory.CreateDirectory(folder);
            foreach (var output in outputs)
            {
                cancellation.ThrowIfCancellationRequested();
                path = Path.Combine(folder, output.Name);
                var same = Same(path, output.Bytes);
                problem = Obstacle(path, same);
                if (problem.Length > 0)
                {
                    return null;
                }
                written.Add(new WrittenFile(path, output.Bytes.Length, same == true));
                if (same != true)
                {
                    staged.Add((TemporaryFor(path), path));
                    Stage(staged[^1].Temporary, output.Bytes);
                }
            }
            cancellation.ThrowIfCancellationRequested();
            foreach (var (temporary, target) in staged)
            {
                path = target;
                if (replace)
                {
                    File.Move(temporary, target, overwrite: true);
                }
                else
                {
                    NewFile.Place(temporary, target);
                }
                placed.Add(target);
            }
            problem = "";
            return written.ToValueList();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            if (!replace)
            {
                placed.ForEach(Remove); // Nothing stood there before.
            }
            // Another process may have put its file there since: then it is that file that must not be replaced.
            problem =
                File.Exists(path) && !replace && staged.Exists(s => s.Path == path && File.Exists(s.Temporary))
                    ? WorkbenchMessages.WouldReplace(path)
                    : WorkbenchMessages.Unwritable(path, fault);
            return null;
        }
        finally
        {
            staged.ForEach(s => Remove(s.Temporary));
        }
    }

    private string Obstacle(string path, bool? same) =>
        Directory.Exists(path) ? WorkbenchMessages.OutputIsFolder(path)
        : same is null or true ? ""
        : _inputs.Value.Contains(RealPath(path)) ? WorkbenchMessages.OverInput
        : replace ? ""
        : WorkbenchMessages.WouldReplace(path);

    // Null when there is no such file.
    private static bool? Same(string path, byte[] bytes)
    {
        var file = new FileInfo(path);
        return !file.Exists
            ? null
            : file.Length == bytes.Length && File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes);
    }

    // The path with every link on the way followed.
    private static string RealPath(string path)
    {
        var full = Path.GetFullPath(path);
        if (Path.GetDirectoryName(full) is not { } parent)
        {
            return full;
        }
        var file = new FileInfo(Path.Combine(RealPath(parent), Path.GetFileName(full)));
        return file.LinkTarget is null ? file.FullName : file.ResolveLinkTarget(returnFinalTarget: true)!.FullName;
    }

    private static string TemporaryFor(string path) =>
        Path.Combine(Path.GetDirectoryName(path)!, $".{Path.GetFileName(path)}.{Path.GetRandomFileName()}.tmp");

    private static void Stage(string path, byte[] bytes)
    {
        using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        file.Write(bytes);
        file.Flush(flushToDisk: true);
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What could not be written in the first place may not be removable either; that was reported.
        }
    }
}
