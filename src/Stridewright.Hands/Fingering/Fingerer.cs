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
    /// key gets a finger but those of more keys than fingers; what lies beyond the hand is fingered and remarked. Repeats are not
    /// followed; crushed notes get none. Time is linear in the number of notes but for sorting.
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
        var written = options.Keep == KeptFingers.None ? [] : FingerMarks.Read(score);
        if (options.Keep == KeptFingers.Edited)
        {
            foreach (var (place, finger) in Fingers(Solve([], [])))
            {
                if (written.GetValueOrDefault(place) == finger)
                {
                    written.Remove(place);
                }
            }
        }
        var remarks = new List<Diagnostic>();
        var found = Solve(written, remarks);
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
        }
        return new(
            FingerMarks.Write(
                score,
                printed,
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
