using Stridewright.Formats.Parts;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>One part of a file: what it is called and its bars as elements.</summary>
internal sealed record ScorePart(PartLabel Label, Place Place, IReadOnlyList<Element> Measures)
{
    /// <summary>The name, else the id, else the number.</summary>
    public string Name =>
        Label.Name.Length > 0 ? Label.Name
        : Label.Id.Length > 0 ? Label.Id
        : FormattableString.Invariant($"{Label.Number}");

    /// <summary>Played on the channel of drums, or under a percussion clef from its beginning.</summary>
    public bool IsPercussion { get; init; }

    /// <summary>The file is a score at sounding pitch.</summary>
    public bool IsConcert { get; init; }

    public bool HasLyrics => Measures.Any(m => m.All("note").Any(n => n.Has("lyric")));

    /// <summary>True when repeats or endings stand in it.</summary>
    public bool HasForm => Measures.Any(m => m.All("barline").Any(b => b.Has("repeat") || b.Has("ending")));

    public bool HasSections =>
        Measures.Any(m => m.All("direction").Any(d => d.All("direction-type").Any(t => t.Has("rehearsal"))));

    public int ChordCount => Measures.Sum(m => m.All("harmony").Count());

    public bool HasNotes => Measures.Any(m => m.All("note").Any(n => n.Has("pitch") && !n.Has("cue")));

    /// <summary>Its notes are all cue notes, which are not played.</summary>
    public bool IsCue => !HasNotes && Measures.Any(m => m.All("note").Any(n => n.Has("cue")));

    public bool HasChords => Measures.Any(m => m.Has("harmony"));

    /// <summary>True when every clef is a bass clef, and there is one.</summary>
    public bool IsInBassClef
    {
        get
        {
            var clefs = Measures.SelectMany(m => m.All("attributes")).SelectMany(a => a.All("clef")).ToList();
            return clefs.Count > 0 && clefs.TrueForAll(c => c.TextOf("sign") == "F");
        }
    }

    public bool HasTempo =>
        Measures.Any(m => m.All("direction").Append(m).Any(d => d.All("sound").Any(s => s["tempo"] is not null)))
        || Measures.Any(m => m.All("direction").Any(d => d.All("direction-type").Any(t => t.Has("metronome"))));

    /// <summary>True when something on a second staff sounds.</summary>
    public bool HasTwoStaves =>
        Measures.Any(m => m.All("note").Any(n => n.Has("pitch") && n.TextOf("staff") is not (null or "1")))
        || Measures.Any(m => m.All("attributes").Any(a => a.TextOf("staves") is not (null or "1")));
}

/// <summary>What a document holds: title and parts, the same for both score roots.</summary>
internal sealed record ScoreFile(string Title, string? Composer, string? Subtitle, IReadOnlyList<ScorePart> Parts)
{
    public const string Untitled = "Untitled";

    public static ScoreFile Of(Element root)
    {
        var credits = root.All("credit").Where(c => c["page"] is null or "1").ToList();
        string? Credit(string? type) =>
            credits
                .Where(c => type is null || c.All("credit-type").Any(t => t.Text == type))
                .Select(c => Element.Clean(c.TextOf("credit-words")))
                .FirstOrDefault(w => w is not null);

        var title =
            Element.Clean(root.Child("work")?.TextOf("work-title"))
            ?? Element.Clean(root.TextOf("movement-title"))
            ?? Credit("title")
            ?? Credit(null)
            ?? Untitled;
        var creators = root.Child("identification")?.All("creator").ToList() ?? [];
        var composer = creators.FirstOrDefault(c => c["type"] == "composer" && c.Text.Length > 0);
        return new ScoreFile(title, Element.Clean(composer?.Text), Credit("subtitle"), PartsOf(root));
    }

    private static List<ScorePart> PartsOf(Element root)
    {
        var isConcert = root.Child("defaults")?.Has("concert-score") == true;
        var listed = (root.Child("part-list")?.All("score-part") ?? [])
            .GroupBy(p => p["id"] ?? "")
            .ToDictionary(g => g.Key, g => g.First());
        ScorePart Make(string id, int index, Place place, List<Element> measures)
        {
            var info = listed.GetValueOrDefault(id);
            string TextOf(string name) => Element.Clean(info?.TextOf(name)) ?? "";
            var label = new PartLabel(index + 1, id, TextOf("part-name"), TextOf("part-abbreviation"));
            var isPercussion = IsPercussion(info, measures);
            return new(label, place, measures) { IsConcert = isConcert, IsPercussion = isPercussion };
        }

        if (root.Name == "score-partwise")
        {
            return root.All("part")
                .Select((p, i) => Make(p["id"] ?? "", i, p.PlaceIn(null), p.All("measure").ToList()))
                .ToList();
        }
        // Time-wise: the bars hold the parts; turned round, each part keeps its piece of every bar.
        return root.All("measure")
            .SelectMany(m => m.All("part").Select(p => (Id: p["id"] ?? "", Bar: m.With(p))))
            .GroupBy(piece => piece.Id)
            .Select((g, i) => Make(g.Key, i, g.First().Bar.PlaceIn(null), g.Select(p => p.Bar).ToList()))
            .ToList();
    }

    // Channel 10 is that of percussion (General MIDI); the first clef counts.
    private static bool IsPercussion(Element? info, List<Element> measures)
    {
        var channels = info?.All("midi-instrument").Select(i => i.TextOf("midi-channel")).OfType<string>().ToList();
        var clef = measures.SelectMany(m => m.All("attributes")).SelectMany(a => a.All("clef")).FirstOrDefault();
        return clef?.TextOf("sign") == "percussion"
            || (channels is { Count: > 0 } && channels.TrueForAll(c => c == "10"));
    }
}
