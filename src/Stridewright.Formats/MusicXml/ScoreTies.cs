using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Which ties of a score have both ends: a beginning meets an end on the same key where its note stops, in
/// any voice or hand. Others are dropped with a finding.</summary>
internal sealed class ScoreTies
{
    private readonly List<WrittenBar> _bars;
    private readonly HashSet<(int Bar, ScoreTime At, int Key)> _begun = [];
    private readonly HashSet<(int Bar, ScoreTime At, int Key)> _ended = [];

    public ScoreTies(List<WrittenBar> bars, Findings findings)
    {
        _bars = bars;
        var notes = bars.SelectMany((bar, index) => bar.Notes.Where(n => n.Sounds).Select(n => (Note: n, Bar: index)));
        foreach (var (note, bar) in notes)
        {
            if (note.TieStart)
            {
                _begun.Add(AfterEnd(note, bar));
            }
            if (note.TieStop)
            {
                _ended.Add((bar, note.At, note.Pitch!.Value.Midi));
            }
        }
        foreach (var (note, bar) in notes)
        {
            if (note.TieStart && !Starts(note, bar))
            {
                findings.Note(note.Place, MusicXmlMessages.TieWithoutEnd);
            }
            if (note.TieStop && !Stops(note, bar))
            {
                findings.Note(note.Place, MusicXmlMessages.TieWithoutStart);
            }
        }
    }

    public bool Starts(WrittenNote note, int bar) => note.TieStart && _ended.Contains(AfterEnd(note, bar));

    public bool Stops(WrittenNote note, int bar) =>
        note.TieStop && _begun.Contains((bar, note.At, note.Pitch!.Value.Midi));

    private (int Bar, ScoreTime At, int Key) AfterEnd(WrittenNote note, int bar) =>
        note.End == _bars[bar].Length
            ? (bar + 1, ScoreTime.Zero, note.Pitch!.Value.Midi)
            : (bar, note.End, note.Pitch!.Value.Midi);
}
