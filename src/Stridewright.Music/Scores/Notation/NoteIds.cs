using System.Globalization;

namespace Stridewright.Music.Notation;

/// <summary>
/// Ids of bars and notes, made of their place and role alone, so that the same note keeps its id when the rest of the
/// piece changes. All are XML names without a colon (NCName).
/// </summary>
internal static class NoteIds
{
    /// <summary>One id per bar; bars that share a number are told apart by their order.</summary>
    public static string[] OfBars(ValueList<DraftBar> bars)
    {
        var taken = new Dictionary<string, int>();
        var used = new HashSet<string>();
        return bars.Select(bar =>
            {
                var id = "b" + Name(bar.Number);
                while (!used.Add(id))
                {
                    var nth = taken[id] = taken.GetValueOrDefault(id, 1) + 1;
                    var next = string.Create(CultureInfo.InvariantCulture, $"{id}.{nth}");
                    if (used.Add(next))
                    {
                        return next;
                    }
                }
                return id;
            })
            .ToArray();
    }

    public static string OfNote(string bar, Stroke stroke, ScoreTime at, Pitch pitch, int grace = 0)
    {
        var hand = stroke.Hand == Hand.Right ? 'R' : 'L';
        var leaning = grace > 0 ? string.Create(CultureInfo.InvariantCulture, $"g{grace}-") : "";
        return string.Create(
                CultureInfo.InvariantCulture,
                $"{bar}-{hand}{stroke.Voice}-{at.Numerator}_{at.Denominator}-{Name(stroke.Role)}-{leaning}"
            ) + pitch.ToString().Replace("#", "s", StringComparison.Ordinal);
    }

    private static string Name(string text) =>
        string.Concat(text.Select(c => char.IsAsciiLetterOrDigit(c) || c == '.' ? c : '_'));
}
