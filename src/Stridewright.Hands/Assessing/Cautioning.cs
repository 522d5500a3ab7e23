using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Something that health asks for, and who says so.</summary>
/// <param name="Kind">Strain, density, leap or repetition: what called for it; null: any of them.</param>
public sealed record Caution(EffortKind? Kind, string Sentence, string Source)
{
    /// <summary>What health asks of everybody who practises.</summary>
    public static ValueList<Caution> General { get; } =
        EffortMessages.GeneralCautions.Select(s => new Caution(null, s, EffortMessages.HealthSource)).ToValueList();
}

/// <summary>
/// Cautions where strain, speed or repetition is high: half of the strain that is allowed, more than one leap in twenty faster
/// than naive pointing, a bar at the hand's limit of strokes, a run on one key or octave above four fifths of its limit.
/// Advice, not medicine.
/// </summary>
internal static class Cautioning
{
    private const double MuchStrain = Reach.StrainedShareLimit / 2;

    public static ValueList<Caution> Of(Judgement judged)
    {
        var cautions = new List<Caution>();
        foreach (var part in judged.Hands)
        {
            var effort = part.Measures.Hand == Hand.Right ? judged.Verdict.Effort.Right : judged.Verdict.Effort.Left;
            Add(EffortKind.Strain, effort.StrainedShare >= MuchStrain, StrainedBars(part));
            Add(EffortKind.Leap, effort.LeapBitsPerSecond > LeapPart.Demanding(part.Measures), FastLeaps(part));
            Add(EffortKind.Density, true, DenseBars(judged.Passage, part));
            Add(EffortKind.Repetition, true, FastRepeats(part));

            void Add(EffortKind kind, bool isHigh, IEnumerable<int> bars)
            {
                var numbers = isHigh ? bars.Distinct().Select(b => judged.Passage.Bars[b].Number).ToList() : [];
                if (numbers.Count > 0)
                {
                    var sentence = EffortMessages.Caution(kind, part.Measures.Hand, numbers);
                    cautions.Add(new(kind, sentence, EffortMessages.HealthSource));
                }
            }
        }
        return cautions.Count == 0 ? [] : [.. cautions, .. Caution.General];
    }

    private static IEnumerable<int> StrainedBars(HandPart part) =>
        part
            .Onsets.Where(o => ReachRules.IsStretch(o) && ReachRules.StretchOf(o, part.Reach) >= Stretch.Strained)
            .Select(o => o.Bar);

    private static IEnumerable<int> FastLeaps(HandPart part) =>
        part.Moves.Where(m => m.Rate > LeapPart.Demanding(part.Measures)).Select(m => m.To.Bar);

    private static IEnumerable<int> DenseBars(Passage passage, HandPart part) =>
        part
            .Onsets.GroupBy(o => o.Bar)
            .Where(g => g.Count() > part.Measures.StrokesPerSecond * passage.BarSeconds(g.Key))
            .Select(g => g.Key);

    private static IEnumerable<int> FastRepeats(HandPart part) =>
        RepetitionPart
            .Running(part.Moves)
            .Where(m => RepetitionPart.Rate(m, part.Measures) > Comfort.RepetitionShare)
            .Select(m => m.To.Bar);
}
