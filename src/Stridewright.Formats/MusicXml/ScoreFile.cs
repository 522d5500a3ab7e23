using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>One part of a file: its name and its bars as elements.</summary>
internal sealed record ScorePart(string Name, Place Place, IReadOnlyList<Element> Measures)
{
    public bool HasNotes => Measures.Any(m => m.All("note").Any(n => n.Has("pitch")));

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
        var names = root.Child("part-list")
            ?.All("score-part")
            .GroupBy(p => p["id"] ?? "")
            .ToDictionary(g => g.Key, g => Element.Clean(g.First().TextOf("part-name")));
        string NameOf(string id, int index) => names?.GetValueOrDefault(id) ?? (id.Length > 0 ? id : $"{index + 1}");

        if (root.Name == "score-partwise")
        {
            return root.All("part")
                .Select((p, i) => new ScorePart(NameOf(p["id"] ?? "", i), p.PlaceIn(null), p.All("measure").ToList()))
                .ToList();
        }
        // Time-wise: the bars hold the parts; turned round, each part keeps its piece of every bar.
        return root.All("measure")
            .SelectMany(m => m.All("part").Select(p => (Id: p["id"] ?? "", Bar: m.With(p))))
            .GroupBy(piece => piece.Id)
            .Select(
                (g, i) => new ScorePart(NameOf(g.Key, i), g.First().Bar.PlaceIn(null), g.Select(p => p.Bar).ToList())
            )
            .ToList();
    }
}
