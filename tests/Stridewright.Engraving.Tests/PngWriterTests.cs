using System.Buffers.Binary;

namespace Stridewright.Engraving.Tests;

public sealed class PngWriterTests(WarmEngraver warm)
{
    [Fact]
    public void Picture_has_the_size_of_the_paper_at_its_resolution()
    {
        using var stream = new MemoryStream();
        PngWriter.Write(warm.Engrave(PianoXml.Rag(4)), 1, stream, 100);
        var png = stream.ToArray();
        // PNG (ISO/IEC 15948) 5.2 and 11.2.2: signature, then width and height in the header chunk.
        Assert.Equal([0x89, .. "PNG\r\n\x1a\n"u8], png[..8]);
        Assert.Equal(827, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.Equal(1169, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
    }

    [Fact]
    public void A_page_that_is_not_there_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            PngWriter.Write(warm.Engrave(PianoXml.Rag(1)), 2, Stream.Null)
        );
}
