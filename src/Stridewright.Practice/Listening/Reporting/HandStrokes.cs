using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>What one hand struck at one moment of the score, as it was played once.</summary>
/// <param name="Run">Which stretch without a jump it belongs to.</param>
/// <param name="Beats">Quarters from the first note.</param>
/// <param name="Onset">Median second of its notes.</param>
/// <param name="Spread">Seconds from its first note to its last.</param>
/// <param name="Velocity">Of its highest note.</param>
internal sealed record HandStroke(
    int Run,
    double Beats,
    int Bar,
    ScoreTime At,
    double Onset,
    double Spread,
    ValueList<ExpectedNote> Notes,
    int Velocity
)
{
    public int Low => Notes.Min(n => n.Key);

    public int High => Notes.Max(n => n.Key);

    public double Length => Notes.Max(n => n.Length);

    public bool Rolled => Notes.Any(n => n.Rolled || n.Ornamented);
}

/// <summary>The strokes of both hands of a take, each hand's in the order of the take.</summary>
internal sealed class HandStrokes
{
    public HandStrokes(Alignment alignment)
    {
        var (score, take) = (alignment.Score.Notes, alignment.Take.Notes);
        var runOf = new int[take.Count];
        for (var r = 0; r < alignment.Runs.Count; r++)
        {
            runOf.AsSpan(alignment.Runs[r].FirstPlayed..alignment.Runs[r].PlayedEnd).Fill(r);
        }
        var strokes = alignment
            .Pairs.Where(p => p.IsMatch && score[p.Expected!.Value].Grace == 0)
            .Select(p => (Note: score[p.Expected!.Value], Played: take[p.Played!.Value], Run: runOf[p.Played!.Value]))
            .GroupBy(p => (p.Note.Hand, p.Run, p.Note.Beats))
            .Select(g => (g.Key.Hand, Stroke: Of(g.Key.Run, [.. g])))
            .OrderBy(s => s.Stroke.Run)
            .ThenBy(s => s.Stroke.Beats)
            .ToList();
        Right = [.. strokes.Where(s => s.Hand == Hand.Right).Select(s => s.Stroke)];
        Left = [.. strokes.Where(s => s.Hand == Hand.Left).Select(s => s.Stroke)];
    }

    public IReadOnlyList<HandStroke> Right { get; }

    public IReadOnlyList<HandStroke> Left { get; }

    public IReadOnlyList<HandStroke> Of(Hand hand) => hand == Hand.Right ? Right : Left;

    private static HandStroke Of(int run, List<(ExpectedNote Note, PlayedNote Played, int Run)> notes)
    {
        var onsets = notes.Select(n => n.Played.Onset).Order().ToList();
        var first = notes[0].Note;
        return new HandStroke(
            run,
            first.Beats,
            first.Bar,
            first.At,
            (onsets[(onsets.Count - 1) / 2] + onsets[onsets.Count / 2]) / 2,
            onsets[^1] - onsets[0],
            notes.Select(n => n.Note).ToValueList(),
            notes.MaxBy(n => n.Note.Key).Played.Velocity
        );
    }
}
