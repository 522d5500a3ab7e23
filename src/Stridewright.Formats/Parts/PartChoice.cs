using System.Globalization;

namespace Stridewright.Formats.Parts;

/// <summary>
/// Finds the part that somebody asks for: <c>PART</c>, <c>PART:VOICE</c> or <c>:VOICE</c>. PART is a part's name, its
/// abbreviation, its id in the file or its number from the top, from 1, tried in this order and without regard to case;
/// VOICE is a voice's name inside the part. Without PART it is the part that would be read anyway.
/// </summary>
internal static class PartChoice
{
    private const int MostListed = 12;

    /// <param name="Part">Place in the list; -1 for the part that would be read anyway.</param>
    /// <param name="Voice">Null when none is named.</param>
    public readonly record struct Wish(int Part, string? Voice);

    /// <summary>Null when there is no such part. A part whose name has a colon in it is found as well.</summary>
    public static Wish? Find(IReadOnlyList<PartLabel> parts, string asked)
    {
        var text = asked.Trim();
        if (IndexOf(parts, text) is { } whole)
        {
            return new(whole, null);
        }
        var colon = text.LastIndexOf(':');
        if (colon < 0)
        {
            return null;
        }
        var (part, voice) = (text[..colon].Trim(), text[(colon + 1)..].Trim());
        return voice.Length == 0 ? null
            : part.Length == 0 ? new(-1, voice)
            : IndexOf(parts, part) is { } index ? new(index, voice)
            : null;
    }

    /// <summary>Such as <c>1 'Flute', 2 'Piano'</c>; of many the first ones.</summary>
    public static string List(IEnumerable<object> labels)
    {
        var all = labels.ToList();
        var listed = string.Join(", ", all.Take(MostListed));
        return all.Count <= MostListed
            ? listed
            : FormattableString.Invariant($"{listed} and {all.Count - MostListed} more");
    }

    private static int? IndexOf(IReadOnlyList<PartLabel> parts, string text)
    {
        if (text.Length == 0)
        {
            return null;
        }
        ReadOnlySpan<Func<PartLabel, string>> ways =
        [
            p => p.Name,
            p => p.Abbreviation,
            p => p.Id,
            p => p.Number.ToString(CultureInfo.InvariantCulture),
        ];
        foreach (var way in ways)
        {
            for (var i = 0; i < parts.Count; i++)
            {
                if (way(parts[i]).Equals(text, StringComparison.OrdinalIgnoreCase))
                {
                    return i;
                }
            }
        }
        return null;
    }
}
