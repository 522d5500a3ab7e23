namespace Stridewright.Music;

/// <summary>What a score sounds like in written order.</summary>
public static class Timeline
{
    /// <summary>Every key press, tied notes merged, ordered by time, hand and key. Crushed notes are left out.</summary>
    public static ValueList<Sounding> Of(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        var notes = new List<(Sounding Sounding, ScoreNote Note)>();
        var start = ScoreTime.Zero;
        for (var bar = 0; bar < score.Bars.Count; start += score.Bars[bar++].Length)
        {
            foreach (var voice in score.Bars[bar].Voices)
            {
                foreach (var e in voice.Events.Where(e => e.Length > ScoreTime.Zero))
                {
                    var at = start + e.At;
                    notes.AddRange(
                        e.Notes.Select(n =>
                            (
                                new Sounding(voice.Hand, n.Pitch.Midi, at, at + e.Length, bar, e.At, e.Rolled)
                                {
                                    Id = n.Id,
                                },
                                n
                            )
                        )
                    );
                }
            }
        }
        var found = new List<Sounding>();
        var open = new Dictionary<(Hand, int, ScoreTime), Queue<int>>();
        foreach (var (sounding, note) in notes.OrderBy(n => n.Sounding.Start).ThenBy(n => !n.Note.TieStop))
        {
            var index = found.Count;
            var from = open.GetValueOrDefault((sounding.Hand, sounding.Key, sounding.Start));
            if (note.TieStop && from is { Count: > 0 })
            {
                index = from.Dequeue();
                found[index] = found[index] with { End = sounding.End };
            }
            else
            {
                found.Add(sounding);
            }
            if (note.TieStart)
            {
                var end = (sounding.Hand, sounding.Key, sounding.End);
                open.TryAdd(end, new());
                open[end].Enqueue(index);
            }
        }
        return found.OrderBy(s => s.Start).ThenBy(s => s.Hand).ThenBy(s => s.Key).ToValueList();
    }
}
