namespace Stridewright.Formats.Parts;

/// <summary>What speaks for a part as the one that carries the tune, the strongest sign first.</summary>
internal enum TuneSign
{
    Name,
    Words,
    ChordSymbols,

    /// <summary>Nothing but its place: it is the first.</summary>
    Place,
}

/// <summary>
/// Chooses among several parts: the one that is called like a tune, of several such or of none the first with words, then
/// the first with chord symbols, then the first. Common practice: the singer's part has the tune, a lead sheet's symbols
/// stand over it, and a score begins with its upper parts.
/// </summary>
internal static class TuneSigns
{
    /// <param name="sign">The strongest sign that told it from others.</param>
    public static T Likeliest<T>(IReadOnlyList<T> parts, Func<T, TuneSign, bool> has, out TuneSign sign)
    {
        sign = TuneSign.Place;
        foreach (var next in (TuneSign[])[TuneSign.Name, TuneSign.Words, TuneSign.ChordSymbols])
        {
            var with = parts.Where(p => has(p, next)).ToList();
            if (with.Count > 0 && with.Count < parts.Count)
            {
                parts = with;
                sign = sign == TuneSign.Place ? next : sign;
            }
        }
        return parts[0];
    }

    /// <summary>The sign in words, to follow "is read as the tune".</summary>
    public static string Text(TuneSign sign) =>
        sign switch
        {
            TuneSign.Name => "by its name",
            TuneSign.Words => "the first with words",
            TuneSign.ChordSymbols => "the first with chord symbols",
            _ => "the first with notes",
        };
}
