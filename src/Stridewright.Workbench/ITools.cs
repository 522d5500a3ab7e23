using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>What the use cases ask of the other projects: the one seam between files and music.</summary>
internal interface ITools : IDisposable
{
    Reading<ValueList<Tune>> ReadAbc(Stream stream);

    /// <summary>A lead sheet from MusicXML, plain or in its container.</summary>
    Reading<Tune> ReadMusicXmlTune(Stream stream);

    /// <summary>A two-staff score from MusicXML, plain or in its container.</summary>
    Reading<Score> ReadMusicXmlScore(Stream stream);

    /// <summary>Reads a span such as <c>205</c>, <c>8.1in</c> or <c>ninth</c>, within the spans of hands.</summary>
    bool TryReadSpan(string text, double octaveMm, out double mm, out string problem);

    /// <summary>Reads the width of an octave such as <c>165.1</c> or <c>6.5in</c>, within those of keyboards.</summary>
    bool TryReadOctaveWidth(string text, out double mm, out string problem);

    ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation);

    /// <summary>The tune back on the beat, as it stands before it is ragged.</summary>
    Tune Plain(Tune tune);

    Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute);

    /// <summary>Up to three bars that ask most, hardest first.</summary>
    ValueList<HardBar> HardestBars(Verdict verdict);

    byte[] ToMusicXml(Score score);

    byte[] ToMidi(Score score);

    /// <summary>A lead sheet.</summary>
    byte[] ToMusicXml(Tune tune);

    byte[] ToMidi(Tune tune);

    /// <summary>Lays the MusicXML of <c>ToMusicXml</c> out on pages.</summary>
    Reading<EngravedPages> Engrave(byte[] musicXml, Paper paper, CancellationToken cancellation);
}

/// <summary>An engraved score.</summary>
/// <param name="Svg">One picture a page.</param>
/// <param name="Pdf">Draws the pages as one PDF.</param>
internal sealed record EngravedPages(IReadOnlyList<byte[]> Svg, Func<byte[]> Pdf);
