using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>One crushed note in a score: which of those before a stroke.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="At">Place in the bar of the stroke it leads to.</param>
/// <param name="Index">Among the crushed notes of that voice at that place, 0 first.</param>
internal readonly record struct CrushedPlace(Hand Hand, int Bar, int Voice, ScoreTime At, int Index)
{
    /// <summary>All crushed notes of a score, by the stroke that they lead to; the place is that of the first.</summary>
    public static IEnumerable<(CrushedPlace Place, ValueList<ScoreNote> Notes)> Of(Score score) =>
        score.Bars.SelectMany(
            (bar, i) =>
                bar.Voices.SelectMany(voice =>
                    voice
                        .Events.Where(e => e.Graces.Count > 0)
                        .Select(e => (new CrushedPlace(voice.Hand, i, voice.Number, e.At, 0), e.Graces))
                )
        );
}

/// <summary>
/// Fingers for crushed notes, once the stroke that they lead to has its own: the cheapest way along them to the nearest key
/// of the stroke, by exact search. A black key slides into the white one beside it with one finger (trade.md 3, handbooks of
/// the style); otherwise the rules of a line hold. A finger that lies ready over another key of the stroke is not taken
/// while there is another.
/// </summary>
internal sealed class CrushedFingers(LineCosts line, FingerHand hand)
{
    private const int Ready = CostTable.Never / 100;

    /// <summary>Fingers of the crushed notes of this hand.</summary>
    /// <param name="onsets">The strokes of this hand with their fingers.</param>
    /// <param name="written">Fingers that hold.</param>
    public Dictionary<CrushedPlace, int> Of(
        Score score,
        IEnumerable<FingeredOnset> onsets,
        IReadOnlyDictionary<CrushedPlace, int> written
    )
    {
        var found = new Dictionary<CrushedPlace, int>();
        var strokes = onsets.ToLookup(o => (o.Bar, o.At));
        foreach (var (place, crushed) in CrushedPlace.Of(score).Where(c => c.Place.Hand == hand.Side))
        {
            foreach (var stroke in strokes[(place.Bar, place.At)].Take(1))
            {
                int?[] wanted =
                [
                    .. crushed.Select(
                        (_, i) => written.TryGetValue(place with { Index = i }, out var f) ? f : (int?)null
                    ),
                ];
                foreach (var (i, finger) in Way(crushed, stroke, wanted).Index())
                {
                    found[place with { Index = i }] = finger;
                }
            }
        }
        return found;
    }

    private int[] Way(ValueList<ScoreNote> crushed, FingeredOnset stroke, int?[] wanted)
    {
        var struck = stroke.Keys.Where(k => k is { IsHeld: false, Finger: not null }).ToList();
        if (struck.Count == 0)
        {
            return [];
        }
        var last = crushed[^1].Pitch.Midi;
        var goal = struck.MinBy(k => Math.Abs(k.Key - last));
        var taken = stroke.Keys.Where(k => k.Key != goal.Key && k.Finger is not null).Select(k => k.Finger!.Value);
        var lying = taken.ToHashSet();
        // From the stroke backwards: least[f] is the cost from crushed note i, struck with finger f, to the stroke.
        var (key, fingers) = (goal.Key, (List<int>)[goal.Finger!.Value]);
        var least = new Dictionary<int, int> { [goal.Finger.Value] = 0 };
        var next = new Dictionary<int, int>[crushed.Count];
        for (var i = crushed.Count - 1; i >= 0; i--)
        {
            var own = crushed[i].Pitch.Midi;
            var (costs, ways) = (new Dictionary<int, int>(), new Dictionary<int, int>());
            foreach (var finger in wanted[i] is { } one ? [one] : hand.Fingers)
            {
                var way = fingers.MinBy(to => Step(own, finger, key, to) + least[to]);
                costs[finger] = Step(own, finger, key, way) + least[way] + Placed(own, finger, lying);
                ways[finger] = way;
            }
            (key, least, next[i]) = (own, costs, ways);
            fingers = [.. costs.Keys];
        }
        var result = new int[crushed.Count];
        result[0] = fingers.MinBy(f => least[f]);
        for (var i = 1; i < result.Length; i++)
        {
            result[i] = next[i - 1][result[i - 1]];
        }
        return result;
    }

    private int Placed(int key, int finger, HashSet<int> lying)
    {
        var sum = new CostSum();
        line.AddWeak(ref sum, finger, isSingle: true);
        line.AddColour(ref sum, -1, key, finger, -1, 1);
        return sum.Total + (lying.Contains(finger) ? Ready : 0);
    }

    private int Step(int from, int finger, int to, int toFinger)
    {
        var slides = finger == toFinger && Math.Abs(from - to) == 1 && Keyboard.IsBlack(from) && !Keyboard.IsBlack(to);
        if (slides)
        {
            // The finger stands where the stroke wants it: what its place costs is given back, and of equals this is taken.
            return -Placed(from, finger, []) - 1;
        }
        var sum = new CostSum();
        line.AddPair(ref sum, from, finger, to, toFinger, line.Table.Hop, 1);
        return sum.Total;
    }
}
