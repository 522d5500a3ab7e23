using BenchmarkDotNet.Attributes;
using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Bench;

/// <summary>
/// Takes of ever longer settings laid along their scores, figures per 1,000 notes; each take has a breathing tempo, every
/// 37th note wrong, every 29th missing, every 31st extra. Baseline: about 1,500 notes. Promise: 1,500 notes in 100 ms,
/// 10,000 in 1 s, so at most 67 and 100 ms for 1,000; memory grows linearly, so that its ratios are 1.
/// </summary>
[MemoryDiagnoser]
public class ListeningBench
{
    private static readonly (ExpectedScore Score, Take Take) Short = Made(1_500);
    private static readonly (ExpectedScore Score, Take Take) Long = Made(10_000);
    private static readonly Alignment Aligned = Aligner.Align(Short.Score, Short.Take);

    [Benchmark(Baseline = true)]
    public object Notes1500() => Aligner.Align(Short.Score, Short.Take);

    [Benchmark]
    public object Notes10000() => Aligner.Align(Long.Score, Long.Take);

    [Benchmark]
    public object ReportOf1500() => Listener.Hear(Aligned);

    private static (ExpectedScore, Take) Made(int notes)
    {
        // Eight bars of the usual tune have some 128 notes at this level.
        var score = ExpectedScore.Of(ScoreNotes.Of(Material.Score(5, notes / 125)));
        var kept = score.Notes.Take(notes).ToValueList();
        score = score with { Notes = kept };
        var played = new List<PlayedNote>();
        uint dice = 1;
        for (var i = 0; i < kept.Count; i++)
        {
            dice = unchecked(dice * 1664525 + 1013904223);
            var at = 1 + 0.6 * kept[i].Beats + 0.8 * Math.Sin(kept[i].Beats / 9) + dice / (double)uint.MaxValue * 0.02;
            if (i % 29 != 0)
            {
                played.Add(new PlayedNote(at, at + 0.2, kept[i].Key + (i % 37 == 0 ? 1 : 0), 64));
            }
            if (i % 31 == 0)
            {
                played.Add(new PlayedNote(at + 0.05, at + 0.2, kept[i].Key - 1, 50));
            }
        }
        return (score, new Take(played.OrderBy(p => p.Onset).ThenBy(p => p.Key).ToValueList()));
    }
}
