using System.Xml;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Reads bytes into elements within <see cref="MusicXmlLimits"/>. Document types are skipped, so entities of a file's
/// own are never expanded and nothing outside the file is ever opened.
/// </summary>
internal static class XmlLoader
{
    // Subtrees about the look of the page and about playback devices, which nothing here uses.
    private static readonly HashSet<string> Skipped =
    [
        "print",
        "stem",
        "accidental",
        "encoding",
        "miscellaneous",
        "score-instrument",
        "slur",
    ];

    private static readonly HashSet<string> KeptAttributes =
    [
        "id",
        "number",
        "type",
        "implicit",
        "location",
        "direction",
        "times",
        "tempo",
        "symbol",
        "print-object",
        "placement",
        "measure",
        "text",
        "page",
        "full-path",
        "dacapo",
        "dalsegno",
        "segno",
        "coda",
        "tocoda",
        "fine",
    ];

    /// <summary>Settings under which a file can open nothing and grow nowhere.</summary>
    public static XmlReaderSettings Guarded() =>
        new()
        {
            DtdProcessing = DtdProcessing.Ignore,
            XmlResolver = null,
            MaxCharactersInDocument = MusicXmlLimits.Bytes,
            MaxCharactersFromEntities = MusicXmlLimits.Bytes,
        };

    /// <summary>The root element, or null with the reason among the findings.</summary>
    public static Element? Load(byte[] bytes, Func<string, string?> refuseRoot, Findings findings)
    {
        var settings = Guarded();
        settings.IgnoreComments = settings.IgnoreProcessingInstructions = settings.IgnoreWhitespace = true;
        string? bar = null;
        try
        {
            using var reader = XmlReader.Create(new MemoryStream(bytes), settings);
            return Read(reader, refuseRoot, findings, ref bar);
        }
        catch (XmlException e)
        {
            var place = e.LineNumber > 0 ? new Place(e.LineNumber, Math.Max(1, e.LinePosition), bar) : Place.Whole;
            findings.Fail(place, MusicXmlMessages.NotWellFormed(e.Message));
        }
        catch (ArgumentException) // undecodable bytes
        {
            findings.Fail(new Place(Bar: bar), MusicXmlMessages.NotText);
        }
        return null;
    }

    private static Element? Read(XmlReader reader, Func<string, string?> refuseRoot, Findings findings, ref string? bar)
    {
        var lines = (IXmlLineInfo)reader;
        var open = new Stack<Element>();
        Element? root = null;
        var nodes = 0;
        var more = reader.Read();
        while (more)
        {
            if (reader.NodeType == XmlNodeType.Element)
            {
                var place = new Place(lines.LineNumber, lines.LinePosition, bar);
                if (root is not null && Skipped.Contains(reader.LocalName))
                {
                    reader.Skip();
                    more = !reader.EOF;
                    continue;
                }
                if (root is null && refuseRoot(reader.LocalName) is { } reason)
                {
                    findings.Fail(place, reason);
                    return null;
                }
                var element = new Element(reader.LocalName, lines.LineNumber, lines.LinePosition);
                var empty = reader.IsEmptyElement;
                nodes += 1 + TakeAttributes(reader, element);
                if (nodes > MusicXmlLimits.Nodes || open.Count >= MusicXmlLimits.Depth)
                {
                    findings.Fail(place, MusicXmlMessages.TooLarge);
                    return null;
                }
                if (element.Name == "measure")
                {
                    bar = Element.Clean(element["number"]);
                }
                (open.Count > 0 ? open.Peek() : null)?.Add(element);
                root ??= element;
                if (!empty)
                {
                    open.Push(element);
                }
            }
            else if (reader.NodeType == XmlNodeType.EndElement)
            {
                if (open.Pop().Name == "measure")
                {
                    bar = null;
                }
            }
            else if (reader.NodeType is XmlNodeType.Text or XmlNodeType.CDATA)
            {
                open.Peek().AddText(reader.Value.Trim());
            }
            more = reader.Read();
        }
        return root;
    }

    private static int TakeAttributes(XmlReader reader, Element element)
    {
        var taken = 0;
        while (reader.MoveToNextAttribute())
        {
            if (KeptAttributes.Contains(reader.LocalName))
            {
                element.Add(reader.LocalName, reader.Value);
                taken++;
            }
        }
        return taken;
    }
}
