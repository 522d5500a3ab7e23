using System.Globalization;

namespace Stridewright.Engraving;

/// <summary>Every sentence of this project that a user may see.</summary>
internal static class EngravingMessages
{
    public const string Unsupported =
        "engraving runs on Linux x64 only for now; write MusicXML instead and open it in a notation program";

    /// <summary>Over the page of a score's footnotes.</summary>
    public const string Notes = "Notes";

    /// <summary>Before a line on which a hand-out's pupil writes the name.</summary>
    public const string NameLine = "Name";

    public static string For(string pupil) => $"for {pupil}";

    public const string RightHand = "right";
    public const string LeftHand = "left";

    public const string EffortKey =
        "effort of each bar, 1 to 100: right hand solid and up, left hand hollow and down; diamond: cannot be played; star: among the hardest";

    /// <summary>The marked bars of a row in words.</summary>
    public static string BarsOf(IReadOnlyList<EffortColumn> row)
    {
        static string Listed(string what, IEnumerable<EffortColumn> bars)
        {
            const int most = 12;
            var numbers = bars.Select(b => b.Number).ToList();
            return numbers.Count == 0
                ? ""
                : $"{what}: {string.Join(", ", numbers.Take(most))}"
                    + (
                        numbers.Count > most
                            ? string.Create(CultureInfo.InvariantCulture, $" and {numbers.Count - most} more")
                            : ""
                    );
        }
        string[] words =
        [
            Listed("cannot be played", row.Where(b => b.IsFaulty)),
            Listed("hardest", row.Where(b => b.IsHard)),
        ];
        return string.Join("; ", words.Where(w => w.Length > 0));
    }

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
