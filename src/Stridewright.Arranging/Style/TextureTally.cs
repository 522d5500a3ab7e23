namespace Stridewright.Arranging;

/// <summary>Counts how thick the right hand's onsets are, and how often a texture is followed by itself.</summary>
internal sealed class TextureTally
{
    /// <summary>Names of the kinds, by their number.</summary>
    public static string[] Kinds { get; } = ["single", "two_note", "octave", "octave_inner", "block", "over_octave"];

    /// <summary>Onsets per kind.</summary>
    public int[] Seen { get; } = new int[Kinds.Length];

    /// <summary>Onsets per kind that another one follows.</summary>
    public int[] Followed { get; } = new int[Kinds.Length];

    /// <summary>Of these, those that the same kind follows.</summary>
    public int[] Kept { get; } = new int[Kinds.Length];

    /// <param name="keys">Number of keys struck together.</param>
    /// <param name="span">Semitones from the lowest to the highest.</param>
    public static int Kind(int keys, int span) =>
        (keys, span) switch
        {
            (1, _) => 0,
            (_, > 12) => 5,
            (2, 12) => 2,
            (2, _) => 1,
            (_, 12) => 3,
            _ => 4,
        };

    /// <param name="kinds">Of a piece's onsets, in time order.</param>
    public void Add(IReadOnlyList<int> kinds)
    {
        for (var i = 0; i < kinds.Count; i++)
        {
            Seen[kinds[i]]++;
            if (i + 1 < kinds.Count)
            {
                Followed[kinds[i]]++;
                Kept[kinds[i]] += kinds[i + 1] == kinds[i] ? 1 : 0;
            }
        }
    }
}
