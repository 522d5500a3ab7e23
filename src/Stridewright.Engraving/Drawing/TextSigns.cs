namespace Stridewright.Engraving;

/// <summary>
/// Signs that the engraver writes into text as code points of its music face (SMuFL 1.4: standard accidentals,
/// chord symbols, figured bass, metronome marks, individual notes), as characters that a text face has and that can be copied
/// out of a PDF.
/// </summary>
internal static class TextSigns
{
    /// <summary>A text face is set this much smaller than the music face beside it: the engraver sets text at 4.5
    /// half spaces and music at 8.</summary>
    public const float SizeBesideMusic = 4.5f / 8;

    private static readonly Dictionary<int, string> Table = new()
    {
        [0xE260] = "♭",
        [0xE261] = "♮",
        [0xE262] = "♯",
        [0xE263] = "×",
        [0xE264] = "♭♭",
        [0xEA63] = "♭♭",
        [0xEA64] = "♭",
        [0xEA65] = "♮",
        [0xEA66] = "♯",
        [0xEA67] = "×",
        [0xED60] = "♭",
        [0xED61] = "♮",
        [0xED62] = "♯",
        [0xED63] = "×",
        [0xED64] = "♭♭",
        [0xE870] = "°",
        [0xE871] = "ø",
        [0xE872] = "+",
        [0xE873] = "△",
        [0xE874] = "−",
        [0xECA2] = "\U0001D15D",
        [0xECA3] = "\U0001D15E",
        [0xECA5] = "♩",
        [0xECA7] = "♪",
        [0xECB7] = ".",
        [0xE1D2] = "\U0001D15D",
        [0xE1D3] = "\U0001D15E",
        [0xE1D5] = "♩",
        [0xE1D7] = "♪",
        [0xE1E7] = ".",
        // Signs of Unicode that the faces lack.
        [0x1D12A] = "×",
        [0x1D12B] = "♭♭",
    };

    /// <summary>Whether the character is one of the music face, outside the characters of text.</summary>
    public static bool IsMusic(int character) => character is >= 0xE000 and <= 0xF8FF;

    /// <summary>What to set in place of the character; null: the character itself.</summary>
    public static string? For(int character) => Table.GetValueOrDefault(character);
}
