using System.Runtime.InteropServices;

namespace Stridewright.Workbench.Outputs;

/// <summary>
/// Puts a finished file in its place only where no file stands. <see cref="File.Move(string, string)"/> looks first and
/// renames then on Unix, so two programs at once may both succeed there; a hard link is made or refused in one step.
/// </summary>
internal static partial class NewFile
{
    private const int FileExists = 17; // EEXIST on Linux and macOS

    /// <exception cref="IOException">A file stands there, or the move failed.</exception>
    public static void Place(string temporary, string path)
    {
        if (OperatingSystem.IsWindows())
        {
            File.Move(temporary, path);
        }
        else if (Link(temporary, path) == 0)
        {
            File.Delete(temporary);
        }
        else if (Marshal.GetLastPInvokeError() == FileExists)
        {
            throw new IOException(path + " exists");
        }
        else
        {
            File.Move(temporary, path); // A file system without links.
        }
    }

    [LibraryImport("libc", EntryPoint = "link", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static partial int Link(string existing, string added);
}
