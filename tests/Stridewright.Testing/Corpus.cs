using Xunit;

namespace Stridewright.Testing;

/// <summary>
/// The folder of outside material beside the checkout: tunes, standards and tools that are not part of the project.
/// Tests that use it skip, saying so, where it is absent.
/// </summary>
public static class Corpus
{
    private static readonly Lazy<string?> Found = new(Find);

    /// <summary>Full path of a file or folder of the outside material; skips the test when it is not there.</summary>
    public static string PathOf(string relative)
    {
        var path = Found.Value is { } root ? Path.Combine(root, relative) : null;
        Assert.SkipUnless(
            path is not null && (File.Exists(path) || Directory.Exists(path)),
            $"outside material '{relative}' is not beside the checkout (set STRIDEWRIGHT_SHARED to its folder)"
        );
        return path!;
    }

    /// <summary>Files below a folder of the outside material with one of these endings, in ordinal order.</summary>
    public static IReadOnlyList<string> Files(string relativeFolder, params string[] endings) =>
        Directory
            .EnumerateFiles(PathOf(relativeFolder))
            .Where(f => endings.Any(e => f.EndsWith(e, StringComparison.OrdinalIgnoreCase)))
            .Order(StringComparer.Ordinal)
            .ToList();

    /// <summary>The same, or none where the outside material is absent: for what is measured on more than that.</summary>
    public static IReadOnlyList<string> FilesIfThere(string relativeFolder, params string[] endings) =>
        Found.Value is { } root && Directory.Exists(Path.Combine(root, relativeFolder))
            ? Files(relativeFolder, endings)
            : [];

    /// <summary>Root of the checkout, found from the test's own place.</summary>
    public static string CheckoutRoot
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Stridewright.slnx")))
            {
                folder = folder.Parent;
            }
            return folder?.FullName
                ?? throw new InvalidOperationException("Stridewright.slnx not found above the tests");
        }
    }

    private static string? Find()
    {
        var named = Environment.GetEnvironmentVariable("STRIDEWRIGHT_SHARED");
        if (!string.IsNullOrEmpty(named))
        {
            return named;
        }
        var beside = Path.Combine(CheckoutRoot, "..", "shared");
        return Directory.Exists(beside) ? Path.GetFullPath(beside) : null;
    }
}
