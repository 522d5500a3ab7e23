using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Outputs;

/// <summary>One file to be written.</summary>
/// <param name="Name">In the folder of the outputs, or a full path.</param>
/// <param name="Blocks">Its bytes, made while they are written.</param>
internal sealed record OutputFile(string Name, IEnumerable<byte[]> Blocks)
{
    public OutputFile(string name, byte[] bytes)
        : this(name, [bytes]) { }
}

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
                if (Directory.Exists(path))
                {
                    problem = WorkbenchMessages.OutputIsFolder(path);
                    return null;
                }
                var temporary = TemporaryFor(path);
                staged.Add((temporary, path));
                var length = Stage(temporary, output.Blocks, cancellation);
                var same = Same(path, temporary);
                problem = Obstacle(path, same);
                if (problem.Length > 0)
                {
                    return null;
                }
                written.Add(new WrittenFile(path, length, same == true));
                if (same == true)
                {
                    staged.RemoveAt(staged.Count - 1);
                    Remove(temporary);
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
        same is null or true ? ""
        : _inputs.Value.Contains(RealPath(path)) ? WorkbenchMessages.OverInput
        : replace ? ""
        : WorkbenchMessages.WouldReplace(path);

    // Null when there is no such file.
    private static bool? Same(string path, string temporary)
    {
        var (stands, made) = (new FileInfo(path), new FileInfo(temporary));
        if (!stands.Exists)
        {
            return null;
        }
        if (stands.Length != made.Length)
        {
            return false;
        }
        using var old = stands.OpenRead();
        using var fresh = made.OpenRead();
        var (a, b) = (new byte[64 * 1024], new byte[64 * 1024]);
        while (fresh.ReadAtLeast(b, b.Length, throwOnEndOfStream: false) is > 0 and var read)
        {
            if (
                old.ReadAtLeast(a, a.Length, throwOnEndOfStream: false) != read
                || !a.AsSpan(0, read).SequenceEqual(b.AsSpan(0, read))
            )
            {
                return false;
            }
        }
        return true;
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

    private static long Stage(string path, IEnumerable<byte[]> blocks, CancellationToken cancellation)
    {
        using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        foreach (var block in blocks)
        {
            cancellation.ThrowIfCancellationRequested();
            file.Write(block);
        }
        file.Flush(flushToDisk: true);
        return file.Length;
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
