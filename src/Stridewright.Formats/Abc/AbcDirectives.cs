using System.Globalization;

namespace Stridewright.Formats.Abc;

/// <summary>
/// What a tune may hold and ABC 2.1 cannot say, in directives of our own that other programs pass over
/// (<c>%%stridewright-…</c>; ABC 2.1, 11, leaves directives open).
/// </summary>
internal sealed class AbcDirectives
{
    /// <summary>Every name begins with it.</summary>
    public const string Prefix = "stridewright-";

    /// <summary>The bars' numbers in order: <c>0 1..8 X1 9..16</c>.</summary>
    public const string BarNumbers = Prefix + "bar-numbers";

    /// <summary>Bars shorter than the metre's are as long as they are, wherever they stand.</summary>
    public const string ShortBars = Prefix + "short-bars";

    /// <summary>Keys of more than seven sharps or flats keep their names.</summary>
    public const string FarKeys = Prefix + "far-keys";

    /// <summary>The order in which parts of any name are played.</summary>
    public const string PartOrder = Prefix + "part-order";

    /// <summary>The numbers of the verses, one for each line of words under a line of music.</summary>
    public const string Verses = Prefix + "verses";

    // Characters that part words and mean ranges.
    private const string Reserved = " .";

    public IReadOnlyList<string>? Numbers { get; private set; }

    public bool KeepsShortBars { get; private set; }

    public bool KeepsFarKeys { get; private set; }

    public IReadOnlyList<string>? Order { get; private set; }

    public IReadOnlyList<int>? VerseNumbers { get; private set; }

    /// <summary>Takes a directive over; false when it is one of ours and cannot be read.</summary>
    public bool Read(string name, string[] words)
    {
        switch (name)
        {
            case BarNumbers:
                Numbers = Expanded(words);
                return Numbers is not null;
            case ShortBars:
                KeepsShortBars = true;
                return true;
            case FarKeys:
                KeepsFarKeys = true;
                return true;
            case PartOrder:
                Order = words.Take(AbcLimits.Sections).Select(AbcText.Unescape).ToList();
                return words.Length <= AbcLimits.Sections;
            case Verses:
                VerseNumbers = words
                    .Select(w => AbcFields.TryNumber(w, AbcLimits.VerseNumber, out var verse) ? verse : 0)
                    .ToList();
                return VerseNumbers.All(v => v > 0);
            default:
                return !name.StartsWith(Prefix, StringComparison.Ordinal);
        }
    }

    /// <summary>Words for <see cref="BarNumbers"/>: numbers that count on as a range.</summary>
    public static string Ranges(IReadOnlyList<string> numbers)
    {
        var words = new List<string>();
        for (int i = 0, next; i < numbers.Count; i = next)
        {
            next = i + 1;
            if (Count(numbers[i]) is { } first)
            {
                while (next < numbers.Count && Count(numbers[next]) == first + next - i)
                {
                    next++;
                }
            }
            words.Add(Word(numbers[i]) + (next - i > 1 ? ".." + numbers[next - 1] : ""));
        }
        return string.Join(' ', words);
    }

    /// <summary>A text as one word.</summary>
    public static string Word(string text) => AbcText.Escape(text, Reserved);

    private static List<string>? Expanded(string[] words)
    {
        var numbers = new List<string>();
        foreach (var word in words)
        {
            var ends = word.Split("..");
            if (ends.Length == 1)
            {
                numbers.Add(AbcText.Unescape(word));
                continue;
            }
            if (ends.Length > 2 || Count(ends[0]) is not { } from || Count(ends[1]) is not { } to)
            {
                return null;
            }
            for (var n = from; n <= to && numbers.Count <= AbcLimits.Bars; n++)
            {
                numbers.Add(n.ToString(CultureInfo.InvariantCulture));
            }
        }
        return numbers;
    }

    // A plain whole number as it is usually written.
    private static int? Count(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        && n < 1_000_000
        && n.ToString(CultureInfo.InvariantCulture) == text
            ? n
            : null;
}
