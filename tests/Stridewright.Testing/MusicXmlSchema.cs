using System.Xml;
using System.Xml.Schema;

namespace Stridewright.Testing;

/// <summary>The MusicXML 4.0 schema of the W3C Music Notation Community Group.</summary>
public static class MusicXmlSchema
{
    private static readonly Lazy<XmlSchemaSet> Loaded = new(Load);

    /// <summary>Faults of a document against the schema, with their places; empty when it is valid.</summary>
    public static IReadOnlyList<string> Faults(Stream document)
    {
        var faults = new List<string>();
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Ignore,
            XmlResolver = null,
            ValidationType = ValidationType.Schema,
            Schemas = Loaded.Value,
        };
        settings.ValidationFlags |= XmlSchemaValidationFlags.ReportValidationWarnings;
        settings.ValidationEventHandler += (_, e) => faults.Add($"line {e.Exception.LineNumber}: {e.Message}");
        using var reader = XmlReader.Create(document, settings);
        while (reader.Read()) { }
        return faults;
    }

    private static XmlSchemaSet Load()
    {
        // No resolver: the three files import each other by namespace only.
        var set = new XmlSchemaSet { XmlResolver = null };
        foreach (var file in new[] { "xml.xsd", "xlink.xsd", "musicxml.xsd" })
        {
            set.Add(null, Corpus.PathOf("standards/" + file));
        }
        set.Compile();
        return set;
    }
}
