using System.Reflection;

namespace Stridewright.Engraving;

/// <summary>Files beside the program and texts inside it.</summary>
internal static class Assets
{
    /// <summary>Full path of a file of the folder <c>engraving</c> beside the program.</summary>
    public static string PathOf(string name) => Path.Combine(AppContext.BaseDirectory, "engraving", name);

    /// <summary>A text built into this library.</summary>
    public static string Text(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
