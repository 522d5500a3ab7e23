using System.Globalization;
using Stridewright.Practice.Listening;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>Counts of what was found, what was true and what was both.</summary>
internal sealed class Tally
{
    public int True { get; private set; }

    public int Found { get; private set; }

    public int Both { get; private set; }

    public double Precision => Found == 0 ? 1 : (double)Both / Found;

    public double Recall => True == 0 ? 1 : (double)Both / True;

    /// <summary>Harmonic mean of precision and recall; 1 where there was nothing to find and nothing was found.</summary>
    public double F1 => True + Found == 0 ? 1 : 2.0 * Both / (True + Found);

    public void Add<T>(HashSet<T> truth, HashSet<T> found)
    {
        True += truth.Count;
        Found += found.Count;
        Both += found.Count(truth.Contains);
    }
}

/// <summary>Precision, recall and F1 for matches, insertions and deletions, as alignments are measured in the literature
/// (Nakamura, Yoshii and Katayose 2017).</summary>
internal sealed class TakeScorer
{
    public Tally Matches { get; } = new();

    public Tally Insertions { get; } = new();

    public Tally Deletions { get; } = new();

    public int Takes { get; private set; }

    public Alignment Add(MadeTake made)
    {
        var alignment = Aligner.Align(made.Score, made.Take);
        Add(made, alignment);
        return alignment;
    }

    public void Add(MadeTake made, Alignment alignment)
    {
        var truth = made.Truth.Select((e, p) => (Expected: e, Played: p)).ToList();
        Matches.Add(
            [.. truth.Where(t => t.Expected is not null).Select(t => (t.Expected!.Value, t.Played))],
            [.. alignment.Pairs.Where(p => p.IsMatch).Select(p => (p.Expected!.Value, p.Played!.Value))]
        );
        Insertions.Add(
            [.. truth.Where(t => t.Expected is null).Select(t => t.Played)],
            [.. alignment.Pairs.Where(p => p.Expected is null).Select(p => p.Played!.Value)]
        );
        var played = made.Truth.OfType<int>().ToHashSet();
        Deletions.Add(
            [.. Enumerable.Range(0, made.Score.Notes.Count).Where(i => !played.Contains(i))],
            [.. alignment.Pairs.Where(p => p.Played is null).Select(p => p.Expected!.Value)]
        );
        Takes++;
    }

    public string Row(string name) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{name, -34} {Takes, 5} {Matches.True, 8} {Matches.F1:0.0000} {Insertions.F1:0.0000} {Deletions.F1:0.0000}"
        );

    public const string Head = "fault                              takes  matches matchF1 insertF1 deleteF1";
}
