using System.Globalization;
using System.Text;

namespace Stridewright.Practice.Listening;

/// <summary>An alignment as tab-separated text (docs/comparing.md).</summary>
public static class AlignmentText
{
    public const string Header = "score_onset_beats\tscore_pitch\tnote_id\tperformed_onset_s\tperformed_pitch\tkind";

    /// <summary>A header and a line for each pair, those of the take in the order of the take, a missing note before the
    /// first played one that lies behind it in the score. What lies outside the bars that were to be heard is told as what
    /// it is of the whole score. Numbers have a decimal point in any country; lines end in a line
    /// feed.</summary>
    public static string Write(Alignment alignment)
    {
        ArgumentNullException.ThrowIfNull(alignment);
        var text = new StringBuilder(Header).Append('\n');
        foreach (var (expected, at) in PairOrder.Of(alignment))
        {
            PlayedNote? played = at is { } p ? alignment.Take.Notes[p] : null;
            text.Append(Number(expected?.Beats)).Append('\t');
            text.Append(expected?.Key.ToString(CultureInfo.InvariantCulture)).Append('\t');
            text.Append(expected is null ? "" : Clean(expected.Id)).Append('\t');
            text.Append(Number(played?.Onset)).Append('\t');
            text.Append(played?.Key.ToString(CultureInfo.InvariantCulture)).Append('\t');
            text.Append(
                    expected is null ? "insertion"
                    : played is null ? "deletion"
                    : "match"
                )
                .Append('\n');
        }
        return text.ToString();
    }

    private static string Number(double? number) =>
        number is { } known ? Math.Round(known, 6).ToString("0.0#####", CultureInfo.InvariantCulture) : "";

    // Ids of others may hold anything.
    private static string Clean(string id) => string.Concat(id.Select(c => char.IsControl(c) ? ' ' : c));
}
