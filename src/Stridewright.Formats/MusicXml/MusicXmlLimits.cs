namespace Stridewright.Formats.MusicXml;

/// <summary>What a file may ask of the reader. Each bound lies far above what a tune or a piano score needs.</summary>
internal static class MusicXmlLimits
{
    /// <summary>Bytes of a file, and of a score inside a compressed one. A 300-bar piano score takes about 3 MB.</summary>
    public const int Bytes = 16 * 1024 * 1024;

    /// <summary>Elements and attributes kept: some 1200 bars of piano music.</summary>
    public const int Nodes = 400_000;

    /// <summary>Open elements; MusicXML nests about ten deep.</summary>
    public const int Depth = 64;

    /// <summary>Entries of a compressed file.</summary>
    public const int Entries = 1000;

    /// <summary>Inflated to deflated bytes, counted above <see cref="FreelyInflated"/>; scores deflate to about a twentieth.</summary>
    public const int Ratio = 200;

    public const int FreelyInflated = 1024 * 1024;

    public const int Bars = 10_000;

    /// <summary>Divisions of a quarter note.</summary>
    public const int Divisions = 1_000_000;

    /// <summary>Length of a bar in whole notes.</summary>
    public const int BarWholes = 64;

    /// <summary>Findings told one by one.</summary>
    public const int Findings = 200;

    /// <summary>Characters of a title, a syllable or any other text taken over.</summary>
    public const int Text = 200;

    /// <summary>Sharps or flats of a key signature.</summary>
    public const int Signature = 12;
}
