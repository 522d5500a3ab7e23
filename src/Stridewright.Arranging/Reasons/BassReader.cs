using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads off a solution what the basses take, which notes lead into them, and which limit kept them single.
/// </summary>
internal sealed class BassReader(Solution solution, LeftPrices prices)
{
    private readonly Lattice _lattice = solution.Lattice;
    private readonly Reach _reach = solution.Stage.LeftReach;
    private readonly BassShapes _basses = new(solution.Stage);

    /// <summary>The bass at a place; null where there is none.</summary>
    public BassStroke? At(int index)
    {
        var (slot, shape) = (prices.Slots[index], prices.At(index));
        if (shape.IsRest || shape.Broken || (!slot.IsBass && (!shape.IsRun || shape.MustStep || shape.IsAsked)))
        {
            return null;
        }
        var role = Role(index, out var neighbour);
        return new BassStroke(
            AtOf(slot),
            shape.Pitches,
            ChordAt(index),
            role,
            (shape.High - shape.Low) switch
            {
                0 => BassForm.Single,
                12 => BassForm.Octave,
                _ => shape.Kind == LeftKind.RolledTenth ? BassForm.RolledTenth : BassForm.Tenth,
            },
            neighbour
        );
    }

    /// <summary>The run that begins at a place; null where none does.</summary>
    /// <param name="bar">Index of the bar in the score.</param>
    public RunReason? RunFrom(int index, int bar)
    {
        if (!IsLeading(index) || (index > 0 && InBar(index - 1) && IsLeading(index - 1) && Steps(index - 1)))
        {
            return null;
        }
        var notes = new List<Pitch>();
        var at = index;
        while (at >= 0 && at < prices.Slots.Length && InBar(at) && IsLeading(at) && Steps(at))
        {
            notes.Add(prices.At(at).Pitches[0]);
            at++;
        }
        return notes.Count == 0
            ? null
            : new RunReason(bar, AtOf(prices.Slots[index]), notes.ToValueList(), prices.At(at).Pitches[0]);

        bool InBar(int i) => prices.Slots[i].Bar == prices.Slots[index].Bar;
    }

    /// <summary>The limit for which a bass is single where the level has octaves; null: none bound.</summary>
    public LimitReason? LimitAt(int index, int bar)
    {
        var (slot, shape) = (prices.Slots[index], prices.At(index));
        if (shape.Kind == LeftKind.RolledTenth)
        {
            var width = _reach.Keyboard.Distance(shape.Low, shape.High);
            return Limit(LimitKind.TenthRolled, shape.Pitches, width, _reach.WidestMm);
        }
        if (!slot.IsBass || shape.Kind != LeftKind.Bass || shape.IsAsked || !BassShapes.HasOctaves(_level, slot))
        {
            return null;
        }
        var low = shape.Pitches[0];
        ValueList<Pitch> keys = [low, low with { Octave = low.Octave + 1 }];
        if (solution.Stage.Brief.Hands.NoOctaves)
        {
            return Limit(LimitKind.OctaveUnwanted, keys, 0, 0);
        }
        var octave = _reach.Keyboard.Distance(shape.Low, shape.Low + 12);
        if (_reach.OfMm(octave) == Stretch.Out)
        {
            return Limit(LimitKind.OctaveOut, keys, octave, _reach.WidestMm);
        }
        return Cheaper(index, low) is not { } best ? null : Bound(index, bar, best.Shape, best.More);

        LimitReason Limit(LimitKind kind, ValueList<Pitch> pitches, double need, double limit) =>
            new(bar, Hand.Left, AtOf(slot), kind, pitches, need, limit);
    }

    private int _level => solution.Stage.Brief.LeftLevel;

    // The octave of the same tone that would have cost least, and what it costs more than what stands there.
    private (LeftShape Shape, long[] More)? Cheaper(int index, Pitch low)
    {
        var slot = prices.Slots[index];
        var next = prices.Slots.Skip(index + 1).FirstOrDefault(s => s.IsBass);
        var shapes = _basses.Of(slot, next).Where(s => s.Pitches[0].Tone == low.Tone).ToList();
        if (shapes.Find(s => s.Pitches.Equals(prices.At(index).Pitches)) is not { } here)
        {
            return null;
        }
        return shapes
            .Where(s => s.Kind == LeftKind.Octave)
            .Select(s => ((LeftShape Shape, long[] More)?)(s, prices.More([index], s, here)))
            .MinBy(s => s!.Value.More.Sum());
    }

    private LimitReason? Bound(int index, int bar, LeftShape octave, long[] more)
    {
        var slot = prices.Slots[index];
        var decided = (PricePart)Array.IndexOf(more, more.Max());
        if (decided == PricePart.Strain)
        {
            var width = _reach.Keyboard.Distance(octave.Low, octave.High);
            var most = _reach.SpanMm - Reach.PossibleBelowSpanMm;
            return new(bar, Hand.Left, AtOf(slot), LimitKind.OctaveStrained, octave.Pitches, width, most);
        }
        if (decided == PricePart.Way && Fastest(index, octave) is var (rate, limit) && rate > limit)
        {
            return new(bar, Hand.Left, AtOf(slot), LimitKind.OctaveLeap, octave.Pitches, rate, limit);
        }
        return null;
    }

    // Of the leaps to and from a shape, the one furthest over its limit.
    private (double Rate, double Limit) Fastest(int index, LeftShape shape)
    {
        var found = (Rate: 0.0, Limit: double.MaxValue);
        foreach (var (from, to) in new[] { (index - 1, index), (index, index + 1) })
        {
            if (from < 0 || to >= prices.Slots.Length)
            {
                continue;
            }
            var (first, second) = from == index ? (shape, prices.At(to)) : (prices.At(from), shape);
            var seconds = (prices.Slots[to].Tick - prices.Slots[from].Tick) * solution.Stage.SecondsPerTick;
            var rate = first.IsRest || second.IsRest ? 0 : Rate(first, second, seconds);
            var limit = solution.Stage.LeapLimit(prices.Slots[from].Tick, Hand.Left);
            found = rate / limit > found.Rate / found.Limit ? (rate, limit) : found;
        }
        return found;
    }

    private double Rate(LeftShape from, LeftShape to, double seconds)
    {
        var stride = (from.Kind == LeftKind.Chord) != (to.Kind == LeftKind.Chord);
        var mm = stride
            ? _reach.Keyboard.Distance(from.Low, to.Low)
            : Leap.Shift(_reach, from.Low, from.High, to.Low, to.High);
        return Leap.Rate(mm, seconds, _reach.Keyboard);
    }

    private BassRole Role(int index, out Pitch? neighbour)
    {
        neighbour = null;
        var (chord, tone) = (ChordAt(index), prices.At(index).Pitches[0].Tone.PitchClass);
        var before = prices.StruckBefore(index);
        if (tone == chord.Lowest.PitchClass)
        {
            return chord.Bass is null ? BassRole.Root : BassRole.SlashBass;
        }
        if (prices.At(index).IsAsked && before >= 0 && LowBefore(index) == prices.At(index).Low)
        {
            return BassRole.Pedal;
        }
        var interval = chord.Intervals.FirstOrDefault(i => chord.Root.Plus(i).PitchClass == tone);
        if (chord.Intervals.Any(i => chord.Root.Plus(i).PitchClass == tone))
        {
            return interval.Steps switch
            {
                0 => BassRole.Root,
                2 => BassRole.Third,
                4 => IsUnderTonic(index, chord) ? BassRole.FifthUnderTonic : BassRole.Fifth,
                _ => BassRole.ChordTone,
            };
        }
        var after = prices.StruckAfter(index);
        if (after >= 0 && Math.Abs(prices.At(after).Low - prices.At(index).Low) is 1 or 2)
        {
            neighbour = prices.At(after).Pitches[0];
            return BassRole.StepTo;
        }
        if (before >= 0 && Math.Abs(prices.At(before).Low - prices.At(index).Low) is 1 or 2)
        {
            neighbour = prices.At(before).Pitches[0];
            return BassRole.StepFrom;
        }
        return BassRole.Foreign;
    }

    private int LowBefore(int index) => prices.Before(index) is >= 0 and var b ? prices.At(b).Low : 0;

    // A new tonic after the diminished chord on its raised fourth.
    private bool IsUnderTonic(int index, ChordSymbol chord)
    {
        var slot = prices.Slots[index];
        var start = _lattice.ChordAt(slot.Tick).Start;
        if (!slot.Changes || start == 0)
        {
            return false;
        }
        var before = _lattice.ChordAt(start - 1).Chord;
        return before.Kind is ChordKind.Diminished or ChordKind.DiminishedSeventh
            && before.Root.PitchClass == (chord.Root.PitchClass + 6) % 12;
    }

    private bool IsLeading(int index)
    {
        var (slot, shape) = (prices.Slots[index], prices.At(index));
        return !slot.IsBass && shape.IsRun && !shape.Broken && (shape.MustStep || shape.IsAsked);
    }

    private bool Steps(int index) =>
        index + 1 < prices.Slots.Length
        && !prices.At(index + 1).IsRest
        && !prices.At(index + 1).Broken
        && prices.At(index + 1).Kind != LeftKind.Chord
        && Math.Abs(prices.At(index + 1).Low - prices.At(index).Low) is 1 or 2;

    private ChordSymbol ChordAt(int index) => _lattice.ChordAt(prices.Slots[index].Tick).Chord;

    private ScoreTime AtOf(LeftSlot slot) => _lattice.Tick * (slot.Tick - _lattice.Bars[slot.Bar].Start);
}
