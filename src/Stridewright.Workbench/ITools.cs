using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>What the use cases ask of the other projects: the one seam between files and music.</summary>
internal interface ITools : IDisposable
{
    Reading<ValueList<Tune>> ReadAbc(Stream stream);

    /// <summary>A lead sheet from MusicXML, plain or in its container.</summary>
    Reading<Tune> ReadMusicXmlTune(Stream stream);

    /// <summary>A two-staff score from MusicXML, plain or in its container.</summary>
    Reading<Score> ReadMusicXmlScore(Stream stream);

    /// <summary>Reads a span such as <c>205</c>, <c>8.1in</c> or <c>ninth</c>.</summary>
    bool TryReadSpan(string text, double octaveMm, out double mm, out string error);

    ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation);

    Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute);

    byte[] ToMusicXml(Score score);

    byte[] ToMidi(Score score);

    byte[] ToPdf(Score score, Paper paper);

    /// <summary>One picture a page.</summary>
    IReadOnlyList<byte[]> ToSvg(Score score, Paper paper);
}
