namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Chord symbols and tempo stand once in a file of several parts, often above another part: a part without them takes
/// them over, bar by bar.
/// </summary>
internal static class Borrowing
{
    public static void Take(ScoreFile file, ScorePart part, List<WrittenBar> bars, Findings findings)
    {
        if (!part.HasChords && file.Parts.FirstOrDefault(p => p.HasChords) is { } withChords)
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
    }

    private static void Copy(ScorePart source, List<WrittenBar> bars, Action<WrittenBar, WrittenBar> take)
    {
        var others = PartReader.Read(source.Measures, new Findings());
        foreach (var (from, to) in others.Zip(bars))
        {
            take(from, to);
        }
    }
}
