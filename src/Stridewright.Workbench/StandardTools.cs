using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>
/// The project's own readers, arranger, judge and writers. The engraver takes about a second to load: it is opened
/// when the first page is asked for and serves the whole run.
/// </summary>
internal sealed class StandardTools : ITools
{
    // Wiring to be completed as the parts land; the calls are given beside each.

    // using var text = AbcReader.Decode(stream); return AbcReader.Read(text);
    public Reading<ValueList<Tune>> ReadAbc(Stream stream) => throw Missing("AbcReader");

    // return MusicXmlReader.ReadTune(stream);
    public Reading<Tune> ReadMusicXmlTune(Stream stream) => throw Missing("MusicXmlReader");

    // return MusicXmlReader.ReadScore(stream);
    public Reading<Score> ReadMusicXmlScore(Stream stream) => throw Missing("MusicXmlReader");

    // return SpanText.TryParse(text, octaveMm, out mm, out error);
    public bool TryReadSpan(string text, double octaveMm, out double mm, out string error) => throw Missing("SpanText");

    public ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation) =>
        Arranger.Arrange(tune, brief, cancellation);

    public Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute) =>
        Hands.Judge.Check(score, hands, quartersPerMinute);

    // return Bytes(stream => MusicXmlWriter.Write(score, stream));
    public byte[] ToMusicXml(Score score) => throw Missing("MusicXmlWriter");

    // return Bytes(stream => MidiWriter.Write(Performer.Perform(score), stream));
    public byte[] ToMidi(Score score) => throw Missing("MidiWriter");

    // return Bytes(stream => PdfWriter.Write(Engraver.Engrave(score, paper), stream));
    public byte[] ToPdf(Score score, Paper paper) => throw Missing("PdfWriter");

    // return Engraver.Engrave(score, paper).Pages, each as UTF-8
    public IReadOnlyList<byte[]> ToSvg(Score score, Paper paper) => throw Missing("Engraver");

    // private Engraver? _engraver; private Engraver Engraver => _engraver ??= Engraver.Create();
    // Dispose: _engraver?.Dispose();
    public void Dispose() { }

    private static NotSupportedException Missing(string part) => new(part + " is not wired yet");
}
