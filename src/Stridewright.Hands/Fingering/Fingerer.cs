using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Finds the fingers of both hands of a piano score.</summary>
public static class Fingerer
{
    // Keys at whose stroke another finger takes over while they are held, with the last one that does.
    private static Dictionary<WrittenFinger, int> Substituted(HandFingering hand)
    {
        var taken = new Dictionary<WrittenFinger, int>();
        var down = new Dictionary<int, (WrittenFinger Place, int Finger)>();
        foreach (var onset in hand.Onsets)
        {
            foreach (var (key, finger, isHeld) in onset.Keys)
            {
                if (finger is not { } with)
                {
                    continue;
                }
                if (!isHeld || !down.TryGetValue(key, out var before))
                {
                    down[key] = (new(onset.Hand, onset.Bar, onset.At, key), with);
                }
                else if (before.Finger != with)
                {
                    taken[before.Place] = with;
                    down[key] = before with { Finger = with };
                }
            }
        }
        return taken;
    }

    private static readonly Hand[] Both = [Hand.Right, Hand.Left];

    /// <summary>
    /// The cheapest fingering for these hands, by exact search under <see cref="CostTerms"/>, each hand by itself. Every struck
    /// key gets a finger but those of more keys than fingers; what lies beyond the hand is fingered and remarked. Crushed notes
    /// are fingered after the strokes that they lead to. Repeats are not followed. Time is linear in the number of notes but for
    /// sorting.
    /// </summary>
    public static FingeredScore Finger(
        Score score,
        PlayerHands hands,
        FingeringOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(hands);
        options ??= new();
        if (options.QuartersPerMinute is { } tempo)
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tempo, nameof(options));
        }
        var passage = new Passage(score, options.QuartersPerMinute);
        var isFresh = options.Keep == KeptFingers.None;
        var written = isFresh ? [] : FingerMarks.Read(score);
        var writtenCrushed = isFresh ? [] : FingerMarks.ReadCrushed(score);
        if (options.Keep == KeptFingers.Edited)
        {
            var own = Solve([], []);
            Drop(written, Fingers(own));
            Drop(writtenCrushed, Crushed(own, []).Select(c => (c.Key, c.Value)));
        }
        var remarks = new List<Diagnostic>();
        var found = Solve(written, remarks);
        var crushed = Crushed(found, writtenCrushed);
        var printed = new Dictionary<WrittenFinger, int>();
        foreach (var hand in found)
        {
            var shown = PrintedOnsets.Of(hand, options.Density, passage.Bars);
            foreach (var (place, finger, onset) in Fingers(hand))
            {
                if (shown[onset] || written.ContainsKey(place))
                {
                    printed[place] = finger;
                }
            }
            var silent = hand.Onsets.Where((_, i) => !shown[i]).Select(o => (o.Hand, o.Bar, o.At)).ToHashSet();
            foreach (var place in crushed.Keys.Where(c => silent.Contains((c.Hand, c.Bar, c.At))).ToList())
            {
                if (!writtenCrushed.ContainsKey(place))
                {
                    crushed.Remove(place);
                }
            }
        }
        return new(
            FingerMarks.Write(
                score,
                printed,
                crushed,
                found.SelectMany(Substituted).ToDictionary(),
                keepsTied: options.Keep != KeptFingers.None
            ),
            found.SelectMany(h => h.Onsets).ToValueList(),
            remarks.ToValueList()
        );

        HandFingering[] Solve(Dictionary<WrittenFinger, int> fixedFingers, List<Diagnostic> said) =>
            [
                .. Both.Select(side =>
                    HandFingering.Of(passage, hands, side, CostTable.Shipped, fixedFingers, said, cancellation)
                ),
            ];

        Dictionary<CrushedPlace, int> Crushed(HandFingering[] strokes, Dictionary<CrushedPlace, int> fixedFingers) =>
            Both.Zip(strokes)
                .SelectMany(s =>
                {
                    var hand = FingerHand.Of(hands, s.First);
                    var line = new LineCosts(CostTable.Shipped, hand);
                    return new CrushedFingers(line, hand).Of(score, s.Second.Onsets, fixedFingers);
                })
                .ToDictionary();
    }

    // What the search takes there by itself is nobody's wish.
    private static void Drop<TPlace>(Dictionary<TPlace, int> written, IEnumerable<(TPlace Place, int Finger)> own)
        where TPlace : notnull
    {
        foreach (var (place, finger) in own)
        {
            if (written.GetValueOrDefault(place) == finger)
            {
                written.Remove(place);
            }
        }
    }

    private static IEnumerable<(WrittenFinger Place, int Finger)> Fingers(HandFingering[] hands) =>
        hands.SelectMany(Fingers).Select(f => (f.Place, f.Finger));

    /// <summary>The fingers of struck keys, with the index of the onset.</summary>
    private static IEnumerable<(WrittenFinger Place, int Finger, int Onset)> Fingers(HandFingering hand) =>
        hand.Onsets.SelectMany(
            (onset, i) =>
                onset
                    .Keys.Where(k => k is { IsHeld: false, Finger: not null })
                    .Select(k => (new WrittenFinger(onset.Hand, onset.Bar, onset.At, k.Key), k.Finger!.Value, i))
        );
}
