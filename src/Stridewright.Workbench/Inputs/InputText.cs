using System.Text;

namespace Stridewright.Workbench.Inputs;

/// <summary>Text files of our own, in UTF-8.</summary>
internal static class InputText
{
    private const int MostBytesOfCharacter = 4;

    /// <summary>The text of a file, or the sentence that says why not.</summary>
    public static string? TryRead(string path, int mostCharacters, CancellationToken cancellation, out string problem)
    {
        if (Directory.Exists(path) || !File.Exists(path))
        {
            problem = Directory.Exists(path) ? WorkbenchMessages.FolderForFile : WorkbenchMessages.NotFound;
            return null;
        }
        return InputBytes.TryRead(path, cancellation, out problem) is { } bytes
            ? TryDecode(bytes, mostCharacters, out problem)
            : null;
    }

    /// <summary>The text of bytes, or the sentence that says why not.</summary>
    public static string? TryDecode(byte[] bytes, int mostCharacters, out string problem)
    {
        problem = "";
        if (bytes.Length > MostBytesOfCharacter * mostCharacters)
        {
            problem = WorkbenchMessages.TooLarge(MostBytesOfCharacter * mostCharacters);
            return null;
        }
        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            problem = WorkbenchMessages.NotUtf8;
            return null;
        }
    }
}
