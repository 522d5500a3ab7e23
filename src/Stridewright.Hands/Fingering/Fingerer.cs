using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Finds the fingers of both hands of a piano score.</summary>
public static class Fingerer
{
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
        var written = options.KeepFingers ? FingerMarks.Read(score) : [];
        var remarks = new List<Diagnostic>();
        var onsets = new List<FingeredOnset>();
        var printed = new Dictionary<WrittenFinger, int>();
        foreach (var side in (Hand[])[Hand.Right, Hand.Left])
        {
            var found = HandFingering.Of(
                passage,
                FingerHand.Of(hands, side),
                new Reach(hands, side),
                CostTable.Shipped,
                written,
                remarks,
                cancellation
            );
            onsets.AddRange(found.Onsets);
            var shown = PrintedOnsets.Of(found, options.Density, passage.Bars);
            for (var i = 0; i < shown.Length; i++)
            {
                foreach (var (key, finger, isHeld) in found.Onsets[i].Keys)
                {
                    var place = new WrittenFinger(side, found.Onsets[i].Bar, found.Onsets[i].At, key);
                    if (finger is { } number && !isHeld && (shown[i] || written.ContainsKey(place)))
                    {
                        printed[place] = number;
                    }
                }
            }
        }
        return new(FingerMarks.Write(score, printed, options.KeepFingers), onsets.ToValueList(), remarks.ToValueList());
    }
}
