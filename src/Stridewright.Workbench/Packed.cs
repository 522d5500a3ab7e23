using System.IO.Compression;
using System.Text;

namespace Stridewright.Workbench;

/// <summary>Bytes that are kept but seldom asked for, as small as deflation makes them: of a page in SVG a tenth.</summary>
internal sealed class Packed
{
    private readonly byte[] _packed;
    private readonly int _length;

    public Packed(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var deflating = new DeflateStream(packed, CompressionLevel.Fastest))
        {
            deflating.Write(bytes);
        }
        (_packed, _length) = (packed.ToArray(), bytes.Length);
    }

    /// <summary>The bytes, unpacked anew.</summary>
    public byte[] Bytes
    {
        get
        {
            var bytes = new byte[_length];
            using var inflating = new DeflateStream(new MemoryStream(_packed), CompressionMode.Decompress);
            inflating.ReadExactly(bytes);
            return bytes;
        }
    }
}

/// <summary>Pages as SVG in UTF-8, packed; each is unpacked when it is asked for.</summary>
internal sealed class PackedPages(IEnumerable<string> pages) : IReadOnlyList<byte[]>
{
    private readonly Packed[] _pages = [.. pages.Select(p => new Packed(Encoding.UTF8.GetBytes(p)))];

    public int Count => _pages.Length;

    public byte[] this[int index] => _pages[index].Bytes;

    public IEnumerator<byte[]> GetEnumerator() => _pages.Select(p => p.Bytes).GetEnumerator();

    System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
}
