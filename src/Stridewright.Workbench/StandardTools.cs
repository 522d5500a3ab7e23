using System.Text;
using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Sound;

namespace Stridewright.Workbench;

/// <summary>
/// The project's own readers, arranger, judge and writers. The engraver takes about a second to load: it is opened
/// when the first page is asked for and serves the whole run.
/// </summary>
internal sealed class StandardTools : ITools
{
    private Engraver? _engraver;

    public Reading<ValueList<Tune>> ReadAbc(Stream stream)
    {
        var text = AbcReader.Decode(stream);
        if (text.Value is null)
        {
            return new(null, text.Diagnostics);
        }
        var reading = AbcReader.Read(new StringReader(text.Value));
        return reading with { Diagnostics = [.. text.Diagnostics, .. reading.Diagnostics] };
    }

    public Reading<Tune> ReadMusicXmlTune(Stream stream) => MusicXmlReader.ReadTune(stream);

    public Reading<Score> ReadMusicXmlScore(Stream stream) => MusicXmlReader.ReadScore(stream);

    public bool TryReadSpan(string text, double octaveMm, out double mm, out string error) =>
        SpanText.TryRead(text, octaveMm, out mm, out error);

    public ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation) =>
        Arranger.Arrange(tune, brief, cancellation);

    public Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute) =>
        Hands.Judge.Check(score, hands, quartersPerMinute);

    public byte[] ToMusicXml(Score score) => Bytes(stream => MusicXmlWriter.Write(score, stream));

    public byte[] ToMidi(Score score) => Bytes(stream => MidiWriter.Write(Performer.Perform(score), stream));

    public byte[] ToPdf(Score score, Paper paper) =>
        Bytes(stream => PdfWriter.Write(Engrave(score, paper), stream, score.Title));

    public IReadOnlyList<byte[]> ToSvg(Score score, Paper paper) =>
        [.. Engrave(score, paper).Pages.Select(Encoding.UTF8.GetBytes)];

    public void Dispose() => _engraver?.Dispose();

    private EngravedScore Engrave(Score score, Paper paper)
    {
        _engraver ??= Engraver.Create();
        var setup = PageSetup.Default with
        {
            Paper = paper == Paper.Letter ? Engraving.Paper.Letter : Engraving.Paper.A4,
        };
        using var xml = new MemoryStream(ToMusicXml(score));
        var reading = _engraver.Engrave(xml, setup);
        return reading.Value ?? throw new NotSupportedException(reading.Diagnostics[0].Message);
    }

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
