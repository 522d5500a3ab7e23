using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Chooses which onsets of a hand show their fingers.</summary>
internal static class PrintedOnsets
{
    /// <summary>A shape is remembered for so many bars (a working value: about a line of music).</summary>
    private const int BarsRemembered = 4;

    /// <summary>Share of a hand's onsets that count as easy.</summary>
    private const double EasyShare = 0.9;

    /// <summary>For each onset, whether its fingers are printed.</summary>
    public static bool[] Of(HandFingering hand, FingerDensity density, ValueList<ScoreBar> bars) =>
        density switch
        {
            FingerDensity.Changes => Changes(hand, bars),
            FingerDensity.Hard => Hard(hand),
            _ => [.. hand.Onsets.Select(_ => true)],
        };

    private static bool[] Changes(HandFingering hand, ValueList<ScoreBar> bars)
    {
        var printed = new bool[hand.Grasps.Count];
        var seen = new Dictionary<string, int>();
        for (var i = 0; i < printed.Length; i++)
        {
            var bar = hand.Grasps[i].Onset.Bar;
            var shape = ShapeOf(hand.Grasps[i], hand.Fingers[i]);
            var isFirstInBar = i == 0 || hand.Grasps[i - 1].Onset.Bar != bar;
            var begins = i == 0 || (isFirstInBar && BeginsPart(bars[bar]));
            var isKnown = seen.TryGetValue(shape, out var last) && bar - last < BarsRemembered;
            printed[i] = begins || (!isKnown && !IsExpected(hand, i));
            if (printed[i] || isKnown)
            {
                seen[shape] = bar;
            }
        }
        return printed;
    }

    private static bool BeginsPart(ScoreBar bar) =>
        bar.Marks.RepeatStart || bar.Directions.Any(d => d.Section is not null);

    private static string ShapeOf(Grasp grasp, byte[] fingers) =>
        string.Join(' ', grasp.Keys) + ":" + string.Concat(fingers);

    /// <summary>What a player takes unasked: the fifth finger, or the octave's outer ones, for a bass or an octave; the same shape
    /// moved; in one position the finger over the key.</summary>
    private static bool IsExpected(HandFingering hand, int at)
    {
        var (grasp, fingers) = (hand.Grasps[at], hand.Fingers[at]);
        var (before, earlier) = (hand.Grasps[at - 1], hand.Fingers[at - 1]);
        if (IsUsualBass(before, grasp, fingers) || IsUsualOctave(grasp, fingers))
        {
            return true;
        }
        if (grasp.IsFree || grasp.StruckCount != before.StruckCount)
        {
            return false;
        }
        if (grasp.StruckCount > 1)
        {
            return Struck(grasp, fingers).SequenceEqual(Struck(before, earlier));
        }
        var steps = StepsBetween(before.InnerKey, grasp.InnerKey) * (grasp.Onset.Hand == Hand.Right ? 1 : -1);
        return fingers[grasp.Inner] - earlier[before.Inner] == steps;
    }

    private static bool IsUsualBass(Grasp before, Grasp grasp, byte[] fingers) =>
        grasp.IsSingle
        && fingers[grasp.Outer] == 5
        && (grasp.IsBass || (grasp.Onset.Hand == Hand.Left && grasp.OuterKey < before.OuterKey));

    private static bool IsUsualOctave(Grasp grasp, byte[] fingers) =>
        grasp.StruckCount == 2
        && Math.Abs(grasp.OuterKey - grasp.InnerKey) == 12
        && fingers[grasp.Inner] == 1
        && fingers[grasp.Outer] == 5;

    private static IEnumerable<byte> Struck(Grasp grasp, byte[] fingers) => fingers.Where((_, i) => grasp.IsStruck[i]);

    /// <summary>Steps of a scale between two keys, seven to the octave.</summary>
    private static int StepsBetween(int from, int to) =>
        (int)Math.Round((to - from) * 7 / 12.0, MidpointRounding.AwayFromZero);

    private static bool[] Hard(HandFingering hand)
    {
        var costs = hand.Onsets.Select(o => o.Cost).ToList();
        var printed = new bool[costs.Count];
        if (costs.Count == 0)
        {
            return printed;
        }
        var threshold = costs.Order().ElementAt((int)(EasyShare * (costs.Count - 1)));
        for (var i = 0; i < costs.Count; i++)
        {
            if (costs[i] > 0 && costs[i] >= threshold && (costs[i] > threshold || threshold > costs.Min()))
            {
                printed[i] = true;
                if (i > 0 && !hand.Grasps[i].IsFree)
                {
                    printed[i - 1] = true;
                }
            }
        }
        return printed;
    }
}
