using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>Derives the claims about harmony, wishes and limits anew from the score, the hands and the brief.</summary>
/// <param name="facts">The score that they are about.</param>
/// <param name="unrelaxed">The same setting without what was said to be needed.</param>
/// <param name="plainHarmony">The same setting with the chords as they stood; null: nothing was enriched.</param>
internal sealed class PieceClaims(
    ScoreFacts facts,
    Brief brief,
    ScoreFacts? plainHarmony,
    double secondsPerWhole,
    Unrelaxed unrelaxed
)
{
    /// <summary>What is wrong with a claim; null: it is true.</summary>
    public string? Fault(Reason reason) =>
        reason switch
        {
            HarmonyReason r => Harmony(r),
            PartReason r => Part(r),
            LeftMannerReason r => Left(r),
            RightMannerReason r => Right(r),
            LimitReason r => Limit(r),
            _ => null,
        };

    private string? Harmony(HarmonyReason r)
    {
        var place = facts.Place(r.Bar, r.At);
        var after = r.Change.After.Split(' ');
        if (!facts.ChordsFrom(place).Take(after.Length).SequenceEqual(after))
        {
            return $"the chords there are {string.Join(' ', facts.ChordsFrom(place).Take(after.Length))}";
        }
        var before = r.Change.Before.Split(' ');
        return plainHarmony!.ChordsFrom(place).Take(before.Length).SequenceEqual(before)
            ? null
            : $"before there were {string.Join(' ', plainHarmony.ChordsFrom(place).Take(before.Length))}";
    }

    private string? Part(PartReason r) =>
        facts.Score.Bars[r.Bar].Directions.Any(d => d.Section == r.Part)
        && facts.Score.Bars.Take(r.Bar).SelectMany(b => b.Directions).Count(d => d.Section == r.Part) == r.Before
            ? null
            : "no such part begins there";

    private string? Left(LeftMannerReason r)
    {
        var strokes = facts.Left.Where(s => s.Bar == r.Bar).ToList();
        var asked =
            brief.LeftManners.Contains(r.Manner)
            || brief.Form?.Parts.Any(p => p.Treatment.Left == r.Manner || (p.Breaks && r.Manner == LeftManner.Break))
                == true;
        var played = r.Manner switch
        {
            LeftManner.WalkingOctaves => strokes.All(s => !s.IsChord),
            LeftManner.Break or LeftManner.StopTime => strokes.All(s => s.At.IsZero),
            LeftManner.Silent => strokes.Count == 0,
            _ => true,
        };
        return !asked ? "nobody asked for it"
            : r.FellBack || played ? null
            : "it is not played";
    }

    private string? Right(RightMannerReason r)
    {
        var strokes = facts.RightIn(r.Bar).ToList();
        var asked =
            brief.RightManners.Contains(r.Manner) || brief.Form?.Parts.Any(p => p.Treatment.Right == r.Manner) == true;
        var wanted = strokes.Count(s => s.Keys.Length > 1 && s.High - s.Low == 12);
        var played = r.Manner switch
        {
            RightManner.Silent => strokes.Count == 0,
            RightManner.Octaves when strokes.Count > 0 && !r.FellBack => wanted > 0,
            _ => true,
        };
        return !asked ? "nobody asked for it"
            : played ? null
            : "it is not played";
    }

    private string? Limit(LimitReason r)
    {
        var index = ScoreFacts.IndexAt(facts.Left, facts.Place(r.Bar, r.At));
        var struck = index < 0 ? null : facts.Left[index];
        var single = struck is { Keys.Length: 1 } && r.Keys.Count == 2 && r.Keys[0].Midi % 12 == struck.Low % 12;
        var stretch = r.Keys.Count == 0 ? Stretch.Comfortable : facts.Reach.Of(r.Keys[0].Midi, r.Keys[^1].Midi);
        var holds = r.Kind switch
        {
            LimitKind.OctaveOut => single && stretch == Stretch.Out,
            LimitKind.OctaveUnwanted => single && brief.Hands.NoOctaves,
            LimitKind.OctaveStrained => single && stretch == Stretch.Strained,
            LimitKind.OctaveLeap => single && Math.Abs(FastestOf(index, r.Keys) - r.Need) < 0.01 && r.Need > r.Limit,
            LimitKind.TenthRolled => struck is { Rolled: true } && stretch == Stretch.Out,
            LimitKind.Thinned => facts.RightIn(r.Bar).All(s => s.Keys.Length == 1) && unrelaxed.NeedsThinning(r.Bar),
            LimitKind.Slower => r.Limit < r.Need && Printed() == r.Limit && !IsPlayableAt(r.Need),
            _ => Strained(r.Bound!.Value) <= Reach.StrainedShareLimit
                && r.Need > r.Limit
                && unrelaxed.NeedsDearerStrain(r.Bound.Value),
        };
        return holds ? null : $"{r.Kind} does not bind";
    }

    private double Printed() =>
        facts.Score.Bars[0].Directions.First(d => d.BeatsPerMinute is not null).BeatsPerMinute!.Value;

    private bool IsPlayableAt(double beats)
    {
        var unit = facts.Score.Bars[0].Directions.First(d => d.BeatsPerMinute is not null).BeatUnit;
        return Judge.Check(facts.Score, brief.Hands, beats * unit.Length.ToQuarters()).IsPlayable;
    }

    private double Strained(Hand hand)
    {
        var strokes = hand == Hand.Left ? facts.Left : facts.Right;
        return (double)strokes.Count(s => facts.Reach.Of(s.Low, s.High) == Stretch.Strained) / strokes.Length;
    }

    private double FastestOf(int index, ValueList<Pitch> keys)
    {
        double Rate(int from, int to)
        {
            if (from < 0 || to >= facts.Left.Length)
            {
                return 0;
            }
            var (a, b) = (facts.Left[from], facts.Left[to]);
            var (low, high) = from == index ? (keys[0].Midi, b.Low) : (a.Low, keys[0].Midi);
            var mm =
                a.IsChord || b.IsChord
                    ? facts.Reach.Keyboard.Distance(low, high)
                    : Leap.Shift(
                        facts.Reach,
                        low,
                        from == index ? keys[^1].Midi : a.High,
                        high,
                        from == index ? b.High : keys[^1].Midi
                    );
            return Leap.Rate(mm, (b.Start - a.Start).ToQuarters() / 4 * secondsPerWhole, facts.Reach.Keyboard);
        }
        return Math.Max(Rate(index - 1, index), Rate(index, index + 1));
    }
}
