using System.Globalization;
using System.Xml.Linq;

namespace Stridewright.Engraving;

/// <summary>Puts scores of the same bars into one, each a part of its own, so that bar stands under bar.</summary>
internal static class BesideXml
{
    /// <summary>Of a single score that score, without a name beside its staves.</summary>
    public static string Join(IReadOnlyList<NamedXml> scores)
    {
        var roots = scores.Select(s => XElement.Parse(s.MusicXml)).ToList();
        var first = roots[0];
        if (scores.Count == 1)
        {
            foreach (var name in first.Elements("part-list").Elements("score-part").Elements("part-name"))
            {
                name.SetAttributeValue("print-object", "no");
            }
            return first.ToString(SaveOptions.DisableFormatting);
        }
        var parts = roots
            .SelectMany((root, i) => root.Elements("part").Select(p => (scores[i].Label, Bars: p)))
            .ToList();
        first.Element("part-list")!.RemoveNodes();
        first.Elements("part").Remove();
        for (var i = 0; i < parts.Count; i++)
        {
            var id = "P" + (i + 1).ToString(CultureInfo.InvariantCulture);
            first
                .Element("part-list")!
                .Add(new XElement("score-part", new XAttribute("id", id), new XElement("part-name", parts[i].Label)));
            parts[i].Bars.SetAttributeValue("id", id);
            Rename(parts[i].Bars, id);
            first.Add(parts[i].Bars);
        }
        return first.ToString(SaveOptions.DisableFormatting);
    }

    // No two things of a score share an id.
    private static void Rename(XElement part, string id)
    {
        foreach (var attribute in part.Descendants().Attributes("id"))
        {
            attribute.Value = $"{id}-{attribute.Value}";
        }
    }
}
