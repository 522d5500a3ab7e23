using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a setting settled as lines: <c>bpm 88</c>, <c>ragging 700 0 0 250</c> (one line a level, the setting's own
/// first), <c>runs 1600</c>, <c>strain 1200 4800</c> (left, right), <c>thin 5 9</c> (bars from 1),
/// <c>without-octaves 3 4</c> (bars from 1, without what comes before it too).</summary>
internal static class SettledText
{
    private const long MostPrice = 100_000_000;

    private static readonly Dictionary<string, Ease> Rungs = new(StringComparer.Ordinal)
    {
        ["tenths"] = Ease.Tenths,
        ["inner-notes"] = Ease.InnerNotes,
        ["octaves"] = Ease.Octaves,
        ["two-notes"] = Ease.TwoNotes,
    };

    public static IEnumerable<string> Write(Settled? settled)
    {
        if (settled is null)
        {
            yield break;
        }
        if (settled.BeatsPerMinute is { } tempo)
        {
            yield return "bpm " + tempo.ToString("R", CultureInfo.InvariantCulture);
        }
        foreach (var extra in settled.Ragging)
        {
            yield return Line("ragging", extra.Displacement, extra.Lateness, extra.Syncopation, extra.Tie);
        }
        if (settled.RunPrice is { } price)
        {
            yield return Line("runs", price);
        }
        yield return Line("strain", settled.LeftStrain, settled.RightStrain);
        if (settled.ThinBars.Count > 0)
        {
            yield return Line("thin", [.. settled.ThinBars.Select(b => b + 1L)]);
        }
        foreach (var ease in settled.Eased.GroupBy(e => e.Ease).OrderBy(g => g.Key))
        {
            yield return Line("without-" + Rungs.WordOf(ease.Key), [.. ease.Select(e => e.Bar + 1L)]);
        }
    }

    public static Settled Read(IEnumerable<TextLine> lines, TextFaults faults)
    {
        var settled = new Settled();
        foreach (var line in lines)
        {
            var (word, rest) = line.Split();
            var values = rest
                .Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
                .Select(t => long.TryParse(t, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : -1)
                .ToArray();
            var areNumbers = Array.TrueForAll(values, v => v is >= 0 and <= MostPrice);
            if (word == "bpm" && Tempo(rest.Text) is { } tempo)
            {
                settled = settled with { BeatsPerMinute = tempo };
            }
            else if (word == "ragging" && areNumbers && values is [var moved, var late, var syncopation, var tie])
            {
                var extra = new RagExtra(moved, late, syncopation, tie);
                settled = settled with { Ragging = [.. settled.Ragging, extra] };
            }
            else if (word == "runs" && areNumbers && values is [var runs])
            {
                settled = settled with { RunPrice = runs };
            }
            else if (word == "strain" && areNumbers && values is [var left, var right])
            {
                settled = settled with { LeftStrain = left, RightStrain = right };
            }
            else if (
                word == "thin"
                && areNumbers
                && values.Length > 0
                && values.All(v => v is > 0 and <= KeptText.MostBars)
            )
            {
                settled = settled with { ThinBars = values.Select(v => (int)v - 1).Order().Distinct().ToValueList() };
            }
            else if (
                word.StartsWith("without-", StringComparison.Ordinal)
                && Rungs.Find(word["without-".Length..]) is { } ease
                && areNumbers
                && values.Length > 0
                && values.All(v => v is > 0 and <= KeptText.MostBars)
            )
            {
                var eased = settled.Eased.Concat(values.Select(v => new EasedBar((int)v - 1, ease)));
                settled = settled with
                {
                    Eased = eased
                        .GroupBy(e => e.Bar)
                        .Select(g => g.MaxBy(e => e.Ease))
                        .OrderBy(e => e.Bar)
                        .ToValueList(),
                };
            }
            else
            {
                faults.Add(line, ArrangementTextMessages.NotSettled(line.Text));
            }
        }
        return settled;
    }

    private static double? Tempo(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var tempo)
        && tempo is >= Brief.SlowestBeats and <= Brief.FastestBeats
            ? tempo
            : null;

    private static string Line(string word, params long[] values) =>
        word + " " + string.Join(' ', values.Select(v => v.ToString(CultureInfo.InvariantCulture)));
}
