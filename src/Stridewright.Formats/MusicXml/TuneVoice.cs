using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Settles which voice of a part carries the tune.</summary>
internal static class TuneVoice
{
    /// <summary>Voice and staff, both those asked for or, of the top staff, the voice with words, else the upper one.
    /// Null when nothing sounds, or, with an error among the findings, when there is no such voice.</summary>
    public static (string Voice, int Staff)? Find(
        ScorePart part,
        List<WrittenBar> bars,
        string? asked,
        Findings findings
    )
    {
        var sounding = bars.SelectMany(b => b.Notes).Where(n => n.Sounds).ToList();
        if (sounding.Count == 0)
        {
            return null;
        }
        var voices = sounding.Select(n => n.Voice).Distinct().ToList();
        if (asked is not null && !voices.Contains(asked))
        {
            findings.Fail(part.Place, MusicXmlMessages.NoSuchVoice(asked, part.Label, voices));
            return null;
        }
        var staff = sounding.Where(n => asked is null || n.Voice == asked).Min(n => n.Staff);
        var voice = asked ?? Likeliest(bars, sounding.Where(n => n.Staff == staff).ToList());
        if (sounding.Exists(n => n.Staff != staff || n.Voice != voice))
        {
            findings.Note(Place.Whole, MusicXmlMessages.TuneVoice(voice, staff, voices));
        }
        return (voice, staff);
    }

    // Common practice: of two voices on a staff the upper one has the tune. A voice that comes in for a few bars only,
    // under half of the fullest one's, has not.
    private static string Likeliest(List<WrittenBar> bars, List<WrittenNote> sounding)
    {
        var candidates = sounding.Select(n => n.Voice).Distinct().ToList();
        var withWords = candidates.Where(v => sounding.Exists(n => n.Voice == v && n.Lyrics.Count > 0)).ToList();
        candidates = withWords.Count > 0 ? withWords : candidates;
        if (candidates.Count == 1)
        {
            return candidates[0];
        }
        var staff = sounding[0].Staff;
        var tops = bars.Select(b => TopsOf(b, staff)).ToList();
        int BarsOf(string voice) => tops.Count(t => t.ContainsKey(voice));
        var fullest = candidates.Max(BarsOf);
        candidates = candidates.Where(v => 2 * BarsOf(v) >= fullest).ToList();
        var shared = tops.Where(t => candidates.TrueForAll(t.ContainsKey)).ToList();
        return shared.Count == 0 ? candidates.MaxBy(BarsOf)! : candidates.MaxBy(v => shared.Average(t => t[v]))!;
    }

    // Mean key of the topmost notes of each voice in a bar.
    private static Dictionary<string, double> TopsOf(WrittenBar bar, int staff) =>
        bar
            .Notes.Where(n => n.Sounds && n.Staff == staff)
            .GroupBy(n => n.Voice)
            .ToDictionary(g => g.Key, g => g.GroupBy(n => n.At).Average(s => s.Max(n => n.Pitch!.Value.Midi)));
}
