using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Workbench.Sheets;
using HeardBar = Stridewright.Workbench.Sheets.HeardBar;

namespace Stridewright.Workbench.Listening;

/// <summary>A take as it sounds, its notes called as those of the score that they are.</summary>
internal sealed class TakeSound(ExpectedScore whole, Alignment alignment, TakeReport report)
{
    private const int Softly = 38, // velocity of the score under a take
        Tapped = 72;
    private const double End = 0.5, // seconds after the last note
        UsualTempo = 100,
        Touch = 0.9; // share of its length that a note of the score sounds

    public Heard Heard(bool isAgainst, bool isTapped)
    {
        var notes = (isTapped ? FromTaps() : FromKeys()).Concat(isAgainst ? FromScore() : []);
        var ordered = notes.OrderBy(n => n.At).ThenBy(n => n.Key).ToValueList();
        var seconds = ordered.Select(n => n.At + n.Rings).DefaultIfEmpty().Max() + End;
        var pedal = alignment
            .Take.Pedal.SelectMany(p => new[] { new HeardPedal(p.Down, true), new HeardPedal(p.Up, false) })
            .ToValueList();
        return new(seconds, ordered, pedal, [new HeardBar("", "", 0, seconds, [], 1)]);
    }

    private IEnumerable<HeardNote> FromKeys()
    {
        var noteOf = Matches().ToDictionary(m => m.Played, m => m.Note);
        var hands = alignment.Take.Pedal;
        for (var i = 0; i < alignment.Take.Notes.Count; i++)
        {
            var played = alignment.Take.Notes[i];
            var note = noteOf.GetValueOrDefault(i);
            // The dampers wait for the pedal that is down when the key is let go.
            var lifted = hands.FirstOrDefault(p => p.Down <= played.Release && p.Up > played.Release).Up;
            var damped = Math.Max(played.Release, lifted);
            yield return new(
                note?.Id,
                played.Onset,
                played.Release - played.Onset,
                damped - played.Onset,
                played.Key,
                played.Velocity,
                HeardOf.Words(note?.Hand ?? Hand.Right),
                ""
            );
        }
    }

    private IEnumerable<HeardNote> FromTaps()
    {
        var strokes = whole.Notes.Where(n => n.Grace == 0).ToLookup(n => (n.Beats, n.Hand));
        return Matches()
            .SelectMany(m =>
                strokes[(m.Note.Beats, m.Note.Hand)]
                    .Select(n => Note(n, alignment.Take.Notes[m.Played].Onset, Tapped, n.Id))
            );
    }

    private IEnumerable<HeardNote> FromScore()
    {
        var trend = PlayedTrend.Of(alignment);
        var asked = alignment.Score.Notes.Select(n => (n.Beats, n.Hand)).ToHashSet();
        var notes = whole.Notes.Where(n => n.Grace == 0 && asked.Contains((n.Beats, n.Hand))).ToList();
        for (var run = 0; run < alignment.Runs.Count; run++)
        {
            var (first, last) = (alignment.Runs[run].FirstBeats, alignment.Runs[run].LastBeats);
            foreach (var note in notes.Where(n => n.Beats >= first && n.Beats <= last))
            {
                if (trend.At(run, note) is >= 0 and var at)
                {
                    yield return Note(note, at, Softly, id: null);
                }
            }
        }
    }

    private HeardNote Note(ExpectedNote note, double at, int velocity, string? id)
    {
        var length = Touch * note.Length * 60 / (report.QuartersPerMinute ?? UsualTempo);
        return new(id, at, length, length, note.Key, velocity, HeardOf.Words(note.Hand), "");
    }

    private IEnumerable<(ExpectedNote Note, int Played)> Matches() =>
        alignment
            .Pairs.Where(p => p.IsMatch)
            .Select(p => (alignment.Score.Notes[p.Expected!.Value], p.Played!.Value))
            .Concat(alignment.Outside.Where(o => o.Expected is not null).Select(o => (o.Expected!, o.Played)));
}
