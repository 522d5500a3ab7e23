namespace Stridewright.Music;

/// <summary>A sounding with what it was read from.</summary>
/// <param name="Source">The event in which it is struck.</param>
/// <param name="Note">Index of its note in that event, lowest first.</param>
public sealed record StruckNote(Sounding Sounding, ScoreVoice Voice, ScoreEvent Source, int Note);

/// <summary>What a score sounds like in time: key presses with ties merged, and the order of its bars.</summary>
public static class Timeline
{
    /// <summary>
    /// Key presses of both hands in written order, by start, hand (right first) and key. A tie into a note that nothing
    /// leads to, as at the start of a second ending, is struck.
    /// </summary>
    public static ValueList<Sounding> Of(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return Strike(score, Enumerable.Range(0, score.Bars.Count)).Select(s => s.Sounding).ToValueList();
    }

    /// <summary>Key presses when the bars follow each other in the given order, in the order of
    /// <see cref="Of"/>.</summary>
    public static IReadOnlyList<StruckNote> Strike(Score score, IEnumerable<int> order)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(order);
        var struck = new List<StruckNote>();
        var tied = new List<(int Index, int Voice)>(); // struck notes that a tie leads on from
        var start = ScoreTime.Zero;
        foreach (var index in order)
        {
            var bar = score.Bars[index];
            var events = bar.Voices.SelectMany(v => v.Events.Select(e => (Voice: v, Event: e)));
            foreach (var (voice, e) in events.OrderBy(x => x.Event.At))
            {
                var now = start + e.At;
                for (var n = 0; n < e.Notes.Count; n++)
                {
                    var (note, end) = (e.Notes[n], now + e.Length);
                    var from = note.TieStop ? Leading(struck, tied, voice, note.Pitch.Midi, now) : -1;
                    var at = struck.Count;
                    if (from >= 0)
                    {
                        at = tied[from].Index;
                        tied.RemoveAt(from);
                        struck[at] = struck[at] with { Sounding = struck[at].Sounding with { End = end } };
                    }
                    else
                    {
                        var key = note.Pitch.Midi;
                        var sounding = new Sounding(voice.Hand, key, now, end, index, e.At, e.Rolled) { Id = note.Id };
                        struck.Add(new StruckNote(sounding, voice, e, n));
                    }
                    if (note.TieStart)
                    {
                        tied.Add((at, voice.Number));
                    }
                }
            }
            start += bar.Length;
            tied.RemoveAll(t => struck[t.Index].Sounding.End < start);
        }
        return [.. struck.OrderBy(s => s.Sounding.Start).ThenBy(s => s.Sounding.Hand).ThenBy(s => s.Sounding.Key)];
    }

    /// <summary>The tied note that leads here: same key, ending now; own hand and voice before others.</summary>
    private static int Leading(
        List<StruckNote> struck,
        List<(int Index, int Voice)> tied,
        ScoreVoice voice,
        int key,
        ScoreTime now
    )
    {
        var (best, found) = (0, -1);
        for (var i = 0; i < tied.Count; i++)
        {
            var sounding = struck[tied[i].Index].Sounding;
            if (sounding.Key == key && sounding.End == now)
            {
                var fit = 1 + (sounding.Hand == voice.Hand ? 2 : 0) + (tied[i].Voice == voice.Number ? 1 : 0);
                (best, found) = fit > best ? (fit, i) : (best, found);
            }
        }
        return found;
    }

    /// <summary>
    /// Indexes of the bars in playing order, repeats and endings unfolded. Always ends: at most twenty times the bars
    /// are played.
    /// </summary>
    public static ValueList<int> PlayOrder(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return PlayOrder(score.Bars.Select(b => b.Marks).ToList());
    }

    /// <summary>The same for bars of which only the marks are known.</summary>
    public static ValueList<int> PlayOrder(IReadOnlyList<BarMarks> bars)
    {
        ArgumentNullException.ThrowIfNull(bars);
        var order = new List<int>();
        var (i, begin, turn) = (0, 0, 1);
        while (i < bars.Count && order.Count < 20L * bars.Count)
        {
            var bar = bars[i];
            if (bar.RepeatStart && i != begin)
            {
                (begin, turn) = (i, 1);
            }
            if (bar.Ending.Count > 0 && !bar.Ending.Contains(turn))
            {
                i++;
                continue;
            }
            order.Add(i);
            var next = i + 1 < bars.Count ? bars[i + 1].Ending : [];
            if (bar.RepeatEnd > 0 && GoesBack(bar, next, turn))
            {
                (i, turn) = (begin, turn + 1);
                continue;
            }
            if (bar.RepeatEnd > 0 || (bar.Ending.Count > 0 && !bar.Ending.Equals(next)))
            {
                (begin, turn) = (i + 1, 1);
            }
            i++;
        }
        return order.ToValueList();
    }

    // An ending goes back as long as it, or the one after it, is meant for the next time.
    private static bool GoesBack(BarMarks bar, ValueList<int> next, int turn) =>
        bar.Ending.Count == 0
            ? turn < bar.RepeatEnd
            : turn < 2 || bar.Ending.Contains(turn + 1) || next.Contains(turn + 1);
}
