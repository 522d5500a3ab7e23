namespace Stridewright.Shelf.Storage;

/// <summary>The data folder: private, and one program's at a time.</summary>
internal sealed class ShelfFolder : IDisposable
{
    private const string FileName = "shelf.db",
        LockName = "shelf.lock",
        Unfinished = "unfinished-";

    private const UnixFileMode OwnFolder = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
        OwnFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly FileStream _lock;

    private ShelfFolder(string path, FileStream held) => (Path, _lock) = (path, held);

    public string Path { get; }

    public string Database => System.IO.Path.Combine(Path, FileName);

    /// <summary>Takes the folder, which is made where there is none. It is given back by disposing, or when the program
    /// ends in any way.</summary>
    /// <exception cref="ShelfException">Another program has it, or it cannot be used.</exception>
    public static ShelfFolder Take(string path)
    {
        path = System.IO.Path.GetFullPath(path);
        if (File.Exists(path))
        {
            throw new ShelfException(ShelfMessages.NotAFolder(path));
        }
        try
        {
            MakePrivate(path);
            var held = Lock(path);
            var folder = new ShelfFolder(path, held);
            folder.SweepUnfinished();
            return folder;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new ShelfException(ShelfMessages.NotWritable(path, Reason(fault, path)), fault);
        }
    }

    /// <summary>A name for a file that is only valid once it is finished; what a killed program left is swept away.</summary>
    public string UnfinishedFile(string ending) =>
        System.IO.Path.Combine(Path, Unfinished + Guid.NewGuid().ToString("N") + ending);

    /// <summary>A name for a copy that is kept, such as <c>shelf.before-restore-20261126T210400.db</c>.</summary>
    public string KeptFile(string why, DateTimeOffset now)
    {
        for (; ; now += TimeSpan.FromMilliseconds(1))
        {
            var name = FormattableString.Invariant($"shelf.before-{why}-{now:yyyyMMdd'T'HHmmssfff}.db");
            var file = System.IO.Path.Combine(Path, name);
            if (!File.Exists(file))
            {
                return file;
            }
        }
    }

    /// <summary>Deletes all but the newest copies of a kind.</summary>
    public void KeepOnly(int most, string why)
    {
        var copies = Directory.GetFiles(Path, $"shelf.before-{why}-*.db").OrderDescending(StringComparer.Ordinal);
        foreach (var old in copies.Skip(most).ToList())
        {
            File.Delete(old);
        }
    }

    /// <summary>A new, empty file for its owner alone; the database keeps the files beside it as private as it is itself.</summary>
    /// <param name="passes">It is deleted when it is closed.</param>
    public static FileStream CreatePrivate(string file, bool passes = false)
    {
        var options = Private(FileMode.CreateNew, FileShare.Read);
        options.Options = passes ? FileOptions.DeleteOnClose : FileOptions.None;
        return new(file, options);
    }

    public void Dispose() => _lock.Dispose();

    private static void MakePrivate(string path)
    {
        if (!Directory.Exists(path))
        {
            if (OperatingSystem.IsWindows())
            {
                Directory.CreateDirectory(path);
            }
            else
            {
                Directory.CreateDirectory(path, OwnFolder);
            }
            return;
        }
        // Somebody's folder of other things is not made private behind their back.
        if (!File.Exists(System.IO.Path.Combine(path, LockName)) && Directory.EnumerateFileSystemEntries(path).Any())
        {
            throw new ShelfException(ShelfMessages.OtherThings(path));
        }
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, OwnFolder);
            foreach (var file in Directory.GetFiles(path, "shelf.*"))
            {
                File.SetUnixFileMode(file, OwnFile);
            }
        }
    }

    private static FileStream Lock(string path)
    {
        var file = System.IO.Path.Combine(path, LockName);
        try
        {
            return new FileStream(file, Private(FileMode.OpenOrCreate, FileShare.None));
        }
        catch (IOException fault) when (File.Exists(file) && fault is not FileNotFoundException)
        {
            throw new ShelfException(ShelfMessages.InUse(path), fault);
        }
    }

    private static FileStreamOptions Private(FileMode mode, FileShare share)
    {
        var options = new FileStreamOptions
        {
            Mode = mode,
            Access = FileAccess.ReadWrite,
            Share = share,
        };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = OwnFile;
        }
        return options;
    }

    private void SweepUnfinished()
    {
        foreach (var file in Directory.GetFiles(Path, Unfinished + "*"))
        {
            File.Delete(file);
        }
    }

    private static string Reason(Exception fault, string path) =>
        fault is UnauthorizedAccessException
            ? "it may not be written to"
            : fault.Message.Replace(path, "it", StringComparison.Ordinal);
}
