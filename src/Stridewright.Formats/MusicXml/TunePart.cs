using Stridewright.Formats.Parts;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Settles which part of a file carries the tune, and says so where there is a choice.</summary>
internal static class TunePart
{
    /// <summary>The part, and the voice that was asked for; null, with an error among the findings, when there is none.</summary>
    public static (ScorePart Part, string? Voice)? Find(ScoreFile file, string? asked, Findings findings)
    {
        var labels = file.Parts.Select(p => p.Label).ToList();
        var wish = new PartChoice.Wish(-1, null);
        if (asked is not null && labels.Count > 0)
        {
            if (PartChoice.Find(labels, asked) is not { } found)
            {
                findings.Fail(Place.Whole, MusicXmlMessages.NoSuchPart(asked, labels));
                return null;
            }
            wish = found;
        }
        if (wish.Part >= 0)
        {
            return Asked(file.Parts[wish.Part], wish.Voice, labels, findings);
        }
        if (Likeliest(file.Parts, out var sign) is not { } part)
        {
            var drums = file.Parts.FirstOrDefault(p => p.IsPercussion && p.HasNotes);
            findings.Fail(
                drums?.Place ?? Place.Whole,
                drums is null ? MusicXmlMessages.NoNotes : MusicXmlMessages.OnlyPercussion
            );
            return null;
        }
        if (labels.Count > 1)
        {
            findings.Note(part.Place, MusicXmlMessages.TunePart(part.Label, TuneSigns.Text(sign), labels));
        }
        return (part, wish.Voice);
    }

    private static (ScorePart Part, string? Voice)? Asked(
        ScorePart part,
        string? voice,
        List<PartLabel> labels,
        Findings findings
    )
    {
        if (!part.HasNotes && !part.HasChords)
        {
            findings.Fail(part.Place, MusicXmlMessages.SilentPart(part.Label));
            return null;
        }
        if (labels.Count > 1)
        {
            findings.Note(part.Place, MusicXmlMessages.TunePart(part.Label, MusicXmlMessages.AsAsked, labels));
        }
        return (part, voice);
    }

    private static ScorePart? Likeliest(IReadOnlyList<ScorePart> parts, out TuneSign sign)
    {
        var candidates = parts.Where(p => p.HasNotes && !p.IsPercussion).ToList();
        if (candidates.Count == 0)
        {
            sign = TuneSign.ChordSymbols;
            return parts.FirstOrDefault(p => p.HasChords);
        }
        return TuneSigns.Likeliest(
            candidates,
            (p, s) =>
                s switch
                {
                    TuneSign.Name => p.Label.IsTuneName,
                    TuneSign.Words => p.HasLyrics,
                    _ => p.HasChords,
                },
            out sign
        );
    }
}
