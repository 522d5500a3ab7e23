namespace Stridewright.Hands;

/// <summary>
/// What a hand holds down at each onset: number of keys, stretch, rolled chords, strain and the wish for no octaves.
/// Stretches of two or more keys that are not rolled are counted for strain.
/// </summary>
internal static class ReachRules
{
    public static void Check(List<Onset> onsets, PlayerHands hands, Reach reach, FaultList faults)
    {
        Onset? before = null;
        foreach (var onset in onsets)
        {
            CheckKeys(onset, hands, reach, faults);
            if (IsRolled(onset))
            {
                CheckRolled(onset, before, reach, faults);
            }
            else if (StretchOf(onset, reach) == Stretch.Out)
            {
                var need = Width(onset, reach);
                var canRoll = onset.Keys.Length == onset.Struck.Length && reach.CanRoll(onset.Low, onset.High);
                faults.Add(
                    FaultKind.Reach,
                    onset,
                    need,
                    reach.WidestMm,
                    HandsMessages.TooWide(onset, need, reach.WidestMm, canRoll)
                );
            }
            before = onset;
        }
        CheckStrain(onsets, hands, reach, faults);
    }

    public static bool IsRolled(Onset onset) => onset.Rolled && !onset.IsOneKey;

    public static double Width(Onset onset, Reach reach) => reach.Keyboard.Distance(onset.Keys[0], onset.Keys[^1]);

    public static Stretch StretchOf(Onset onset, Reach reach) => reach.Of(onset.Keys[0], onset.Keys[^1]);

    /// <summary>True for what counts for strain: two or more keys down at once.</summary>
    public static bool IsStretch(Onset onset) => !onset.IsOneKey && !onset.Rolled;

    private static bool IsStrained(Onset onset, Reach reach) =>
        IsStretch(onset) && StretchOf(onset, reach) == Stretch.Strained;

    private static void CheckKeys(Onset onset, PlayerHands hands, Reach reach, FaultList faults)
    {
        if (onset.Keys.Length > reach.Fingers)
        {
            var count = onset.Keys.Length;
            faults.Add(
                FaultKind.TooManyKeys,
                onset,
                count,
                reach.Fingers,
                HandsMessages.TooManyKeys(onset, reach.Fingers)
            );
        }
        if (!hands.Wants(onset.High - onset.Low))
        {
            var need = reach.Keyboard.Distance(onset.Low, onset.High);
            var (kind, keys) = hands.NoOctaves ? (FaultKind.OctaveUnwanted, 12) : (FaultKind.TenthUnwanted, 15);
            var limit = reach.Keyboard.OctaveMm * keys / 12;
            faults.Add(kind, onset, need, limit, HandsMessages.Unwanted(onset, hands.NoOctaves));
        }
    }

    private static void CheckRolled(Onset onset, Onset? before, Reach reach, FaultList faults)
    {
        var (need, limit) = (Width(onset, reach), Reach.RolledSpans * reach.SpanMm);
        if (need > limit)
        {
            faults.Add(FaultKind.RolledTooWide, onset, need, limit, HandsMessages.RolledTooWide(onset, need, limit));
        }
        else if (before is not null && IsRolled(before))
        {
            faults.Add(FaultKind.RolledTwice, onset, 2, 1, HandsMessages.RolledTwice(onset));
        }
    }

    private static void CheckStrain(List<Onset> onsets, PlayerHands hands, Reach reach, FaultList faults)
    {
        var strained = onsets.Where(o => IsStrained(o, reach)).ToList();
        var share = strained.Count == 0 ? 0 : (double)strained.Count / onsets.Count(IsStretch);
        var limit = hands.NoStrain ? 0 : Reach.StrainedShareLimit;
        foreach (var onset in share > limit ? strained : [])
        {
            var width = Width(onset, reach);
            faults.Add(
                FaultKind.StrainedOften,
                onset,
                share,
                limit,
                HandsMessages.StrainedOften(onset, width, share, limit)
            );
        }
        for (var i = 1; i < onsets.Count; i++)
        {
            if (IsStrained(onsets[i], reach) && IsStrained(onsets[i - 1], reach))
            {
                var (width, free) = (Width(onsets[i], reach), reach.SpanMm - Reach.PossibleBelowSpanMm);
                faults.Add(
                    FaultKind.StrainedTwice,
                    onsets[i],
                    width,
                    free,
                    HandsMessages.StrainedTwice(onsets[i], width, free)
                );
            }
        }
    }
}
