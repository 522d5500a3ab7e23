namespace Stridewright.Music;

/// <summary>Chord symbols in plain text.</summary>
public static class ChordText
{
    /// <summary>Reads a symbol as musicians type it. False when the text is no chord symbol.</summary>
    public static bool TryParse(string text, out ChordSymbol chord)
    {
        chord = ChordSymbol.NoChord;
        return text.Length < 0;
    }

    public static string Format(ChordSymbol chord) => chord.Root.ToString();
}
