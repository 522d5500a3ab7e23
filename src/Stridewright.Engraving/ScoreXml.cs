using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>A MusicXML score made ready for the engraver: known to be well formed, and with a header of our own.</summary>
internal sealed class ScoreXml
{
    // Characters that a score may hold: 64 MB of UTF-8 at most reach the engine, which has 768 MB for its work.
    private const long MaxCharacters = 32_000_000;

    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Ignore,
        XmlResolver = null,
        MaxCharactersInDocument = MaxCharacters,
    };

    private readonly XElement _root;

    private ScoreXml(XElement root)
    {
        _root = root;
        Title = Text("work", "work-title") ?? Text("movement-title") ?? Credit("title") ?? "";
        Subtitle = Credit("subtitle");
        Composer =
            _root
                .Elements("identification")
                .Elements("creator")
                .FirstOrDefault(e => (string?)e.Attribute("type") == "composer")
                ?.Value.Trim()
            ?? Credit("composer");
    }

    public string Title { get; }

    public string? Subtitle { get; }

    public string? Composer { get; }

    /// <summary>Height of the smallest staff against the usual.</summary>
    public double SmallStaff =>
        _root
            .Descendants("staff-size")
            .Select(e => double.TryParse(e.Value, CultureInfo.InvariantCulture, out var percent) ? percent / 100 : 1)
            .Where(share => share is >= 0.5 and <= 1)
            .DefaultIfEmpty(1)
            .Min();

    /// <summary>Footnotes, which stand among the fields of its identification, the first one numbered 1.</summary>
    public IReadOnlyList<string> Footnotes =>
        [
            .. _root
                .Elements("identification")
                .Elements("miscellaneous")
                .Elements("miscellaneous-field")
                .Where(f => ((string?)f.Attribute("name"))?.StartsWith("footnote-", StringComparison.Ordinal) == true)
                .Select(f => f.Value),
        ];

    private bool HasHeader => Title.Length > 0 || Subtitle is { Length: > 0 } || Composer is { Length: > 0 };

    /// <summary>Reads a score.</summary>
    public static Reading<ScoreXml> Read(Stream stream) => Read(() => XmlReader.Create(stream, Settings));

    /// <summary>Reads a score; the encoding that the text declares no longer matters.</summary>
    public static Reading<ScoreXml> Read(string text) => Read(() => XmlReader.Create(new StringReader(text), Settings));

    private static Reading<ScoreXml> Read(Func<XmlReader> open)
    {
        try
        {
            using var reader = open();
            var root = XElement.Load(reader);
            return root.Name.LocalName != "score-partwise"
                    ? Failed(Place.Whole, EngravingMessages.NotAScore(root.Name.LocalName))
                : !root.Elements("part").Elements("measure").Any() ? Failed(Place.Whole, EngravingMessages.NoBars)
                : new Reading<ScoreXml>(new ScoreXml(root), []);
        }
        catch (XmlException problem)
        {
            return Failed(
                problem.LineNumber > 0 ? Place.AtLine(problem.LineNumber, problem.LinePosition) : Place.Whole,
                EngravingMessages.NotXml(problem.Message)
            );
        }
    }

    /// <summary>Number of bars.</summary>
    public int Bars => _root.Elements("part").FirstOrDefault()?.Elements("measure").Count() ?? 0;

    /// <summary>Begins systems and pages with these bars, and with no others.</summary>
    /// <returns>False, with nothing done, where one of them has no id in the score.</returns>
    public bool TryBreak(IReadOnlyCollection<string> systems, IReadOnlySet<string> pages)
    {
        var all = _root.Elements("part").First().Elements("measure").ToList();
        var bars = all.Where(m => m.Attribute("id") is not null)
            .ToDictionary(m => (string)m.Attribute("id")!, StringComparer.Ordinal);
        if (!systems.All(bars.ContainsKey))
        {
            return false;
        }
        all.Elements("print").Attributes().Where(a => a.Name == "new-system" || a.Name == "new-page").Remove();
        foreach (var id in systems)
        {
            bars[id].Elements("print").Remove();
            bars[id]
                .AddFirst(new XElement("print", new XAttribute(pages.Contains(id) ? "new-page" : "new-system", "yes")));
        }
        return true;
    }

    /// <summary>The score as the engraver is to have it, in UTF-8. The credits go: the header is ours
    /// (<see cref="PageFrame"/>), and one line of text only makes the engraver leave room for it.</summary>
    public byte[] ToBytes(PageSetup setup)
    {
        if (!setup.Named)
        {
            _root.Descendants("part-name").ToList().ForEach(name => name.Value = "");
            _root.Descendants("part-abbreviation").Remove();
        }
        _root.Elements("credit").Remove();
        // Someone else's paper and scale.
        _root.Elements("defaults").Remove();
        foreach (var harmony in _root.Descendants("harmony"))
        {
            KeepApart(harmony);
        }
        ChordFingers.Stack(_root);
        if (setup.Header && HasHeader)
        {
            _root
                .Elements("part-list")
                .FirstOrDefault()
                ?.AddBeforeSelf(
                    new XElement(
                        "credit",
                        new XAttribute("page", 1),
                        new XElement("credit-words", PageFrame.HeaderMark)
                    )
                );
        }
        using var bytes = new MemoryStream();
        using (var writer = XmlWriter.Create(bytes, new XmlWriterSettings { Encoding = new UTF8Encoding(false) }))
        {
            _root.WriteTo(writer);
        }
        return bytes.ToArray();
    }

    // The engraver sets chord symbols side by side without a gap. It takes a kind's text as it stands: with the bass and
    // a no-break space at its end, symbols keep apart.
    private static void KeepApart(XElement harmony)
    {
        // The kind's text says these already; the engraver would print them again.
        harmony.Elements("degree").Where(d => (string?)d.Attribute("print-object") == "no").Remove();
        if (harmony.Element("kind") is not { } kind || harmony.Elements("degree").Any())
        {
            return;
        }
        var text = (string?)kind.Attribute("text");
        if (kind.Value.Trim() == "none")
        {
            // It prints the letter of a root and nothing of this kind.
            harmony.Elements("root").Elements("root-step").FirstOrDefault()?.SetValue("N");
            (kind.Value, text) = ("other", ".C.");
        }
        if (text is null && kind.Value.Trim() != "major")
        {
            return;
        }
        if (harmony.Element("bass") is { } bass)
        {
            var alter = (int)Math.Round((double?)bass.Element("bass-alter") ?? 0);
            text += "/" + (string?)bass.Element("bass-step") + new string(alter < 0 ? '♭' : '♯', Math.Abs(alter));
            bass.Remove();
        }
        kind.SetAttributeValue("text", text?.TrimEnd('\u00A0') + "\u00A0");
    }

    private string? Text(params string[] path)
    {
        var element = path.Aggregate((XElement?)_root, (at, name) => at?.Element(name));
        return element?.Value.Trim() is { Length: > 0 } text ? text : null;
    }

    private string? Credit(string type) =>
        _root
            .Elements("credit")
            .FirstOrDefault(c => (string?)c.Element("credit-type") == type)
            ?.Element("credit-words")
            ?.Value.Trim();

    private static Reading<ScoreXml> Failed(Place place, string message) =>
        new(null, [new Diagnostic(Severity.Error, place, message)]);
}
