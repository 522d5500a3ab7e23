using System.Globalization;
using System.Text;
using System.Xml;

namespace Stridewright.Formats.MusicXml;

/// <summary>Elements in short form over an XML writer; characters that XML cannot hold are left out.</summary>
internal sealed class XmlOut(XmlWriter writer)
{
    /// <summary>Opens an element until disposed. Attributes without a value are not written.</summary>
    public Scope Open(string name, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        writer.WriteStartElement(name);
        foreach (var (attribute, value) in attributes)
        {
            if (value is not null)
            {
                writer.WriteAttributeString(attribute, Clean(value));
            }
        }
        return new Scope(writer);
    }

    public void Text(string name, string text, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        using (Open(name, attributes))
        {
            writer.WriteString(Clean(text));
        }
    }

    public void Number(string name, long number) => Text(name, number.ToString(CultureInfo.InvariantCulture));

    public void Empty(string name, params ReadOnlySpan<(string Name, string? Value)> attributes) =>
        Open(name, attributes).Dispose();

    private static string Clean(string text)
    {
        if (IsClean(text))
        {
            return text;
        }
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            if (XmlConvert.IsXmlChar(text[i]))
            {
                clean.Append(text[i]);
            }
            else if (i + 1 < text.Length && char.IsSurrogatePair(text[i], text[i + 1]))
            {
                clean.Append(text, i++, 2);
            }
        }
        return clean.ToString();
    }

    private static bool IsClean(string text)
    {
        foreach (var c in text)
        {
            if (!XmlConvert.IsXmlChar(c))
            {
                return false;
            }
        }
        return true;
    }

    internal readonly struct Scope(XmlWriter writer) : IDisposable
    {
        public void Dispose() => writer.WriteEndElement();
    }
}
