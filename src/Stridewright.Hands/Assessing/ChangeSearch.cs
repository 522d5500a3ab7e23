using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>
/// Finds the smallest change that removes the worst spot. The worst spot is the fault that is furthest over its limit; where
/// nothing is at fault it is the hardest bar, which must become no harder than the next one. Changes are tried from the
/// smallest: nothing lost, an inner key, an outer one, a little slower, a stroke, much slower. Each is made and judged.
/// </summary>
internal sealed class ChangeSearch(Score score, PlayerHands hands, double? tempo, Judgement judged)
{
    private const double LittleSlower = 0.9,
        MuchSlower = 0.5,
        Step = 0.05;

    /// <summary>An octave between two keys, in semitones.</summary>
    private const int Octave = 12;

    private readonly ValueList<Fault> _faults = judged.Verdict.Faults;

    public static SmallestChange? Find(Score score, PlayerHands hands, double? tempo, Judgement judged) =>
        new ChangeSearch(score, hands, tempo, judged).Find();

    private SmallestChange? Find()
    {
        if (_faults.Count > 0)
        {
            var worst = _faults.MaxBy(f => Over(f))!;
            var part = judged.Part(worst.Hand);
            var at = part.Onsets.FindIndex(o => o.Bar == worst.Bar && o.At == worst.At);
            // A leap is a matter of two strokes.
            var onsets = worst.Kind == FaultKind.Leap && at > 0 ? part.Onsets.GetRange(at - 1, 2) : OnsetAt(part, at);
            var isFast = worst.Kind is FaultKind.Leap or FaultKind.RepeatedKey or FaultKind.RepeatedOctave;
            return Smallest(onsets, worst.Hand, isFast, verdict => IsGone(verdict, worst));
        }
        if (judged.Verdict.HardestBars(2) is not [var hardest, var next])
        {
            return null;
        }
        var hand = hardest.Right >= hardest.Left ? Hand.Right : Hand.Left;
        return Smallest(
            judged.Part(hand).Onsets.FindAll(o => o.Bar == hardest.Bar),
            hand,
            isFast: false,
            verdict => verdict.IsPlayable && verdict.Effort.Bars[hardest.Bar].Value <= next.Value
        );
    }

    private static List<Onset> OnsetAt(HandPart part, int index) => index < 0 ? [] : [part.Onsets[index]];

    // Strain that is too frequent is worse than none, and better than what cannot be done at all.
    private static double Over(Fault fault) =>
        fault.Kind is FaultKind.StrainedOften or FaultKind.StrainedTwice ? 0
        : fault.Limit > 0 ? fault.Need / fault.Limit
        : double.MaxValue;

    private bool IsGone(Verdict verdict, Fault worst) =>
        verdict.Faults.Count < _faults.Count
        && !verdict.Faults.Any(f => f.Kind == worst.Kind && f.Hand == worst.Hand && f.Place == worst.Place);

    private SmallestChange? Smallest(List<Onset> onsets, Hand hand, bool isFast, Predicate<Verdict> isGone)
    {
        var written = onsets.SelectMany(Changes).OrderBy(c => c.Kind).ToList();
        return Tried(written.Where(c => c.Kind < ChangeKind.Rest), isGone)
            ?? (isFast ? Slower(1 - Step, LittleSlower, hand, onsets, isGone) : null)
            ?? Tried(written.Where(c => c.Kind == ChangeKind.Rest), isGone)
            ?? (isFast ? Slower(LittleSlower - Step, MuchSlower, hand, onsets, isGone) : null);
    }

    private SmallestChange? Tried(
        IEnumerable<(ChangeKind Kind, Onset Onset, int? Key, Score Score)> changes,
        Predicate<Verdict> isGone
    )
    {
        foreach (var (kind, onset, key, changed) in changes)
        {
            if (isGone(Judgement.Of(changed, hands, tempo).Verdict))
            {
                var place = judged.Passage.Place(onset.Bar, onset.At);
                return new(kind, onset.Hand, onset.Bar, place, key, 1, EffortMessages.Change(kind, onset, place, key));
            }
        }
        return null;
    }

    private SmallestChange? Slower(double from, double to, Hand hand, List<Onset> onsets, Predicate<Verdict> isGone)
    {
        for (var speed = from; speed >= to - 1e-9 && onsets.Count > 0; speed -= Step)
        {
            if (isGone(Judgement.Of(score, hands, tempo, speed).Verdict))
            {
                var (bar, place) = (onsets[^1].Bar, judged.Passage.Place(onsets[^1].Bar, onsets[^1].At));
                return new(ChangeKind.Slower, hand, bar, place, null, speed, EffortMessages.Slower(place, speed));
            }
        }
        return null;
    }

    private IEnumerable<(ChangeKind Kind, Onset Onset, int? Key, Score Score)> Changes(Onset onset)
    {
        var (keys, reach) = (onset.Struck, judged.Part(onset.Hand).Reach);
        if (keys.Length > 1 && !onset.Rolled && reach.CanRoll(onset.Low, onset.High))
        {
            yield return (ChangeKind.Roll, onset, null, ScoreEdit.Roll(score, onset.Bar, onset.Hand, onset.At));
        }
        foreach (var key in keys.Length > 2 ? keys[1..^1] : [])
        {
            yield return Without(ChangeKind.DropInner, key);
        }
        // The tune on top and the bass below stay longest.
        int[] outer = onset.Hand == Hand.Right ? [keys[0], keys[^1]] : [keys[^1], keys[0]];
        foreach (var key in keys.Length > 1 ? outer : [])
        {
            var isOctave = keys[^1] - keys[0] == Octave && keys.Length == 2;
            yield return Without(isOctave ? ChangeKind.DropOctave : ChangeKind.DropOuter, key);
        }
        var silent = keys.Aggregate(score, (s, key) => ScoreEdit.LeaveOut(s, onset.Bar, onset.Hand, onset.At, key));
        yield return (ChangeKind.Rest, onset, null, silent);

        (ChangeKind, Onset, int?, Score) Without(ChangeKind kind, int key) =>
            (kind, onset, key, ScoreEdit.LeaveOut(score, onset.Bar, onset.Hand, onset.At, key));
    }
}
