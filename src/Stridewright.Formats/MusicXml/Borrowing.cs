namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Chord symbols, tempo, rehearsal letters and the form often stand once in a file of several parts, above another
/// part: a part without them takes them over, bar by bar.
/// </summary>
internal static class Borrowing
{
    public static void Take(ScoreFile file, ScorePart part, List<WrittenBar> bars, Findings findings)
    {
        if (!part.HasChords && file.Parts.Where(p => p.HasChords).MaxBy(p => p.ChordCount) is { } withChords)
        {
            findings.Note(withChords.Place, MusicXmlMessages.ChordsFrom(withChords.Name));
            Copy(withChords, bars, (from, to) => to.Chords.AddRange(from.Chords));
        }
        if (!part.HasTempo && file.Parts.FirstOrDefault(p => p.HasTempo) is { } withTempo)
        {
            Copy(
                withTempo,
                bars,
                (from, to) => to.Directions.AddRange(from.Directions.Where(d => d.BeatsPerMinute is not null))
            );
        }
        if (!part.HasForm && file.Parts.FirstOrDefault(p => p.HasForm) is { } withForm)
        {
            Copy(withForm, bars, (from, to) => to.TakeForm(from));
        }
        if (!part.HasSections && file.Parts.FirstOrDefault(p => p.HasSections) is { } withSections)
        {
            Copy(withSections, bars, (from, to) => to.Section ??= from.Section);
        }
    }

    private static void Copy(ScorePart source, List<WrittenBar> bars, Action<WrittenBar, WrittenBar> take)
    {
        var others = PartReader.Read(source, new Findings());
        foreach (var (from, to) in others.Zip(bars))
        {
            take(from, to);
        }
    }
}
