namespace Stridewright.Arranging;

/// <summary>The words for what a brief may choose, the same on the command line and in arrangement files; those for ways
/// of playing are in <see cref="Manners"/>.</summary>
public static class BriefWords
{
    public static IReadOnlyDictionary<string, Feel> Feels { get; } = Of<Feel>();

    public static IReadOnlyDictionary<string, Richness> Richnesses { get; } = Of<Richness>();

    public static IReadOnlyDictionary<string, HarmonyChangeKind> HarmonyChanges { get; } = Of<HarmonyChangeKind>();

    /// <summary>The value of a word, whatever the case of its letters; null: it is none of them.</summary>
    public static T? Find<T>(this IReadOnlyDictionary<string, T> words, string word)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(word);
        return words.TryGetValue(word.ToLowerInvariant(), out var value) ? value : null;
    }

    /// <summary>The word of a value.</summary>
    public static string WordOf<T>(this IReadOnlyDictionary<string, T> words, T value)
        where T : struct, Enum => words.First(w => EqualityComparer<T>.Default.Equals(w.Value, value)).Key;

    private static Dictionary<string, T> Of<T>()
        where T : struct, Enum => Enum.GetValues<T>().ToDictionary(Words.Of, StringComparer.Ordinal);
}
