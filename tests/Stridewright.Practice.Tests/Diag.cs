using Stridewright.Practice.Tests.Takes;
using System.Globalization;

namespace Stridewright.Practice.Tests;

public sealed class DiagTests(ITestOutputHelper output)
{
    [Fact]
    public void Show()
    {
        var name = Environment.GetEnvironmentVariable("DIAG") ?? "hands apart 200 ms";
        var wishes = AlignmentAccuracyTests.FaultsFor(name);
        var shown = 0;
        for (var seed = 0; seed < 52; seed++)
        {
            var scorer = new TakeScorer();
            var made = MadeTake.Of(Pieces.Samples[seed % Pieces.Samples.Count], wishes, seed);
            var a = scorer.Add(made);
            if (scorer.Matches.F1 > 0.9999 || shown++ > 8) { continue; }
            output.WriteLine($"seed {seed} F1 {scorer.Matches.F1:0.0000} n {made.Take.Notes.Count} runs {a.Runs.Count}");
            foreach (var r in a.Runs)
            {
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   run {r.FirstPlayed}..{r.PlayedEnd} t {made.Take.Notes[r.FirstPlayed].Onset:0.00} beats {r.FirstBeats}..{r.LastBeats}"));
            }
            for (var n = 1; n < made.Truth.Count; n++)
            {
                if (made.Truth[n] is { } x && made.Truth[n - 1] is { } y && Math.Abs(made.Score.Notes[x].Beats - made.Score.Notes[y].Beats) > 3)
                {
                    output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   true jump at note {n} t {made.Take.Notes[n].Onset:0.00} {made.Score.Notes[y].Beats} -> {made.Score.Notes[x].Beats}"));
                }
            }
            var errs = 0;
            foreach (var p in a.Pairs.Where(p => p.Played is not null).OrderBy(p => p.Played))
            {
                var t = made.Truth[p.Played!.Value];
                if (t != p.Expected && errs++ < 12)
                {
                    string E(int? i) => i is { } k ? string.Create(CultureInfo.InvariantCulture, $"{made.Score.Notes[k].Beats:0.00}/{made.Score.Notes[k].Key}{made.Score.Notes[k].Hand.ToString()[0]}") : "none";
                    output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"   note {p.Played} t {made.Take.Notes[p.Played.Value].Onset:0.000} key {made.Take.Notes[p.Played.Value].Key} true {E(t)} found {E(p.Expected)}"));
                }
            }
        }
    }
}

public sealed class PathDiagTests(ITestOutputHelper output)
{
    [Fact]
    public void Show()
    {
        var wishes = AlignmentAccuracyTests.FaultsFor("restarts");
        var made = MadeTake.Of(Pieces.Samples[15 % Pieces.Samples.Count], wishes, 15);
        var chords = new Stridewright.Practice.Listening.Search.ChordTable(made.Score.Notes);
        var path = Stridewright.Practice.Listening.Search.PathSearch.Find(chords, made.Take.Notes);
        for (var n = 155; n < 175; n++)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{n} t {made.Take.Notes[n].Onset:0.000} key {made.Take.Notes[n].Key} true {(made.Truth[n] is { } k ? made.Score.Notes[k].Beats : -1)} path {chords.Beats[path[n].Chord]} {path[n].Step} {path[n].Cost:0.00} {path[n].Tempo:0.000}"));
        }
    }
}
