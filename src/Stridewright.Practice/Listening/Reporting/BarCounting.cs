using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>Counts the notes of each bar.</summary>
internal static class BarCounting
{
    public static ValueList<HeardBar> Count(
        Alignment alignment,
        IReadOnlyList<WrongNote> wrong,
        Hand? alone,
        Dictionary<int, double> tempi
    )
    {
        var score = alignment.Score;
        var count = score.Bars.Count;
        var (asked, right, other, octave, missing, extra) = (
            new int[count],
            new int[count],
            new int[count],
            new int[count],
            new int[count],
            new int[count]
        );
        var replaced = wrong.ToDictionary(w => w.Expected);
        var standsFor = wrong.Select(w => w.Played).ToHashSet();
        var heard = alignment.Pairs.Where(p => p.IsMatch).Select(p => p.Expected!.Value).ToHashSet();
        // A key held in both voices is struck once.
        var sounding = heard.Select(i => (score.Notes[i].Beats, score.Notes[i].Key)).ToHashSet();
        for (var i = 0; i < score.Notes.Count; i++)
        {
            var note = score.Notes[i];
            if (alone is not null && note.Hand != alone)
            {
                continue;
            }
            asked[note.Bar]++;
            if (heard.Contains(i) || sounding.Contains((note.Beats, note.Key)))
            {
                right[note.Bar]++;
            }
            else if (replaced.TryGetValue(i, out var key))
            {
                other[note.Bar]++;
                octave[note.Bar] += key.IsOctave ? 1 : 0;
            }
            else
            {
                missing[note.Bar]++;
            }
        }
        var bar = 0;
        foreach (var pair in alignment.Pairs.Where(p => p.Played is not null).OrderBy(p => p.Played))
        {
            bar = pair.Expected is { } e ? score.Notes[e].Bar : bar;
            if (pair.Expected is null && !standsFor.Contains(pair.Played!.Value) && count > 0)
            {
                extra[bar]++;
            }
        }
        return Enumerable
            .Range(0, count)
            .Select(i => new HeardBar(
                i,
                score.Bars[i].Bar.Number,
                asked[i],
                right[i],
                other[i],
                octave[i],
                missing[i],
                extra[i],
                tempi.TryGetValue(i, out var tempo) ? tempo : null
            ))
            .ToValueList();
    }
}
