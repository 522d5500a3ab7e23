using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>
/// The project's own readers, arranger, judge and writers. The engraver takes about a second to load: it is opened
/// when the first page is asked for and serves the whole run.
/// </summary>
internal sealed class StandardTools : ITools
{
    // Wiring to be completed as the parts land; the calls are given above each.

    // var text = AbcReader.Decode(stream);
    // if (text.Value is not { } source) return new(null, text.Diagnostics);
    // var book = AbcReader.Read(new StringReader(source));
    // return book with { Diagnostics = [.. text.Diagnostics, .. book.Diagnostics] };
    public Reading<ValueList<Tune>> ReadAbc(Stream stream) => throw Missing("AbcReader");

    // MusicXmlReader.ReadTune(stream)
    public Reading<Tune> ReadMusicXmlTune(Stream stream) => throw Missing("MusicXmlReader");

    // MusicXmlReader.ReadScore(stream)
    public Reading<Score> ReadMusicXmlScore(Stream stream) => throw Missing("MusicXmlReader");

    // SpanText.TryRead(text, octaveMm, out mm, out problem)
    public bool TryReadSpan(string text, double octaveMm, out double mm, out string problem) =>
        throw Missing("SpanText");

    // OctaveWidthText.TryRead(text, out mm, out problem)
    public bool TryReadOctaveWidth(string text, out double mm, out string problem) => throw Missing("OctaveWidthText");

    public ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation) =>
        Arranger.Arrange(tune, brief, cancellation);

    public Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute) =>
        Hands.Judge.Check(score, hands, quartersPerMinute);

    // verdict.HardestBars(3).Select(bar => new HardBar(bar.Number, bar.Value)).ToValueList()
    public ValueList<HardBar> HardestBars(Verdict verdict) => throw Missing("Verdict.HardestBars");

    // Bytes(stream => MusicXmlWriter.Write(score, stream))
    public byte[] ToMusicXml(Score score) => throw Missing("MusicXmlWriter");

    // Bytes(stream => MidiWriter.Write(Performer.Perform(score), stream))
    public byte[] ToMidi(Score score) => throw Missing("MidiWriter");

    // if (!Engraver.IsSupported) return new(null, [new(Severity.Error, Place.Whole, Engraver.UnsupportedMessage)]);
    // _engraver ??= Engraver.Create();
    // var setup = PageSetup.Default with { Paper = paper == Paper.A4 ? Engraving.Paper.A4 : Engraving.Paper.Letter };
    // var engraved = _engraver.Engrave(new MemoryStream(musicXml), setup, cancellation);
    // return new(
    //     engraved.Value is { } score
    //         ? new([.. score.Pages.Select(Encoding.UTF8.GetBytes)], () => Bytes(s => PdfWriter.Write(score, s)))
    //         : null,
    //     engraved.Diagnostics);
    public Reading<EngravedPages> Engrave(byte[] musicXml, Paper paper, CancellationToken cancellation) =>
        throw Missing("Engraver");

    // _engraver?.Dispose();
    public void Dispose() { }

    // private Engraver? _engraver;
    // private static byte[] Bytes(Action<Stream> write) { using var s = new MemoryStream(); write(s); return s.ToArray(); }
    private static NotSupportedException Missing(string part) => new(part + " is not wired yet");
}
