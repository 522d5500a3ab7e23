using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>One element of a document with its place; comments, white space and page layout are not kept.</summary>
internal sealed class Element(string name, int line, int column)
{
    private List<Element>? _children;
    private List<(string Name, string Value)>? _attributes;

    public string Name => name;

    /// <summary>The element's own text, trimmed; empty when there is none.</summary>
    public string Text { get; private set; } = "";

    public IReadOnlyList<Element> Children => _children ?? (IReadOnlyList<Element>)[];

    public string? this[string attribute]
    {
        get
        {
            foreach (var (key, value) in _attributes ?? [])
            {
                if (key == attribute)
                {
                    return value;
                }
            }
            return null;
        }
    }

    public Element? Child(string childName)
    {
        foreach (var child in Children)
        {
            if (child.Name == childName)
            {
                return child;
            }
        }
        return null;
    }

    public IEnumerable<Element> All(string childName) => Children.Where(c => c.Name == childName);

    public bool Has(string childName) => Child(childName) is not null;

    /// <summary>Text of the first child with this name; null when there is none or it is empty.</summary>
    public string? TextOf(string childName) => Child(childName)?.Text is { Length: > 0 } text ? text : null;

    /// <summary>Text fit to be taken over: one line, bounded; null when empty.</summary>
    public static string? Clean(string? text)
    {
        if (text is null)
        {
            return null;
        }
        var bounded = text.Length > MusicXmlLimits.Text ? text[..MusicXmlLimits.Text] : text;
        var words = bounded.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? null : string.Join(' ', words);
    }

    public Place PlaceIn(string? bar) => new(line, column, bar);

    public void Add(Element child) => (_children ??= []).Add(child);

    public void Add(string attribute, string value) => (_attributes ??= []).Add((attribute, value));

    /// <summary>Takes text over, up to a length that no value of the format needs.</summary>
    public void AddText(string text)
    {
        var room = 4 * MusicXmlLimits.Text - Text.Length;
        if (room > 0)
        {
            Text += text.Length > room ? text[..room] : text;
        }
    }

    /// <summary>This element's attributes and place over other children.</summary>
    public Element With(Element content)
    {
        var made = new Element(name, line, column) { _attributes = _attributes };
        made._children = content._children;
        return made;
    }
}
