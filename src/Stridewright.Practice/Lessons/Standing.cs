using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>What the takes show of a player: which step each is of, how clean, how fast, and what went wrong in which bars.</summary>
internal sealed class Standing
{
    private readonly List<HeardStep> _heard = [];

    /// <summary>A take of a step.</summary>
    /// <param name="Right">Share of the notes that are right; extra ones count against it.</param>
    /// <param name="Beats">Tempo; 0: unknown.</param>
    /// <param name="IsWhole">Nearly all bars of the step were played.</param>
    private sealed record HeardStep(string Take, PathStep Step, double Right, double Beats, bool IsWhole, bool IsHeldUp)
    {
        public bool IsClean => IsWhole && !IsHeldUp && Right >= LessonLimits.LeastRight.Value;
    }

    /// <summary>What was remarked in each bar of the piece, by index.</summary>
    public Dictionary<int, HashSet<RemarkKind>> Faults { get; } = [];

    public ValueList<string> Sentences { get; private set; } = [];

    public static Standing Of(IReadOnlyList<PathStep> steps, IReadOnlyList<NamedTake> takes, Pace pace)
    {
        var standing = new Standing();
        var scores = steps.Select(s => ExpectedScore.Of(ScoreNotes.Of(s.Score))).ToList();
        var sentences = new List<string>();
        foreach (var take in takes)
        {
            sentences.Add(standing.Hear(take, steps, scores, pace));
        }
        standing.Sentences = sentences.ToValueList();
        return standing;
    }

    /// <summary>Tempo at which a step is to be taken up: where its last take was clean that tempo, else a tenth below it; null:
    /// nothing is known.</summary>
    public double? BeginAt(PathStep step) =>
        _heard.FindLast(h => h.Step.Id == step.Id && h.Beats > 0) is not { } last ? null
        : last.IsClean ? last.Beats
        : last.Beats * (1 - LessonLimits.FallBack.Value);

    /// <summary>The take that shows a step clean at the tempo of its test; null: none does.</summary>
    public string? Shows(PathStep step) =>
        _heard.Find(h => h.Step.Id == step.Id && h.IsClean && h.Beats >= step.Test.BeatsPerMinute)?.Take;

    /// <summary>As many clean takes in a row at the tempo of its test as it asks for.</summary>
    public bool IsDone(PathStep step)
    {
        var row = 0;
        foreach (var heard in _heard.Where(h => h.Step.Id == step.Id))
        {
            row = heard.IsClean && heard.Beats >= step.Test.BeatsPerMinute ? row + 1 : 0;
            if (row >= step.Test.CleanTakes)
            {
                return true;
            }
        }
        return false;
    }

    private string Hear(NamedTake take, IReadOnlyList<PathStep> steps, List<ExpectedScore> scores, Pace pace)
    {
        (double Fit, PathStep Step, TakeReport Report, ExpectedScore Score, int Asked, int Right, int Extra)? best =
            null;
        for (var i = 0; i < steps.Count; i++)
        {
            var report = Listener.Hear(Aligner.Align(scores[i], take.Take));
            if (report.IsAnotherPiece || (report.Alone is not null && steps[i].Hands == StepHands.Together))
            {
                continue;
            }
            var played = report.Bars.Where(b => b.IsPlayed).ToList();
            var (asked, right) = (played.Sum(b => b.Asked), played.Sum(b => b.Right));
            var fit = 2.0 * right / Math.Max(1, asked + take.Take.Notes.Count);
            // Of steps that fit alike the later one, which has more to it.
            if (best is null || fit >= best.Value.Fit - 1e-9)
            {
                best = (fit, steps[i], report, scores[i], asked, right, report.Bars.Sum(b => b.Extra));
            }
        }
        if (best is not var (_, step, heard, score, notes, good, extra))
        {
            return LessonMessages.HeardNothing(take.Name);
        }
        foreach (var remark in heard.All)
        {
            for (var bar = remark.FirstBar; bar <= remark.LastBar; bar++)
            {
                // What is about the whole take is of no one bar.
                if (
                    remark.Kind is not (RemarkKind.Drift or RemarkKind.Swing or RemarkKind.Balance)
                    || bar == remark.FirstBar
                )
                {
                    var written = step.First + score.Bars[bar].Written;
                    Faults.TryAdd(written, []);
                    Faults[written].Add(remark.Kind);
                }
            }
        }
        var asks = heard.Bars.Count(b => b.Asked > 0);
        var isWhole = heard.Bars.Count(b => b.IsPlayed) >= LessonLimits.Covered.Value * asks;
        var beats = (heard.QuartersPerMinute ?? 0) / pace.Beat.Length.ToQuarters();
        var share = notes + extra == 0 ? 0 : (double)good / (notes + extra);
        var isHeldUp = heard.All.Any(r => r.Kind == RemarkKind.Hesitation);
        _heard.Add(new(take.Name, step, share, Math.Round(beats, 1), isWhole, isHeldUp));
        return LessonMessages.Heard(take.Name, step.Name, share, beats, isWhole);
    }
}
