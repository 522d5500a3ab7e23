namespace Stridewright.Workbench.Tests;

/// <summary>A folder of one test, removed with what is in it.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Root { get; } = Directory.CreateTempSubdirectory("stridewright-test-").FullName;

    public string this[string relative] => Path.Combine(Root, relative);

    public string Put(string relative, string text)
    {
        var path = this[relative];
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>All files below a folder, hidden ones too, relative and in order.</summary>
    public string[] Files(string below = "") =>
        Directory.Exists(this[below])
            ? Directory
                .EnumerateFiles(this[below], "*", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(this[below], f).Replace('\\', '/'))
                .Order(StringComparer.Ordinal)
                .ToArray()
            : [];

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
