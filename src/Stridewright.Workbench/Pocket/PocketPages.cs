using System.Text;
using System.Xml;

namespace Stridewright.Workbench.Pocket;

/// <summary>
/// Engraved pages without what a screen does not need: only what is drawn stays, with the ids of bars and notes, and each
/// sign is drawn once for all pages. Nothing else gets into the file, whatever stood in a score.
/// </summary>
internal sealed class PocketPages
{
    private const string Link = "href",
        Sign = "sign-";

    private static readonly HashSet<string> Drawn =
    [
        "svg",
        "g",
        "use",
        "path",
        "rect",
        "ellipse",
        "circle",
        "polygon",
        "polyline",
        "line",
        "text",
        "tspan",
    ];

    private static readonly HashSet<string> Said =
    [
        "viewBox",
        "transform",
        "d",
        "points",
        "x",
        "y",
        "x1",
        "y1",
        "x2",
        "y2",
        "cx",
        "cy",
        "r",
        "rx",
        "ry",
        "width",
        "height",
        "stroke-width",
        "stroke-linecap",
        "stroke-linejoin",
        "stroke-dasharray",
        "fill",
        "font-size",
        "font-family",
        "font-weight",
        "font-style",
        "text-anchor",
    ];

    // What the page looks for, and what it sets in another face.
    private static readonly HashSet<string> Classes =
    [
        "system",
        "measure",
        "note",
        "notehead",
        "ending",
        "fing",
        "reh",
        "tempo",
        "dir",
        "dynam",
        "mNum",
    ];

    private readonly StringBuilder _signs = new();
    private readonly Dictionary<string, string> _known = [];

    /// <summary>The signs of all pages that were made, to be put into the document once.</summary>
    public string Signs => _signs.ToString();

    /// <summary>The face in which notes among words are set, as a data address; null: no page needs one.</summary>
    public string? MusicFace { get; private set; }

    /// <summary>A page of the engraver.</summary>
    public string Of(byte[] svg)
    {
        var document = new XmlDocument { XmlResolver = null };
        using (var reader = XmlReader.Create(new MemoryStream(svg), new() { DtdProcessing = DtdProcessing.Prohibit }))
        {
            document.Load(reader);
        }
        var root = document.DocumentElement!;
        var links = root
            .ChildNodes.OfType<XmlElement>()
            .Where(e => e.Name == "defs")
            .SelectMany(e => e.ChildNodes.OfType<XmlElement>())
            .ToDictionary(e => e.GetAttribute("id"), SignOf);
        MusicFace ??= root
            .ChildNodes.OfType<XmlElement>()
            .Where(e => e.Name == "style")
            .Select(e => FaceIn(e.InnerText))
            .FirstOrDefault(face => face is not null);
        return Written(writer => Write(root, writer, links));
    }

    // Signs of the same drawing are one, on whatever page.
    private string SignOf(XmlElement sign)
    {
        var drawing = Written(writer =>
        {
            foreach (var child in sign.ChildNodes.OfType<XmlElement>())
            {
                Write(child, writer, []);
            }
        });
        if (!_known.TryGetValue(drawing, out var name))
        {
            name = Sign + _known.Count;
            _known.Add(drawing, name);
            _signs.Append($"<g id=\"{name}\">{drawing}</g>");
        }
        return name;
    }

    private static string? FaceIn(string style)
    {
        const string start = "data:application/font-woff2;";
        var from = style.IndexOf(start, StringComparison.Ordinal);
        var to = from < 0 ? -1 : style.IndexOf(')', from);
        return to < 0 ? null : style[from..to];
    }

    private static void Write(XmlElement element, XmlWriter writer, Dictionary<string, string> links)
    {
        if (!Drawn.Contains(element.Name))
        {
            return;
        }
        var said = Attributes(element, links).ToList();
        // A group that says nothing holds nothing together.
        var isBare = element.Name == "g" && said.Count == 0;
        if (element.Name == "g" && !element.HasChildNodes && said.All(a => a.Name != "id"))
        {
            return;
        }
        if (!isBare)
        {
            writer.WriteStartElement(element.Name);
            said.ForEach(a => writer.WriteAttributeString(a.Name, a.Value));
        }
        foreach (XmlNode child in element.ChildNodes)
        {
            if (child is XmlElement inner)
            {
                Write(inner, writer, links);
            }
            else if (child is XmlText && element.Name is "text" or "tspan")
            {
                writer.WriteString(child.Value);
            }
        }
        if (!isBare)
        {
            writer.WriteEndElement();
        }
    }

    private static IEnumerable<(string Name, string Value)> Attributes(
        XmlElement element,
        Dictionary<string, string> links
    )
    {
        var classes = element.GetAttribute("class").Split(' ').Where(Classes.Contains).ToList();
        // Only of bars and notes are ids asked for; the engraver makes up the others.
        if (classes.Exists(c => c is "measure" or "note") && element.GetAttribute("id") is { Length: > 0 } id)
        {
            yield return ("id", id);
        }
        if (classes.Count > 0)
        {
            yield return ("class", string.Join(' ', classes));
        }
        foreach (XmlAttribute attribute in element.Attributes)
        {
            if (Said.Contains(attribute.Name))
            {
                yield return (attribute.Name, attribute.Value);
            }
            else if (
                attribute.LocalName == Link
                && attribute.Value.StartsWith('#')
                && links.TryGetValue(attribute.Value[1..], out var sign)
            )
            {
                yield return (Link, "#" + sign);
            }
        }
    }

    private static string Written(Action<XmlWriter> write)
    {
        var text = new StringBuilder();
        var settings = new XmlWriterSettings
        {
            OmitXmlDeclaration = true,
            ConformanceLevel = ConformanceLevel.Fragment,
        };
        using (var writer = XmlWriter.Create(text, settings))
        {
            write(writer);
        }
        return text.ToString();
    }
}
