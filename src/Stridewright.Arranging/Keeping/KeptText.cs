using System.Globalization;
using System.Text.RegularExpressions;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Kept bars as lines: <c>bar 5 left</c>, and under it one line for each stroke, such as
/// <c>1/8+1/16 tune:12 {B4} C5 E5 rolled voice 2</c>: place and length in whole notes, what it is for, the tune's note
/// by its number from 1, crushed notes, keys from the lowest up.
/// </summary>
internal static partial class KeptText
{
    public const int MostStrokes = 20_000;
    public const int MostBars = 10_000;

    /// <summary>Largest number of a note of the tune.</summary>
    public const int MostTuneNote = 1_000_000;

    /// <exception cref="ArgumentException">What a stroke is there for is no single word.</exception>
    public static IEnumerable<string> Write(ValueList<KeptBar> kept)
    {
        foreach (var bar in kept)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"bar {bar.Bar + 1} {Words.Of(bar.Hand)}");
            foreach (var stroke in bar.Strokes)
            {
                yield return "  " + Write(stroke);
            }
            if (bar.LeftOut.Count > 0)
            {
                yield return "  omits "
                    + string.Join(' ', bar.LeftOut.Select(n => (n + 1).ToString(CultureInfo.InvariantCulture)));
            }
        }
    }

    private static string Write(KeptStroke stroke)
    {
        if (!RoleOnly().IsMatch(stroke.Role))
        {
            throw new ArgumentException($"'{stroke.Role}' is no word for what a stroke is there for");
        }
        var tune = stroke.Tune is { } n ? ":" + (n + 1).ToString(CultureInfo.InvariantCulture) : "";
        var graces = stroke.Graces.Count > 0 ? $" {{{string.Join(' ', stroke.Graces)}}}" : "";
        return $"{stroke.At}+{stroke.Length} {stroke.Role}{tune}{graces} {string.Join(' ', stroke.Pitches)}"
            + (stroke.Rolled ? " rolled" : "")
            + (stroke.Voice != 1 ? string.Create(CultureInfo.InvariantCulture, $" voice {stroke.Voice}") : "");
    }

    public static ValueList<KeptBar> Read(IEnumerable<TextLine> lines, TextFaults faults)
    {
        var kept = new List<(KeptBar Bar, List<KeptStroke> Strokes, List<int> LeftOut)>();
        var bars = new HashSet<(int, Hand)>();
        var strokes = 0;
        foreach (var line in lines)
        {
            var (word, rest) = line.Split();
            if (word == "bar")
            {
                var bar = Bar(line, faults);
                if (!bars.Add((bar.Bar, bar.Hand)) && bar.Bar >= 0)
                {
                    faults.Add(line, ArrangementTextMessages.BarTwice(bar.Bar + 1, Words.Of(bar.Hand)));
                }
                kept.Add((bar, [], []));
            }
            else if (kept.Count == 0)
            {
                faults.Add(line, ArrangementTextMessages.StrokeOutsideBar);
            }
            else if (word == "omits")
            {
                Omit(kept[^1].LeftOut, rest, faults);
            }
            else if (++strokes > MostStrokes)
            {
                faults.Add(line, ArrangementTextMessages.TooMany("kept strokes", MostStrokes));
                break;
            }
            else if (new StrokeReader(line, faults).Read() is { } stroke)
            {
                kept[^1].Strokes.Add(stroke);
            }
        }
        return kept.Select(k =>
                k.Bar with
                {
                    Strokes = k.Strokes.OrderBy(s => s.At).ToValueList(),
                    LeftOut = k.LeftOut.ToValueList(),
                }
            )
            .ToValueList();
    }

    private static KeptBar Bar(TextLine line, TextFaults faults)
    {
        var words = line.Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (words is [_, var number, "left" or "right"] && Number(number, MostBars) is { } bar)
        {
            return new KeptBar(bar - 1, words[2] == "left" ? Hand.Left : Hand.Right, []);
        }
        faults.Add(line, ArrangementTextMessages.NoBar(line.Text, MostBars));
        return new KeptBar(-1, Hand.Left, []);
    }

    private static void Omit(List<int> leftOut, TextLine rest, TextFaults faults)
    {
        foreach (var word in rest.Text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).DefaultIfEmpty(""))
        {
            if (
                Number(word, MostTuneNote) is { } number
                && !leftOut.Contains(number - 1)
                && leftOut.Count < MostStrokes
            )
            {
                leftOut.Add(number - 1);
                continue;
            }
            faults.Add(rest, ArrangementTextMessages.NoOmitted);
            return;
        }
    }

    /// <summary>A number from 1 to a largest one; null when the text is none.</summary>
    public static int? Number(string text, int most) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= 1 && n <= most
            ? n
            : null;

    [GeneratedRegex("^[a-z][a-z-]*$")]
    private static partial Regex RoleOnly();
}
