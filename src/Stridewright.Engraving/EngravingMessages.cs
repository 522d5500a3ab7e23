using System.Globalization;

namespace Stridewright.Engraving;

/// <summary>Every sentence of this project that a user may see.</summary>
internal static class EngravingMessages
{
    public const string Unsupported =
        "engraving runs on Linux x64 only for now; write MusicXML instead and open it in a notation program";

    /// <summary>Over the page of a score's footnotes.</summary>
    public const string Notes = "Notes";

    public const string NoBars = "the score has no bars, so there is nothing to engrave";

    public static string AssetMissing(string path) =>
        $"a file of the engraver is missing: {path}; build or install the program again";

    public static string NotXml(string problem) => $"this is not well-formed XML: {problem}";

    public static string NotAScore(string root) =>
        $"this is a <{root}>, not a MusicXML score (<score-partwise>), so it cannot be engraved";

    public static string NotUnderstood(string problem) =>
        problem.Length > 0
            ? $"the engraver could not read the score: {problem}"
            : "the engraver could not read the score";

    public static string Warned(string remark) => $"the engraver remarks: {remark}";

    public static string TooLong(TimeSpan limit) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"engraving took longer than {limit.TotalSeconds:0.###} s and was stopped; engrave a shorter piece"
        );

    public static string Failed(string problem) => $"the engraver failed on this score: {problem}";
}
