using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// How hard a hand's part is, from 1 to 100. Each part of it is measured in what is already demanding, bent so that more of
/// the same adds ever less (1 − e^−x), and added with its weight; so effort rises with every part and never passes 100. It
/// orders settings of like music for one pair of hands; it claims no scale beyond that. Repeats are not followed
/// (docs/decisions/effort-as-written.md).
/// </summary>
internal static class EffortMeasure
{
    /// <summary>Effort of silence, and the most there is.</summary>
    public const double Least = 1,
        Most = 100;

    // Density, leap and reach carry the effort of this style; syncopation is learned before octaves; strain and repetition
    // are limited elsewhere and only tip the scale, and so does reading, which is over once a piece is known. They add up
    // to 1.
    private static readonly (EffortKind Kind, double Weight, Func<EffortScope, double> Amount)[] Parts =
    [
        (EffortKind.Reach, 0.19, ReachPart.Amount),
        (EffortKind.Strain, 0.05, StrainPart.Amount),
        (EffortKind.Leap, 0.23, LeapPart.Amount),
        (EffortKind.Density, 0.32, DensityPart.Amount),
        (EffortKind.Repetition, 0.02, RepetitionPart.Amount),
        (EffortKind.Independence, 0.14, IndependencePart.Amount),
        (EffortKind.Reading, 0.05, ReadingPart.Amount),
    ];

    public static Effort Of(Passage passage, HandPart right, HandPart left)
    {
        var (rightBars, leftBars) = (Scopes(passage, right, left), Scopes(passage, left, right));
        var (rightEffort, leftEffort) = (Whole(passage, right, rightBars), Whole(passage, left, leftBars));
        return new()
        {
            Overall = Together(rightEffort.Value, leftEffort.Value),
            Right = rightEffort,
            Left = leftEffort,
            Bars = passage.Bars.Select((bar, i) => OfBar(bar, i, rightBars[i], leftBars[i])).ToValueList(),
        };
    }

    /// <summary>Both hands at once: two thirds the busier hand's, one third the other's.</summary>
    public static double Together(double a, double b) => (2 * Math.Max(a, b) + Math.Min(a, b)) / 3;

    private static EffortScope[] Scopes(Passage passage, HandPart part, HandPart other)
    {
        var bars = part.ByBar(passage.Bars.Count);
        var rhythms = IndependencePart.ByBar(passage, part.Onsets, other.Onsets);
        var prints = ReadingPart.ByBar(passage.Bars, part.Measures.Hand);
        return [.. bars.Select((bar, i) => new EffortScope(bar, passage.BarSeconds(i), rhythms[i], prints[i]))];
    }

    private static HandEffort Whole(Passage passage, HandPart part, EffortScope[] bars)
    {
        var against = bars.Aggregate(default(RhythmCount), (sum, bar) => sum + bar.Against);
        var print = bars.Aggregate(default(PrintCount), (sum, bar) => sum + bar.Print);
        var scope = new EffortScope(part, passage.TotalSeconds, against, print);
        var (value, parts) = Measured(scope);
        var (fast, median) = LeapPart.Rates(scope);
        return new HandEffort
        {
            Value = value,
            Parts = parts,
            StrokesPerSecond = scope.StrokesPerSecond,
            KeysPerStroke = DensityPart.KeysPerStroke(scope),
            LeapBitsPerSecond = fast,
            MedianLeapBitsPerSecond = median,
            StrainedShare = StrainPart.Share(scope),
            MeanStretch = ReachPart.MeanStretch(scope),
            StretchedShare = ReachPart.StretchedShare(scope),
            SyncopatedShare = against.Strokes == 0 ? 0 : (double)against.Syncopated / against.Strokes,
        };
    }

    private static BarEffort OfBar(ScoreBar bar, int index, EffortScope right, EffortScope left)
    {
        var ((rightValue, rightParts), (leftValue, leftParts)) = (Measured(right), Measured(left));
        return new(index, bar.Number, Together(rightValue, leftValue))
        {
            Right = rightValue,
            Left = leftValue,
            RightParts = rightParts,
            LeftParts = leftParts,
        };
    }

    private static (double Value, ValueList<EffortPart> Parts) Measured(EffortScope scope)
    {
        if (scope.Onsets.Count == 0)
        {
            return (Least, []);
        }
        var parts = new EffortPart[Parts.Length];
        var value = Least;
        for (var i = 0; i < parts.Length; i++)
        {
            var amount = Parts[i].Amount(scope);
            parts[i] = new(Parts[i].Kind, amount, (Most - Least) * Parts[i].Weight * amount);
            value += parts[i].Points;
        }
        return (value, parts.ToValueList());
    }
}
