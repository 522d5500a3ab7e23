using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>The fastest tempo at which a piece is comfortable for a pair of hands, as far as speed goes.</summary>
/// <param name="Speed">Of the tempo that was judged, such as 0.8 for four fifths of it; at most
/// <see cref="Comfort.MostSpeed"/>.</param>
/// <param name="QuartersPerMinute">The tempo of the first bar then.</param>
/// <param name="Hand">The hand that binds it.</param>
/// <param name="Binding">What binds it, a leap, density or repetition.</param>
/// <param name="Bar">Number of a bar that does.</param>
public sealed record ComfortableTempo(
    double Speed,
    double QuartersPerMinute,
    Hand Hand,
    EffortKind Binding,
    string Bar
);

/// <summary>
/// Comfortable, as far as speed goes: of a hundred leaps of a hand no more than five faster than naive pointing (Fitts 1954),
/// no bar with more strokes a second than the hand keeps up on one key, no run on one key or octave above four fifths of its
/// limit, and no fault of speed. All of these grow with the tempo alike.
/// </summary>
internal static class Comfort
{
    /// <summary>Further than twice the tempo nothing is asked.</summary>
    public const double MostSpeed = 2;

    /// <summary>Share of the limit of repeated strokes.</summary>
    public const double RepetitionShare = 0.8;

    private const double SlowerBy = 0.99,
        SlowestSpeed = 0.05;

    public static ComfortableTempo? Fastest(Score score, PlayerHands hands, double? tempo, Judgement judged)
    {
        var bounds = judged.Hands.SelectMany(part => Bounds(judged.Passage, part)).ToList();
        if (bounds.Count == 0)
        {
            return null;
        }
        var (least, hand, kind, bar) = bounds.MinBy(b => b.Speed);
        var speed = Math.Min(least, MostSpeed);
        while (speed > SlowestSpeed && HasFastFault(Judgement.Of(score, hands, tempo, speed).Verdict))
        {
            speed *= SlowerBy;
        }
        var quarters = judged.Passage.TempoAt(ScoreTime.Zero) * speed;
        return new(speed, quarters, hand, kind, judged.Passage.Bars[bar].Number);
    }

    private static bool HasFastFault(Verdict verdict) =>
        verdict.Faults.Any(f => f.Kind is FaultKind.Leap or FaultKind.RepeatedKey or FaultKind.RepeatedOctave);

    private static IEnumerable<(double Speed, Hand Hand, EffortKind Kind, int Bar)> Bounds(
        Passage passage,
        HandPart part
    )
    {
        var hand = part.Measures;
        var moves = part.Moves.Where(m => m.Rate > 0).OrderBy(m => m.Rate).ToList();
        var rates = part.Moves.Select(m => m.Rate).Order().ToList();
        var fast = EffortNumbers.Percentile(rates, 0.95);
        if (fast > 0)
        {
            var bar = (moves.Find(m => m.Rate >= fast) ?? moves[^1]).To.Bar;
            yield return (LeapPart.Demanding(hand) / fast, hand.Hand, EffortKind.Leap, bar);
        }
        var paces = part
            .Onsets.GroupBy(o => o.Bar)
            .Where(g => passage.BarSeconds(g.Key) > 0)
            .Select(g => (Bar: g.Key, Pace: g.Count() / passage.BarSeconds(g.Key)))
            .ToList();
        if (paces.Count > 0)
        {
            var (bar, pace) = paces.MaxBy(p => p.Pace);
            yield return (hand.StrokesPerSecond / pace, hand.Hand, EffortKind.Density, bar);
        }
        var again = RepetitionPart.Running(part.Moves).ToList();
        if (again.Count > 0)
        {
            var fastest = again.MaxBy(m => RepetitionPart.Rate(m, hand))!;
            yield return (
                RepetitionShare / RepetitionPart.Rate(fastest, hand),
                hand.Hand,
                EffortKind.Repetition,
                fastest.To.Bar
            );
        }
    }
}
