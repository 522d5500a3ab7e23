using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Registers and textures of the right hand, and how long a texture lasts.</summary>
internal static class TextureStyle
{
    private static readonly string[] Kinds = ["single", "two_note", "octave", "octave_inner", "block", "over_octave"];

    public static void Add(StyleSheet sheet, IEnumerable<Sounding> right)
    {
        var onsets = right
            .GroupBy(s => s.Start)
            .OrderBy(g => g.Key)
            .Select(g => g.Select(s => s.Key).Distinct().Order().ToArray())
            .ToList();
        sheet.Spread("top", StyleMessages.Top, StyleUnit.Key, [.. onsets.Select(o => o[^1])]);
        sheet.Spread("lowest", StyleMessages.Lowest, StyleUnit.Key, [.. onsets.Select(o => o[0])]);
        var row = onsets.Select(Kind).ToArray();
        foreach (var kind in Kinds)
        {
            sheet.Share(kind, StyleMessages.Texture(kind), row.Count(k => k == kind), row.Length);
        }
        foreach (var kind in Kinds)
        {
            var (followed, kept) = (0, 0);
            for (var i = 0; i + 1 < row.Length; i++)
            {
                followed += row[i] == kind ? 1 : 0;
                kept += row[i] == kind && row[i + 1] == kind ? 1 : 0;
            }
            sheet.Share(kind + "_stays", StyleMessages.Stays(kind), kept, followed);
        }
    }

    private static string Kind(int[] keys) =>
        (keys.Length, keys[^1] - keys[0]) switch
        {
            (1, _) => "single",
            (_, > 12) => "over_octave",
            (2, 12) => "octave",
            (2, _) => "two_note",
            (_, 12) => "octave_inner",
            _ => "block",
        };
}
