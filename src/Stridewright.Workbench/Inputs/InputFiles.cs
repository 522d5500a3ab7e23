using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>One file to read.</summary>
/// <param name="Name">As it is shown: as named, or below the folder named.</param>
/// <param name="FullPath">Absolute path, by which a file named twice is known.</param>
internal sealed record InputFile(string Name, string FullPath);

/// <summary>
/// Finds the files that names mean. A folder stands for the tunes in it and below it, in ordinal order; hidden ones,
/// links to folders, the output folder, and MIDI files that lie beside the written tune of their name are left out there.
/// A file named twice is read once.
/// </summary>
internal sealed class InputFiles
{
    private static readonly EnumerationOptions Visible = new()
    {
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System,
        IgnoreInaccessible = false,
    };

    // Links to folders may lead in circles.
    private static readonly EnumerationOptions VisibleFolders = new()
    {
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        IgnoreInaccessible = false,
    };

    private readonly List<InputFile> _files = [];
    private readonly List<Problem> _problems = [];
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly string _outputFolder;
    private readonly bool _scoresOnly;

    /// <param name="scoresOnly">A folder stands for the MusicXML files in it and below it.</param>
    public InputFiles(
        IEnumerable<string> names,
        string outputFolder,
        CancellationToken cancellation,
        bool scoresOnly = false
    )
    {
        _scoresOnly = scoresOnly;
        _outputFolder = Path.TrimEndingDirectorySeparator(outputFolder);
        foreach (var name in names)
        {
            Add(name, cancellation);
        }
    }

    public IReadOnlyList<InputFile> Files => _files;

    public IReadOnlyList<Problem> Problems => _problems;

    private void Add(string name, CancellationToken cancellation)
    {
        if (Directory.Exists(name))
        {
            var before = _files.Count + _problems.Count;
            AddFolder(name, cancellation);
            if (_files.Count + _problems.Count == before && !Contains(name))
            {
                _problems.Add(
                    new Problem(
                        name,
                        null,
                        "",
                        _scoresOnly ? WorkbenchMessages.NoScoreInFolder : WorkbenchMessages.EmptyFolder
                    )
                );
            }
        }
        else if (File.Exists(name))
        {
            AddFile(name);
        }
        else
        {
            _problems.Add(new Problem(name, null, "", WorkbenchMessages.NotFound));
        }
    }

    private bool Contains(string folder)
    {
        var root = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)) + Path.DirectorySeparatorChar;
        return _seen.Any(path => path.StartsWith(root, StringComparison.Ordinal));
    }

    // A MIDI file beside a written tune of its name, or of its name up to a dot, is that tune played.
    private static bool IsRendering(string file, HashSet<string> written)
    {
        var stem = Stem(file);
        return Enumerable
            .Range(0, stem.Length + 1)
            .Any(i => (i == stem.Length || stem[i] == '.') && written.Contains(stem[..i]));
    }

    private static string Stem(string file) => Path.GetFileNameWithoutExtension(file);

    private static bool HasEnding(string file, string[] endings) =>
        endings.Contains(Path.GetExtension(file), StringComparer.OrdinalIgnoreCase);

    private void AddFile(string name)
    {
        var full = Path.GetFullPath(name);
        if (_seen.Add(full))
        {
            _files.Add(new InputFile(name, full));
        }
    }

    private void AddFolder(string folder, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        try
        {
            var files = Directory.EnumerateFiles(folder, "*", Visible).Order(StringComparer.Ordinal).ToList();
            var wanted = _scoresOnly ? InputKinds.ScoreEndings : InputKinds.WrittenEndings;
            var written = files.Where(f => HasEnding(f, InputKinds.WrittenEndings)).Select(Stem).ToHashSet();
            foreach (var file in files)
            {
                var isPlayed = !_scoresOnly && HasEnding(file, InputKinds.PlayedEndings);
                if (HasEnding(file, wanted) || (isPlayed && !IsRendering(file, written)))
                {
                    AddFile(file);
                }
            }
            foreach (
                var below in Directory.EnumerateDirectories(folder, "*", VisibleFolders).Order(StringComparer.Ordinal)
            )
            {
                if (Path.GetFullPath(below) != _outputFolder)
                {
                    AddFolder(below, cancellation);
                }
            }
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            _problems.Add(new Problem(folder, null, "", WorkbenchMessages.Unreadable(folder, fault)));
        }
    }
}
