namespace Stridewright.Workbench.Inputs;

/// <summary>Reads whole files, up to a limit.</summary>
internal static class InputBytes
{
    /// <summary>No tune book or score comes near this; a larger file is something else. In bytes.</summary>
    public const int Limit = 32 * 1024 * 1024;

    /// <summary>The bytes of a file, or the sentence that says why not. Devices and pipes are read to the limit.</summary>
    public static byte[]? TryRead(string path, CancellationToken cancellation, out string problem)
    {
        problem = "";
        try
        {
            using var file = new FileStream(
                path,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete
            );
            using var bytes = new MemoryStream();
            var buffer = new byte[64 * 1024];
            for (int read; (read = file.Read(buffer)) > 0; )
            {
                cancellation.ThrowIfCancellationRequested();
                if (bytes.Length + read > Limit)
                {
                    problem = WorkbenchMessages.TooLarge(Limit);
                    return null;
                }
                bytes.Write(buffer, 0, read);
            }
            return bytes.ToArray();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            problem = WorkbenchMessages.Unreadable(path, fault);
            return null;
        }
    }
}
