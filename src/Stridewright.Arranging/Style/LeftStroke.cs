using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Keys that the left hand strikes together.</summary>
/// <param name="At">Place in the bar.</param>
/// <param name="Keys">Each once, lowest first; at least one.</param>
internal sealed record LeftStroke(ScoreTime At, int[] Keys)
{
    /// <summary>A bar's strokes in time order.</summary>
    public static List<LeftStroke> Of(IEnumerable<Sounding> soundings) =>
        [
            .. soundings
                .GroupBy(s => s.At)
                .OrderBy(g => g.Key)
                .Select(g => new LeftStroke(g.Key, [.. g.Select(s => s.Key).Distinct().Order()])),
        ];

    /// <summary>A single note, an octave or a tenth.</summary>
    public static bool IsBass(int[] keys) => keys.Length == 1 || IsOctave(keys) || IsTenth(keys);

    public static bool IsOctave(int[] keys) => keys.Length == 2 && keys[1] - keys[0] == 12;

    public static bool IsTenth(int[] keys) => keys.Length == 2 && keys[1] - keys[0] is (15 or 16);

    /// <summary>Two keys or more that are no bass.</summary>
    public static bool IsChord(int[] keys) => keys.Length > 1 && !IsBass(keys);
}
