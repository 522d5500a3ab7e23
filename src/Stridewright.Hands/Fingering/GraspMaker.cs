using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>A finger that somebody wrote, by the place of its key.</summary>
internal readonly record struct WrittenFinger(Hand Hand, int Bar, ScoreTime At, int Key);

/// <summary>
/// Makes the grasps of one hand. What does not fit is eased in this order: written fingers that cannot be, held keys (left to
/// the pedal), reach; of more keys than fingers some inner ones stay without. Each is remarked.
/// </summary>
internal sealed class GraspMaker(
    Passage passage,
    FingerHand hand,
    LineCosts line,
    IReadOnlyDictionary<WrittenFinger, int> written,
    List<Diagnostic> remarks
)
{
    private readonly GraspFingerings _fingerings = new(line, hand);
    private readonly Keyboard _keyboard = new(hand.OctaveMm);
    private readonly double _widestMm = hand.Measures.UsableSpanMm - Reach.OutBelowSpanMm;

    public List<Grasp> Of(List<Onset> onsets)
    {
        var grasps = new List<Grasp>();
        var released = new HashSet<int>();
        foreach (var onset in onsets)
        {
            released.ExceptWith(onset.Struck);
            released.IntersectWith(onset.Keys);
            var made = Of(onset, released);
            foreach (var key in onset.Keys.Except(made.Keys))
            {
                released.Add(key);
            }
            grasps.Add(Placed(made.Settled(), grasps.Count > 0 ? grasps[^1] : null));
        }
        for (var i = 0; i < grasps.Count; i++)
        {
            grasps[i] = grasps[i] with { IsBass = IsBass(grasps, i) };
        }
        return grasps;
    }

    private Grasp Of(Onset onset, HashSet<int> released)
    {
        var struck = onset.Struck.ToHashSet();
        var all = Grasp.FromThumb([.. onset.Keys.Where(k => !released.Contains(k))], hand.Side);
        var alone = Grasp.FromThumb(onset.Struck, hand.Side);
        bool[] IsStruck(int[] keys) => [.. keys.Select(struck.Contains)];
        var free = new byte[onset.Keys.Length];
        if (all.Length <= hand.Fingers.Count + 1)
        {
            if (Make(all, Wanted(onset, all), GraspKind.Within) is { } asWritten)
            {
                return asWritten;
            }
            if (Make(all, free, GraspKind.Within) is { } reworked)
            {
                Remark(onset, HandsMessages.FingerImpossible(onset, Written(onset, alone)));
                return reworked;
            }
        }
        if (all.Length > alone.Length)
        {
            Remark(onset, HandsMessages.HeldLetGo(onset, [.. all.Except(alone).Order()]));
        }
        if (alone.Length <= hand.Fingers.Count + 1)
        {
            if (Make(alone, Wanted(onset, alone), GraspKind.Within) is { } asWritten)
            {
                return asWritten;
            }
            if (Make(alone, free, GraspKind.Within) is { } reworked)
            {
                Remark(onset, HandsMessages.FingerImpossible(onset, Written(onset, alone)));
                return reworked;
            }
        }
        return Beyond(onset, alone);

        Grasp? Make(int[] keys, byte[] wanted, GraspKind kind)
        {
            var isStruck = IsStruck(keys);
            var found = _fingerings.Of(keys, isStruck, wanted);
            return found.Length == 0
                ? null
                : new Grasp
                {
                    Onset = onset,
                    Keys = keys,
                    IsStruck = isStruck,
                    Fingerings = found,
                    Kind = kind,
                };
        }
    }

    /// <summary>Struck keys that no fingering within reach takes all of: the thumb may take two, inner ones stay without, and
    /// what is still too wide is fingered in order.</summary>
    private Grasp Beyond(Onset onset, int[] keys)
    {
        var taken = OuterOnes(keys.Length, hand.Fingers.Count + 1);
        var found = taken.Count < keys.Length ? Fingerings(withinReach: true) : [];
        if (found.Length == 0)
        {
            taken = OuterOnes(keys.Length, hand.Fingers.Count);
            found = taken.Count < keys.Length ? Fingerings(withinReach: true) : [];
        }
        var isWithin = found.Length > 0;
        var isRolled = onset.Rolled && taken.Count == keys.Length;
        if (taken.Count < keys.Length)
        {
            int[] without = [.. keys.Where((_, i) => !taken.Contains(i)).Order()];
            Remark(onset, HandsMessages.WithoutFinger(onset, without));
        }
        if (!isWithin && !isRolled)
        {
            Remark(onset, HandsMessages.NotInOneGrasp(onset));
        }
        return new Grasp
        {
            Onset = onset,
            Keys = keys,
            IsStruck = [.. keys.Select(_ => true)],
            Fingerings = [.. (isWithin ? found : Fingerings(withinReach: false)).Select(Spread)],
            Kind =
                isRolled ? GraspKind.RolledWide
                : isWithin ? GraspKind.Within
                : GraspKind.Beyond,
        };

        byte[][] Fingerings(bool withinReach)
        {
            int[] kept = [.. taken.Select(i => keys[i])];
            bool[] isStruck = [.. kept.Select(_ => true)];
            var fingerings = _fingerings.Of(kept, isStruck, Wanted(onset, kept), withinReach);
            if (fingerings.Length > 0 || withinReach)
            {
                return fingerings;
            }
            Remark(onset, HandsMessages.FingerImpossible(onset, Written(onset, kept)));
            return _fingerings.Of(kept, isStruck, new byte[kept.Length], withinReach);
        }

        byte[] Spread(byte[] fingers)
        {
            var all = new byte[keys.Length];
            for (var i = 0; i < taken.Count; i++)
            {
                all[taken[i]] = fingers[i];
            }
            return all;
        }
    }

    /// <summary>Indexes of so many keys at most: outer ones carry the line and the bass, what lies inside can be left out
    /// (common practice).</summary>
    private static List<int> OuterOnes(int keys, int most)
    {
        var taken = Enumerable.Range(0, keys).ToList();
        while (taken.Count > most)
        {
            taken.RemoveAt(taken.Count > 2 ? (taken.Count - 1) / 2 : 0);
        }
        return taken;
    }

    private Grasp Placed(Grasp grasp, Grasp? before)
    {
        if (before is null)
        {
            return grasp with { IsFree = true };
        }
        var (from, to) = (before.Onset, grasp.Onset);
        var isLinked = grasp.Keys.Length > grasp.StruckCount;
        var silence = to.Start - from.End;
        var seconds = passage.Seconds(from.Start, to.Start);
        return grasp with
        {
            IsFree = !isLinked && (IsLeap(from, to) || silence >= passage.Bars[to.Bar].Metre.Beat),
            IsFastRepeat =
                from.Struck.Length == 1
                && to.Struck.Length == 1
                && from.Low == to.Low
                && seconds * hand.Measures.StrokesPerSecond < 1,
        };
    }

    /// <summary>What both strike cannot be covered by one grasp.</summary>
    private bool IsLeap(Onset from, Onset to) =>
        _keyboard.Distance(Math.Min(from.Low, to.Low), Math.Max(from.High, to.High)) > _widestMm;

    private bool IsBass(List<Grasp> grasps, int at)
    {
        var grasp = grasps[at];
        if (hand.Side != Hand.Left || grasp.Keys.Length != 1)
        {
            return false;
        }
        var comesDown = at > 0 && grasp.IsFree && Leads(grasps[at - 1], grasp);
        var goesUp = at + 1 < grasps.Count && grasps[at + 1].IsFree && Leads(grasps[at + 1], grasp);
        return comesDown || goesUp;

        bool Leads(Grasp other, Grasp bass) => bass.Onset.Low < other.Onset.Low && IsLeap(other.Onset, bass.Onset);
    }

    private byte[] Wanted(Onset onset, int[] keys)
    {
        var wanted = new byte[keys.Length];
        if (written.Count > 0)
        {
            for (var i = 0; i < keys.Length; i++)
            {
                wanted[i] = (byte)written.GetValueOrDefault(new(onset.Hand, onset.Bar, onset.At, keys[i]));
            }
        }
        return wanted;
    }

    private IEnumerable<(int Key, int Finger)> Written(Onset onset, int[] keys) =>
        keys.Zip(Wanted(onset, keys), (key, finger) => (key, (int)finger)).Where(w => w.Item2 != 0);

    private void Remark(Onset onset, string message) =>
        remarks.Add(new(Severity.Warning, new Place(Entry: passage.Place(onset.Bar, onset.At)), message));
}
