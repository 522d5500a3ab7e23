namespace Stridewright.Hands;

/// <summary>
/// What the fingering of one grasp costs, and the way from one to the next. A way is two strands, the struck keys on the
/// thumb's side and those on the little finger's, each a line with half the weight; of single keys both are one.
/// </summary>
internal sealed class GraspCosts(LineCosts line)
{
    private const double HalfStrand = 0.5;

    /// <summary>Rules 1 and 2 count double within a chord (a later rule set after Al Kasimi et al.).</summary>
    private const double WithinChord = 2;

    /// <summary>Semitones from which a dyad is an octave or nearly one.</summary>
    private const int OctaveSize = 11;

    /// <summary>The shape alone, and each finger where it stands.</summary>
    /// <param name="before">Null: nothing leads here.</param>
    /// <param name="after">Null: nothing follows.</param>
    public void AddShape(ref CostSum sum, Grasp? before, Grasp grasp, byte[] fingers, Grasp? after)
    {
        AddFingers(ref sum, grasp.IsFree ? null : before, grasp, fingers, after is { IsFree: false } ? after : null);
        AddSpans(ref sum, grasp, fingers);
        if (grasp.ExpectedFinger != 0 && fingers[grasp.Outer] != grasp.ExpectedFinger)
        {
            sum.Add(CostTerm.RunUnlike, line.Table.RunUnlike);
        }
        if (grasp.IsBass && fingers[grasp.Outer] != 0)
        {
            sum.Add(CostTerm.BassFinger, (5 - fingers[grasp.Outer]) * line.Table.BassFinger);
        }
        if (
            grasp.StruckCount == 2
            && fingers[grasp.Outer] == 5
            && Keyboard.IsBlack(grasp.OuterKey)
            && line.Size(grasp.InnerKey, grasp.OuterKey) >= OctaveSize
        )
        {
            sum.Add(CostTerm.OctaveOnBlack, line.Table.OctaveOnBlack);
        }
    }

    /// <summary>The thumb's strand or the little finger's, between the fingers given.</summary>
    public void AddStrand(ref CostSum sum, Grasp from, int fromFinger, Grasp to, int toFinger, bool inner)
    {
        if (fromFinger == 0 || toFinger == 0)
        {
            return;
        }
        var (fromKey, toKey) = inner ? (from.InnerKey, to.InnerKey) : (from.OuterKey, to.OuterKey);
        var hop = from.IsSingle && to.IsSingle ? line.Table.Hop : line.Table.HopOfChord;
        line.AddPair(ref sum, fromKey, fromFinger, toKey, toFinger, hop, HalfStrand);
    }

    /// <summary>What belongs to single keys: other fingers on keys struck again, one finger that repeats too fast, and held
    /// keys that change their finger.</summary>
    public void AddKept(ref CostSum sum, Grasp from, byte[] fromFingers, Grasp to, byte[] toFingers)
    {
        var isRepeat = !to.IsFree && IsSameStruck(from, to);
        for (var i = 0; i < to.Keys.Length; i++)
        {
            if (to.IsStruck[i] && !isRepeat)
            {
                continue;
            }
            var j = Array.IndexOf(from.Keys, to.Keys[i]);
            if (j < 0 || fromFingers[j] == 0 || toFingers[i] == 0)
            {
                continue;
            }
            var isOther = fromFingers[j] != toFingers[i];
            if (!to.IsStruck[i])
            {
                sum.Add(CostTerm.Substitution, isOther ? line.Table.Substitution : 0);
            }
            else if (to.IsFastRepeat)
            {
                sum.Add(CostTerm.FastRepeat, isOther ? 0 : line.Table.FastRepeat);
            }
            else
            {
                sum.Add(CostTerm.ChangeOnRepeat, isOther ? line.Table.ChangeOnRepeat : 0);
            }
        }
    }

    /// <summary>True when <see cref="AddKept"/> can cost something.</summary>
    public static bool HasKept(Grasp from, Grasp to) =>
        to.StruckCount < to.Keys.Length || (!to.IsFree && IsSameStruck(from, to));

    private void AddFingers(ref CostSum sum, Grasp? before, Grasp grasp, byte[] fingers, Grasp? after)
    {
        for (var i = 0; i < fingers.Length; i++)
        {
            if (!grasp.IsStruck[i] || fingers[i] == 0)
            {
                continue;
            }
            line.AddWeak(ref sum, fingers[i], grasp.IsSingle);
            if (grasp.StruckCount > 2)
            {
                continue; // in a full chord the hand lies where its keys are, whatever their colour
            }
            var isInner = i == grasp.Inner;
            var previous =
                before is null ? -1
                : isInner ? before.InnerKey
                : before.OuterKey;
            var next =
                after is null ? -1
                : isInner ? after.InnerKey
                : after.OuterKey;
            line.AddColour(ref sum, previous, grasp.Keys[i], fingers[i], next, grasp.IsSingle ? 1 : HalfStrand);
        }
    }

    private void AddSpans(ref CostSum sum, Grasp grasp, byte[] fingers)
    {
        for (var i = 0; i < fingers.Length; i++)
        {
            for (var j = i + 1; j < fingers.Length; j++)
            {
                if (fingers[i] == 0 || fingers[j] == 0 || (!grasp.IsStruck[i] && !grasp.IsStruck[j]))
                {
                    continue;
                }
                if (fingers[i] == fingers[j])
                {
                    sum.Add(CostTerm.ThumbOnTwo, line.Table.ThumbOnTwo);
                    continue;
                }
                if (grasp.Kind == GraspKind.RolledWide && j > i + 1)
                {
                    continue;
                }
                var (stretch, small, large) = line.SpanCosts(grasp.Keys[i], fingers[i], grasp.Keys[j], fingers[j]);
                sum.Add(CostTerm.Grasp, WithinChord * (stretch + small) + large);
                if (grasp.Kind == GraspKind.Beyond)
                {
                    var limit = line.Spans.Of(fingers[i], fingers[j]).MaxPractical;
                    var over = line.ExactSize(grasp.Keys[i], grasp.Keys[j]) - limit;
                    sum.Add(CostTerm.BeyondReach, Math.Max(0, over) * line.Table.BeyondReach);
                }
            }
        }
    }

    private static bool IsSameStruck(Grasp from, Grasp to)
    {
        if (from.StruckCount != to.StruckCount)
        {
            return false;
        }
        for (var i = 0; i < to.Keys.Length; i++)
        {
            if (to.IsStruck[i])
            {
                var j = Array.IndexOf(from.Keys, to.Keys[i]);
                if (j < 0 || !from.IsStruck[j])
                {
                    return false;
                }
            }
        }
        return true;
    }
}
