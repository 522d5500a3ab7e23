using System.Security.Cryptography;
using System.Text;

namespace Stridewright.Workbench.Pocket;

/// <summary>The file without its content: its frame, its style and its script, as they were built into the library.</summary>
internal static class PocketTemplate
{
    private static readonly Lazy<string> Frame = new(() => Resource("pocket.html"));
    private static readonly Lazy<string> Script = new(() => Resource("pocket.js"));
    private static readonly Lazy<string> Styles = new(() => Resource("pocket.css"));

    public static string Style => Styles.Value;

    /// <summary>A style for notes among words.</summary>
    /// <param name="address">The face itself, as a data address.</param>
    public static string FaceOf(string address) => $"@font-face{{font-family:Leipzig;src:url({address})}}";

    /// <summary>Puts content into the frame. All but the title is markup or JSON that cannot end its element.</summary>
    public static string Fill(string style, string title, string data, string signs, string screens, string piano)
    {
        var filled = new StringBuilder();
        var rest = Frame.Value;
        foreach (
            var (mark, content) in new[]
            {
                ("POLICY", Policy(style)),
                ("TITLE", title),
                ("STYLE", style),
                ("SIGNS", signs),
                ("SCREENS", screens),
                ("DATA", data),
                ("PIANO", piano),
                ("SCRIPT", Script.Value),
            }
        )
        {
            var place = $"<!--{mark}-->";
            var at = rest.IndexOf(place, StringComparison.Ordinal);
            filled.Append(rest, 0, at).Append(content);
            rest = rest[(at + place.Length)..];
        }
        return filled.Append(rest).ToString();
    }

    // Nothing may be loaded, and nothing run or styled but what stands in the file as it left here. The decoder of its
    // recordings is WebAssembly.
    private static string Policy(string style) =>
        string.Join(
            "; ",
            "default-src 'none'",
            $"script-src '{HashOf(Script.Value)}' 'wasm-unsafe-eval'",
            $"style-src '{HashOf(style)}'",
            "font-src data:",
            "img-src data:",
            "connect-src 'none'",
            "base-uri 'none'",
            "form-action 'none'"
        );

    private static string HashOf(string text) =>
        "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Resource(string name)
    {
        using var stream =
            typeof(PocketTemplate).Assembly.GetManifestResourceStream("pocket/" + name)
            ?? throw new InvalidOperationException("the library was built without " + name);
        using var reader = new StreamReader(stream, Encoding.UTF8);
        // As a browser reads it, so that the hashes are of the same text.
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
