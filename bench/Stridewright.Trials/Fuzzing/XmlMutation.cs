using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Stridewright.Trials;

/// <summary>Damage to a score that leaves it well-formed: elements change places, are doubled, nested or dropped, and values
/// are exchanged for odd ones.</summary>
internal static class XmlMutation
{
    private const int MostElements = 40_000;
    private static readonly string[] Values =
    [
        .. TextMutation.Numbers,
        "",
        "x",
        "C",
        "P1",
        "P2",
        "start",
        "stop",
        "continue",
        "yes",
        "no",
        "forward",
        "backward",
        "discontinue",
        "begin",
        "add",
        "alter",
        "subtract",
        "none",
        "senza-misura",
        "major",
        "minor",
        "breve",
        "1024th",
        "256th",
        "3+2",
        "1,2",
        "1-99999",
    ];

    /// <summary>Null when the file is not well-formed to begin with.</summary>
    public static byte[]? Of(byte[] file, Random random)
    {
        XDocument document;
        try
        {
            var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null };
            using var reader = XmlReader.Create(new MemoryStream(file), settings);
            document = XDocument.Load(reader);
        }
        catch (XmlException)
        {
            return null;
        }
        var changes = 1 + random.Next(1, 8) * random.Next(0, 4);
        for (var i = 0; i < changes; i++)
        {
            var elements = document.Root!.Descendants().Take(MostElements).ToList();
            if (elements.Count == 0)
            {
                break;
            }
            Change(elements[random.Next(elements.Count)], elements[random.Next(elements.Count)], random);
        }
        return Encoding.UTF8.GetBytes(document.ToString(SaveOptions.DisableFormatting));
    }

    private static void Change(XElement one, XElement other, Random random)
    {
        var value = Values[random.Next(Values.Length)];
        switch (random.Next(10))
        {
            case 0 or 1 or 2:
                // Down to an element that has a value.
                (one.DescendantsAndSelf().FirstOrDefault(e => !e.HasElements) ?? one).Value = value;
                break;
            case 3:
                one.Attributes().FirstOrDefault()?.SetValue(value);
                break;
            case 4:
                one.Remove();
                break;
            case 5:
                other.AddAfterSelf(one);
                break;
            case 6:
                other.AddFirst(one);
                break;
            case 7:
                var copies = Math.Min(1 << random.Next(1, 12), 1 + MostElements / one.DescendantsAndSelf().Count());
                one.AddAfterSelf(Enumerable.Repeat(one, copies));
                break;
            case 8:
                var nested = new XElement(one);
                for (var depth = random.Next(1, 200); depth > 0; depth--)
                {
                    nested = new XElement(one.Name, nested);
                }
                one.AddAfterSelf(nested);
                break;
            default:
                one.Name = other.Name;
                break;
        }
    }
}
