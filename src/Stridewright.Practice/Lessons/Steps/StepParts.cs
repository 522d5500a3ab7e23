using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>The parts from which the steps of each hand are chosen, easiest first, the written one last.</summary>
internal sealed record StepParts(IReadOnlyList<StepPart> Left, IReadOnlyList<StepPart> Right)
{
    private static readonly (StepKind Kind, SyncopationKind Has)[] Rhythms =
    [
        (StepKind.RightTiedBar, SyncopationKind.OverBar),
        (StepKind.RightTiedMid, SyncopationKind.OverMid),
        (StepKind.RightUntied, SyncopationKind.Untied),
    ];

    /// <summary>Parts thinned out of the written ones.</summary>
    public static StepParts Of(Score goal)
    {
        var (left, right) = (Excerpts.Hand(goal, Hand.Left), Excerpts.Hand(goal, Hand.Right));
        return new(
            [
                new(StepKind.LeftInPlace, LeftThinning.InPlace(left)),
                new(StepKind.LeftStride, LeftThinning.SingleBass(left)),
                new(StepKind.LeftWhole, left),
            ],
            [
                .. Straight(StepKind.RightPlain, right, null),
                .. Straight(StepKind.RightUntied, right, SyncopationKind.Untied),
                .. Straight(StepKind.RightTiedMid, right, SyncopationKind.OverMid),
                Named(new(StepKind.RightTiedBar, RightThinning.Line(right))),
                new(StepKind.RightOctaves, RightThinning.Octaves(right)),
                new(StepKind.RightWhole, right),
            ]
        );
    }

    /// <summary>Parts of the easier levels of the same tune, in the same key, form and tempo, with the upper line of what each
    /// level adds to the rhythm before its chords.</summary>
    /// <param name="written">The setting's score at the tempo at which it is learned.</param>
    public static StepParts Of(Tune tune, Arrangement goal, Score written, CancellationToken cancellation)
    {
        var (left, right) = (new List<StepPart>(), new List<StepPart>());
        var most = Math.Max(goal.Brief.LeftLevel, goal.Brief.RightLevel);
        for (var level = Brief.LowestLevel; level <= most; level++)
        {
            foreach (
                var raggedness in level == Brief.LowestLevel
                    ? [0, goal.Brief.Raggedness]
                    : (double[])[goal.Brief.Raggedness]
            )
            {
                var brief = goal.Brief with
                {
                    LeftLevel = Math.Min(level, goal.Brief.LeftLevel),
                    RightLevel = Math.Min(level, goal.Brief.RightLevel),
                    Raggedness = raggedness,
                    Tonic = goal.Key.Tonic,
                    BeatsPerMinute = Pace.Of(written).BeatsPerMinute,
                    Seconds = null,
                    MostBars = null,
                    MostEffort = null,
                    Kept = [],
                    Settled = null,
                    ShowPlain = false,
                    Sketch = false,
                };
                if (
                    Arranger.Arrange(tune, brief, cancellation).Arrangement is { } easier
                    && Fits(easier.Score, written)
                )
                {
                    var (leftHand, rightHand) = (
                        Hand(easier.Score, Music.Hand.Left),
                        Hand(easier.Score, Music.Hand.Right)
                    );
                    if (level <= goal.Brief.LeftLevel && raggedness == goal.Brief.Raggedness)
                    {
                        left.Add(new(LeftKind(level), leftHand));
                    }
                    if (level <= goal.Brief.RightLevel)
                    {
                        right.AddRange(RightParts(level, raggedness == 0, rightHand));
                    }
                }
            }
        }
        // Basses brought near, where those of the first level are others than the ones to come.
        var near = left.Skip(1).Select(l => l.Score).Append(Hand(written, Music.Hand.Left)).Reverse().ToList();
        left.InsertRange(
            Math.Min(1, left.Count),
            near.Select(l => new StepPart(StepKind.LeftInPlace, LeftThinning.InPlace(l)))
        );
        left.Add(new(StepKind.LeftWhole, Hand(written, Music.Hand.Left)));
        right.Add(new(StepKind.RightTiedBar, RightThinning.Line(Hand(written, Music.Hand.Right))));
        right.Add(new(StepKind.RightOctaves, RightThinning.Octaves(Hand(written, Music.Hand.Right))));
        right.Add(new(StepKind.RightWhole, Hand(written, Music.Hand.Right)));
        var named = right.ConvertAll(Named);
        // A level that brings no syncopation of its own, after one that has some, is no step.
        var ragged = named.FindIndex(p => p.Kind != StepKind.RightPlain);
        return new(left, [.. named.Where((p, i) => i < ragged || p.Kind != StepKind.RightPlain)]);

        Score Hand(Score score, Hand hand) => Excerpts.Hand(score with { Subtitle = written.Subtitle }, hand);
    }

    // The same bars, so that one level leads into the next.
    private static bool Fits(Score easier, Score goal) =>
        easier.Bars.Count == goal.Bars.Count
        && easier.Bars.Zip(goal.Bars).All(b => b.First.Number == b.Second.Number && b.First.Length == b.Second.Length);

    private static StepKind LeftKind(int level) =>
        level switch
        {
            1 => StepKind.LeftInPlace,
            2 => StepKind.LeftSecondBass,
            3 => StepKind.LeftStride,
            _ => StepKind.LeftOctaves,
        };

    private static IEnumerable<StepPart> RightParts(int level, bool isPlain, Score right) =>
        level switch
        {
            1 when isPlain => [new(StepKind.RightPlain, right)],
            1 => [new(StepKind.RightFirstFigures, right)],
            2 => [new(StepKind.RightUntied, right)],
            3 => [new(StepKind.RightTiedMid, right)],
            4 => [new(StepKind.RightTiedBar, RightThinning.Line(right)), new(StepKind.RightPairs, right)],
            _ => [new(StepKind.RightTiedBar, RightThinning.Line(right)), new(StepKind.RightOctaves, right)],
        };

    private static IEnumerable<StepPart> Straight(StepKind kind, Score right, SyncopationKind? upTo) =>
        RightThinning.Straight(right, upTo) is { } score ? [Named(new(kind, score))] : [];

    // A part is named after the furthest syncopation that it has, not after the level that it comes from.
    private static StepPart Named(StepPart part)
    {
        if (!Rhythms.Any(r => r.Kind == part.Kind))
        {
            return part;
        }
        var has = Syncopations.In(part.Score, UpperLine.Of(part.Score)).Select(s => s.Kind).ToHashSet();
        var kind = Rhythms
            .Where(r => r.Kind <= part.Kind && has.Contains(r.Has))
            .Select(r => (StepKind?)r.Kind)
            .FirstOrDefault();
        return part with { Kind = kind ?? StepKind.RightPlain };
    }
}
