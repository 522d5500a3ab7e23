using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Practice.Listening;

/// <summary>Puts the bars of a score into playing order and merges what is tied.</summary>
internal static class ScoreUnfolding
{
    public static ExpectedScore Of(ScoreNotes score)
    {
        var order = PlayingOrder.Of(score);
        var ids = score.Bars.Select(IdsOf).ToList();
        var (notes, bars, tied) = (
            new List<Heard>(),
            new List<ExpectedBar>(),
            new List<(int Index, WrittenKey Note)>()
        );
        var start = ScoreTime.Zero;
        foreach (var index in order)
        {
            var bar = score.Bars[index];
            Add(notes, tied, bar, ids[index], bars.Count, start);
            bars.Add(new ExpectedBar(bar, index, start.ToQuarters()));
            start += bar.Length;
            // A tie may leap over a rest of another voice, never over a bar.
            tied.RemoveAll(t => notes[t.Index].Bar < bars.Count - 1 && notes[t.Index].End < start - bar.Length);
        }
        var origin = notes.Count > 0 ? notes.Min(n => n.Start) : ScoreTime.Zero;
        return new ExpectedScore
        {
            Title = score.Title,
            Notes = notes
                .OrderBy(n => n.Start)
                .ThenByDescending(n => n.Grace)
                .ThenBy(n => n.Written.Hand)
                .ThenBy(n => n.Written.Key)
                .Select(n => n.ToExpected(origin))
                .ToValueList(),
            Bars = bars.Select(b => b with { Start = b.Start - origin.ToQuarters() }).ToValueList(),
        };
    }

    private static void Add(
        List<Heard> notes,
        List<(int Index, WrittenKey Note)> tied,
        NotesBar bar,
        string[] ids,
        int played,
        ScoreTime start
    )
    {
        for (var i = 0; i < bar.Notes.Count; i++)
        {
            var note = bar.Notes[i];
            var now = start + note.At;
            var at = note.TieStop && !note.Grace ? Leading(tied, notes, note, now) : -1;
            if (at >= 0)
            {
                var from = tied[at].Index;
                tied.RemoveAt(at);
                notes[from] = notes[from] with { End = now + note.Length };
                at = from;
            }
            else
            {
                at = notes.Count;
                var grace = note.Grace ? RankOf(bar.Notes, i) : 0;
                notes.Add(new Heard(note, ids[i], now, now + note.Length, played, grace));
            }
            if (note.TieStart)
            {
                tied.Add((at, note));
            }
        }
    }

    // How many grace notes of its voice still come before the note they lead to, itself counted.
    private static int RankOf(ValueList<WrittenKey> notes, int index)
    {
        var (note, rank) = (notes[index], 1);
        for (var i = index + 1; i < notes.Count && notes[i].At == note.At; i++)
        {
            rank += notes[i].Grace && notes[i].Voice == note.Voice && notes[i].Hand == note.Hand ? 1 : 0;
        }
        return rank;
    }

    // The tied note that leads here: same key; ending now before ending earlier, own voice before others.
    private static int Leading(
        List<(int Index, WrittenKey Note)> tied,
        List<Heard> notes,
        WrittenKey note,
        ScoreTime now
    )
    {
        var (best, found) = (0, -1);
        for (var i = 0; i < tied.Count; i++)
        {
            var (from, source) = (notes[tied[i].Index], tied[i].Note);
            if (source.Key == note.Key && from.End <= now && (from.End == now || source.Voice == note.Voice))
            {
                var fit =
                    1
                    + (from.End == now ? 4 : 0)
                    + (source.Hand == note.Hand ? 2 : 0)
                    + (source.Voice == note.Voice ? 1 : 0);
                (best, found) = fit > best ? (fit, i) : (best, found);
            }
        }
        return found;
    }

    private static string[] IdsOf(NotesBar bar, int index)
    {
        var counts = new Dictionary<string, int>();
        return bar
            .Notes.Select(note =>
            {
                var place = counts[note.Voice] = counts.GetValueOrDefault(note.Voice) + 1;
                return note.Id.Length > 0
                    ? note.Id
                    : string.Create(CultureInfo.InvariantCulture, $"m{index + 1}-v{note.Voice}-{place}");
            })
            .ToArray();
    }

    private sealed record Heard(WrittenKey Written, string Id, ScoreTime Start, ScoreTime End, int Bar, int Grace)
    {
        public ExpectedNote ToExpected(ScoreTime origin) =>
            new(
                Id,
                (Start - origin).ToQuarters(),
                Written.Key,
                Written.Hand,
                Bar,
                Written.At,
                (End - Start).ToQuarters()
            )
            {
                Grace = Grace,
                Rolled = Written.Rolled,
                Accent = Written.Accent,
                Ornamented = Written.Ornamented,
            };
    }
}
