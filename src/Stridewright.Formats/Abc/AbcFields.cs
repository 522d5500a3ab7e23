using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Reads the values of the fields M:, L: and Q: and an order of parts (ABC 2.1, 3.1.6 to 3.1.9).</summary>
internal static class AbcFields
{
    private const int MaxCount = 64;
    private const int MaxUnit = 64;

    /// <summary>A metre; null within is a free one (<c>none</c>). False when the text is no metre.</summary>
    public static bool TryMetre(string text, out Metre? metre)
    {
        metre = null;
        var word = text.Replace(" ", "", StringComparison.Ordinal);
        switch (word)
        {
            case "" or "none" or "None" or "NONE":
                return true;
            case "C" or "c":
                metre = Metre.FourFour with { Sign = MetreSign.Common };
                return true;
            case "C|" or "c|":
                metre = new Metre(2, 2, MetreSign.Cut);
                return true;
            default:
                break;
        }
        var slash = word.IndexOf('/', StringComparison.Ordinal);
        if (slash <= 0 || !TryNumber(word[(slash + 1)..], MaxUnit, out var unit) || !int.IsPow2(unit))
        {
            return false;
        }
        var count = 0;
        foreach (var part in word[..slash].Trim('(', ')').Split('+'))
        {
            if (!TryNumber(part, MaxCount, out var number))
            {
                return false;
            }
            count += number;
        }
        metre = new Metre(count, unit);
        return count is > 0 and <= MaxCount;
    }

    /// <summary>A unit length such as <c>1/8</c>.</summary>
    public static bool TryUnit(string text, out ScoreTime unit)
    {
        unit = default;
        var parts = text.Replace(" ", "", StringComparison.Ordinal).Split('/');
        var below = 1;
        if (
            parts.Length > 2
            || !TryNumber(parts[0], 4, out var above)
            || (parts.Length == 2 && !TryNumber(parts[1], 512, out below))
            || !int.IsPow2(below)
        )
        {
            return false;
        }
        unit = new ScoreTime(above, below);
        return true;
    }

    /// <summary>
    /// The unit length where none is given: a sixteenth in metres shorter than three quarters of a whole note, else an
    /// eighth (ABC 2.1, 3.1.7).
    /// </summary>
    public static ScoreTime DefaultUnit(Metre? metre) =>
        metre is { } given && given.BarLength < new ScoreTime(3, 4) ? ScoreTime.Sixteenth : ScoreTime.Eighth;

    /// <summary>
    /// A tempo as quarters a minute, 5 to 1000: <c>1/4=120</c>, <c>3/8=50 "Slow"</c>, <c>1/4 3/8=40</c>, and the old
    /// <c>120</c> and <c>C=120</c>, which count unit lengths. Words alone give null.
    /// </summary>
    public static bool TryTempo(string text, ScoreTime unit, out double? quarters)
    {
        quarters = null;
        var plain = WithoutQuotes(text);
        if (plain.Length == 0)
        {
            return true;
        }
        var sides = plain.Split('=');
        var beat = ScoreTime.Zero;
        if (sides.Length == 2)
        {
            foreach (var part in sides[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(8))
            {
                if (part[0] == 'C')
                {
                    beat +=
                        part.Length == 1 ? unit
                        : TryNumber(part[1..], 64, out var times) ? unit * times
                        : ScoreTime.Zero;
                }
                else if (TryFraction(part, out var length))
                {
                    beat += length;
                }
                else
                {
                    return false;
                }
            }
        }
        else
        {
            beat = unit;
        }
        if (
            sides.Length > 2
            || !double.TryParse(
                sides[^1],
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
                CultureInfo.InvariantCulture,
                out var rate
            )
        )
        {
            return false;
        }
        quarters = rate * beat.ToQuarters();
        return quarters is >= 5 and <= 1000;
    }

    /// <summary>An order of parts such as <c>AABB</c>, <c>A2.(BC)3</c>, written out; null when it cannot be read.</summary>
    public static ValueList<string>? Order(string text)
    {
        var open = new Stack<List<string>>();
        var now = new List<string>();
        List<string> last = [];
        foreach (var c in text)
        {
            if (c == '(')
            {
                open.Push(now);
                (now, last) = ([], []);
            }
            else if (c == ')' && open.Count > 0)
            {
                last = now;
                now = open.Pop();
                now.AddRange(last);
            }
            else if (char.IsAsciiLetter(c))
            {
                last = [c.ToString()];
                now.AddRange(last);
            }
            else if (char.IsAsciiDigit(c) && c != '0' && last.Count > 0)
            {
                for (var time = '1'; time < c && now.Count <= AbcLimits.Sections; time++)
                {
                    now.AddRange(last);
                }
                last = [];
            }
            else if (c is not ('.' or ' ' or ','))
            {
                return null;
            }
            if (now.Count > AbcLimits.Sections || open.Count > AbcLimits.Sections)
            {
                return null;
            }
        }
        return open.Count == 0 ? now.ToValueList() : null;
    }

    /// <summary>A number from 1 to a largest one, digits only.</summary>
    public static bool TryNumber(string text, int most, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number)
        && number >= 1
        && number <= most;

    private static bool TryFraction(string text, out ScoreTime length)
    {
        var parts = text.Split('/');
        var below = 1;
        var fine =
            parts.Length <= 2
            && TryNumber(parts[0], 64, out _)
            && (parts.Length == 1 || TryNumber(parts[1], 64, out below));
        length =
            fine && int.IsPow2(below)
                ? new ScoreTime(int.Parse(parts[0], CultureInfo.InvariantCulture), below)
                : default;
        return !length.IsZero;
    }

    private static string WithoutQuotes(string text)
    {
        var parts = text.Split('"');
        return string.Concat(parts.Where((_, i) => i % 2 == 0)).Trim();
    }
}
