using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Puts fingers into a score file where it stands, so that everything else in it stays: slurs, hairpins, words, other
/// parts, layout. Only its document type and the file around a compressed one are lost.
/// </summary>
public sealed class FingersInPlace
{
    // MusicXML 4.0: what may follow the notations of a note.
    private static readonly HashSet<string> AfterNotations = ["lyric", "play", "listen"];
    private readonly XDocument _document;
    private readonly Dictionary<string, XElement> _notes = new(StringComparer.Ordinal);

    // The ids that stood there before; null: none.
    private readonly Dictionary<XElement, string?> _renamed = [];

    private FingersInPlace(XDocument document)
    {
        _document = document;
        foreach (var note in document.Descendants().Where(e => e.Name.LocalName == "note"))
        {
            var id = Element.Clean(note.Attribute("id")?.Value);
            if (id is null || !_notes.TryAdd(id, note))
            {
                _renamed.Add(note, note.Attribute("id")?.Value);
                id = "named-" + _renamed.Count.ToString(CultureInfo.InvariantCulture) + "-for-this-reading";
                note.SetAttributeValue("id", id);
                _notes[id] = note;
            }
        }
    }

    /// <summary>The file, plain or compressed; null when it cannot be read as <see cref="MusicXmlReader.ReadScore"/>
    /// would.</summary>
    public static FingersInPlace? Of(byte[] file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bytes = MxlContainer.IsZip(file) ? MxlContainer.Extract(file, new Findings()) : file;
        if (bytes is null || bytes.Length > MusicXmlLimits.Bytes)
        {
            return null;
        }
        try
        {
            using var reader = XmlReader.Create(new MemoryStream(bytes), XmlLoader.Guarded());
            return new FingersInPlace(XDocument.Load(reader, LoadOptions.PreserveWhitespace));
        }
        catch (Exception e) when (e is XmlException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The file with every note named, to be read: the notes of the score then have these names as ids.</summary>
    public byte[] Named() => Saved();

    /// <summary>The file with the fingers of a score read from <see cref="Named"/>, and only those; notes that the score does
    /// not have keep theirs. It can be asked once.</summary>
    public byte[] With(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (hand, head) in Heads(score).OrderBy(h => h.Head.Finger is null))
        {
            // A note that was cut at a bar line stands in the score more than once: the finger it is struck with.
            if (_notes.TryGetValue(head.Id, out var note) && done.Add(head.Id))
            {
                Put(note, head.Finger, head.NextFinger, hand);
            }
        }
        foreach (var (note, id) in _renamed)
        {
            note.SetAttributeValue("id", id);
        }
        return Saved();
    }

    private static IEnumerable<(Hand Hand, ScoreNote Head)> Heads(Score score) =>
        score.Bars.SelectMany(b =>
            b.Voices.SelectMany(v => v.Events.SelectMany(e => e.Notes.Concat(e.Graces).Select(n => (v.Hand, n))))
        );

    private static void Put(XElement note, int? finger, int? next, Hand hand)
    {
        var space = note.Name.Namespace;
        var before = note.Elements(space + "notations").Elements(space + "technical").Elements(space + "fingering");
        foreach (var old in before.ToList())
        {
            var (technical, notations) = (old.Parent!, old.Parent!.Parent!);
            old.Remove();
            RemoveEmpty(technical);
            RemoveEmpty(notations);
        }
        if (finger is not { } number)
        {
            return;
        }
        var holder = note.Element(space + "notations");
        if (holder is null)
        {
            holder = new XElement(space + "notations");
            var after = note.Elements().FirstOrDefault(e => AfterNotations.Contains(e.Name.LocalName));
            if (after is null)
            {
                note.Add(holder);
            }
            else
            {
                after.AddBeforeSelf(holder);
            }
        }
        if (holder.Element(space + "technical") is not { } signs)
        {
            holder.Add(signs = new XElement(space + "technical"));
        }
        signs.Add(Sign(number));
        if (next is { } other)
        {
            var taking = Sign(other);
            taking.Add(new XAttribute("substitution", "yes"));
            signs.Add(taking);
        }

        XElement Sign(int shown) =>
            new(
                space + "fingering",
                new XAttribute("placement", hand == Hand.Right ? "above" : "below"),
                shown.ToString(CultureInfo.InvariantCulture)
            );
    }

    private static void RemoveEmpty(XElement element)
    {
        if (!element.HasElements && element.Parent is not null)
        {
            element.Remove();
        }
    }

    private byte[] Saved()
    {
        using var stream = new MemoryStream();
        var settings = new XmlWriterSettings
        {
            Encoding = new System.Text.UTF8Encoding(false),
            NewLineHandling = NewLineHandling.None,
        };
        using (var writer = XmlWriter.Create(stream, settings))
        {
            _document.Save(writer);
        }
        return stream.ToArray();
    }
}
