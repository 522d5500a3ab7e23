using System.Xml;
using System.Xml.Linq;
using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Sound;

namespace Stridewright.Bench.Paired;

/// <summary>Reading and writing each format against the least that any program must do with the same bytes.</summary>
internal static class Reading
{
    private const int Rounds = 21;
    private const int Bars = 128;

    public static void Run()
    {
        var abc = System.Text.Encoding.UTF8.GetBytes(Material.Abc(Bars / Material.BarsInStrain));
        Race.Run(
            FormattableString.Invariant($"ABC, {Bars} bars, {abc.Length} bytes"),
            "a bar",
            Rounds,
            new("every character once", Bars, () => Characters(abc)),
            new("read as tunes", Bars, () => ReadAbc(abc))
        );
        var score = Material.Score(5, Bars / Material.BarsInStrain);
        var xml = Material.Xml(score);
        Race.Run(
            FormattableString.Invariant($"MusicXML, a two-staff score of {Bars} bars at level 5, {xml.Length} bytes"),
            "a bar",
            Rounds,
            new("bare XmlReader", Bars, () => Nodes(xml)),
            new("read as a score", Bars, () => MusicXmlReader.ReadScore(new MemoryStream(xml)).Value!),
            new("read as a tune", Bars, () => MusicXmlReader.ReadTune(new MemoryStream(xml)).Value!)
        );
        using var played = new MemoryStream();
        MidiWriter.Write(Performer.Perform(score), played);
        var midi = played.ToArray();
        Race.Run(
            FormattableString.Invariant($"MIDI, the same score played, {midi.Length} bytes"),
            "a bar",
            Rounds,
            new("every byte once", Bars, () => Bytes(midi)),
            new("read as a tune", Bars, () => MidiTuneReader.Read(new MemoryStream(midi)).Value!)
        );
        var document = XDocument.Load(Material.BareReader(xml));
        Race.Run(
            "Writing the same score",
            "a bar",
            Rounds,
            new("bare XmlWriter, of the finished document", Bars, () => Plain(document)),
            new("written from the score", Bars, () => Material.Xml(score))
        );
    }

    private static object Bytes(byte[] midi)
    {
        using var stream = new MemoryStream(midi);
        var high = 0;
        for (int value; (value = stream.ReadByte()) >= 0; )
        {
            high += value >> 7;
        }
        return high;
    }

    private static object Characters(byte[] abc)
    {
        using var reader = new StreamReader(new MemoryStream(abc));
        var buffer = new char[8192];
        var bars = 0;
        for (int count; (count = reader.Read(buffer)) > 0; )
        {
            foreach (var c in buffer.AsSpan(0, count))
            {
                bars += c == '|' ? 1 : 0;
            }
        }
        return bars;
    }

    private static object ReadAbc(byte[] abc) =>
        AbcReader.Read(new StringReader(AbcReader.Decode(new MemoryStream(abc)).Value!)).Value!;

    private static object Nodes(byte[] xml)
    {
        using var reader = Material.BareReader(xml);
        var nodes = 0;
        while (reader.Read())
        {
            nodes++;
        }
        return nodes;
    }

    private static object Plain(XDocument document)
    {
        using var stream = new MemoryStream();
        using (var writer = XmlWriter.Create(stream, new XmlWriterSettings { Indent = true }))
        {
            document.WriteTo(writer);
        }
        return stream.Length;
    }
}
