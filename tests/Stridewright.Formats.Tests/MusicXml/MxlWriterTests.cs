using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using System.Xml;
using System.Xml.Schema;
using Stridewright.Formats.MusicXml;
using Stridewright.Testing;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>The compressed file against MusicXML 4.0 (container reference), its schema, and the ZIP file format
/// specification (APPNOTE 4.3.7: the local file header).</summary>
public sealed class MxlWriterTests
{
    private static readonly byte[] Score = Encoding.UTF8.GetBytes(Part(FourFour + Note("C5", 16)));

    private static byte[] Packed()
    {
        using var stream = new MemoryStream();
        MxlWriter.Write(Score, stream);
        return stream.ToArray();
    }

    [Fact]
    public void The_media_type_comes_first_stored_and_plain()
    {
        var bytes = Packed();
        Assert.Equal("PK\u0003\u0004"u8, bytes.AsSpan(0, 4));
        Assert.Equal(0, BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(6))); // neither encrypted nor sized later
        Assert.Equal(0, BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(8))); // stored
        Assert.Equal(0, BinaryPrimitives.ReadUInt16LittleEndian(bytes.AsSpan(28))); // no extra field
        Assert.Equal("mimetypeapplication/vnd.recordare.musicxml"u8, bytes.AsSpan(30, 42));
    }

    [Fact]
    public void The_container_is_valid_and_names_the_score()
    {
        using var archive = new ZipArchive(new MemoryStream(Packed()));
        Assert.Equal(["mimetype", "META-INF/container.xml", "score.musicxml"], archive.Entries.Select(e => e.FullName));
        var schemas = new XmlSchemaSet { XmlResolver = null };
        schemas.Add(null, Corpus.PathOf("standards/container.xsd"));
        var settings = new XmlReaderSettings { ValidationType = ValidationType.Schema, Schemas = schemas };
        using var reader = XmlReader.Create(archive.GetEntry("META-INF/container.xml")!.Open(), settings);
        Assert.True(reader.ReadToFollowing("rootfile"));
        Assert.Equal("score.musicxml", reader.GetAttribute("full-path"));
        Assert.Equal("application/vnd.recordare.musicxml+xml", reader.GetAttribute("media-type"));
        while (reader.Read()) { }
        using var content = new MemoryStream();
        archive.GetEntry("score.musicxml")!.Open().CopyTo(content);
        Assert.Equal(Score, content.ToArray());
    }

    [Fact]
    public void The_same_score_gives_the_same_bytes_whenever_it_is_written()
    {
        var bytes = Packed();
        Assert.Equal(bytes, Packed());
        using var archive = new ZipArchive(new MemoryStream(bytes));
        Assert.All(archive.Entries, e => Assert.Equal(new DateTime(1980, 1, 1), e.LastWriteTime.DateTime));
    }

    [Fact]
    public void It_reads_back_as_the_score_that_was_packed()
    {
        var (tune, findings) = MusicXmlReader.ReadTune(new MemoryStream(Packed()));
        Assert.Equal(["C5@0+1"], Line(new(tune, findings)));
        Assert.Empty(findings);
    }

    [Fact]
    public void It_is_written_from_where_the_stream_stands()
    {
        using var stream = new MemoryStream();
        stream.WriteByte(7);
        MxlWriter.Write(Score, stream);
        Assert.Equal([7, .. Packed()], stream.ToArray());
    }
}
