using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads off a solution why each off-beat chord has the inversion that it has.</summary>
internal sealed class VoicingReader(Solution solution, LeftPrices prices)
{
    private readonly Lattice _lattice = solution.Lattice;

    /// <summary>What is claimed of the chord at a place; null where there is none.</summary>
    /// <param name="bar">Index of the bar in the score.</param>
    public VoicingReason? At(int index, int bar)
    {
        var (slot, shape) = (prices.Slots[index], prices.At(index));
        if (slot.IsBass || shape.Kind != LeftKind.Chord || shape.IsAsked)
        {
            return null;
        }
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        var before =
            prices.Before(index) is >= 0 and var b && prices.At(b).Kind == LeftKind.Chord ? prices.At(b) : null;
        var (ground, nearer) = Ground(index, before);
        return new VoicingReason(
            bar,
            _lattice.Tick * (slot.Tick - _lattice.Bars[slot.Bar].Start),
            chord,
            shape.Pitches,
            before?.Pitches ?? [],
            Movement(before, shape),
            ground,
            nearer?.Pitches ?? [],
            nearer is null ? 0 : Movement(before, nearer),
            Omitted(index, chord, shape)
        );
    }

    /// <summary>Why the chord at a place has two notes only; null where it has more, or where the line of all levels has
    /// it so.</summary>
    public ThinChordReason? ThinAt(int index, int bar)
    {
        var (slot, shape) = (prices.Slots[index], prices.At(index));
        if (shape.Kind != LeftKind.Chord || shape.IsAsked || shape.Pitches.Count > 2)
        {
            return null;
        }
        var voicings = Voicings(index);
        if (voicings.Find(s => s.Pitches.Equals(shape.Pitches)) is not { } here)
        {
            return null;
        }
        var places = Together(index);
        return voicings
            .Where(s => s.Pitches.Count > 2)
            .Select(s => (Shape: s, More: prices.More(places, s, here)))
            .OrderBy(s => s.More.Sum())
            .Select(s => new ThinChordReason(
                bar,
                _lattice.Tick * (slot.Tick - _lattice.Bars[slot.Bar].Start),
                shape.Pitches,
                s.Shape.Pitches,
                Decided(s.More, s.Shape, here)
            ))
            .FirstOrDefault(r => r.Ground != VoicingGround.Home);
    }

    private static int Movement(LeftShape? before, LeftShape shape) =>
        before is null ? 0 : VoiceLeading.Registered(before.Pitches, shape.Pitches);

    private (VoicingGround Ground, LeftShape? Nearer) Ground(int index, LeftShape? before)
    {
        var (slot, shape) = (prices.Slots[index], prices.At(index));
        if (before is not null && before.Pitches.Equals(shape.Pitches))
        {
            return (VoicingGround.Stays, null);
        }
        if (slot.Changes)
        {
            return (VoicingGround.RootDue, null);
        }
        if (before is null)
        {
            return (VoicingGround.Opens, null);
        }
        var inversions = Inversions(index);
        var here = inversions.Find(s => s.Pitches.Equals(shape.Pitches));
        var nearest = inversions.Min(s => Movement(before, s));
        if (here is null || Movement(before, shape) <= nearest)
        {
            return (VoicingGround.Nearest, null);
        }
        var places = Together(index);
        return inversions
            .Where(s => Movement(before, s) == nearest)
            .Select(s => (Shape: s, More: prices.More(places, s, here)))
            .OrderBy(s => s.More.Sum())
            .Select(s => (Decided(s.More, s.Shape, here), (LeftShape?)s.Shape))
            .First();
    }

    // Every close position of the same tones that this hand can strike.
    private List<LeftShape> Inversions(int index)
    {
        var tones = Tones(prices.At(index));
        return Voicings(index).FindAll(s => Tones(s) == tones);
    }

    private List<LeftShape> Voicings(int index)
    {
        var slot = prices.Slots[index];
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        var (lowest, highest) = (ChordShapes.LowestKey(slot), ChordShapes.HighestKey);
        return [.. ChordShapes.Of(chord, _lattice.Feel, solution.Stage.LeftReach, lowest, highest, slot.Changes)];
    }

    private static int Tones(LeftShape shape) => shape.Pitches.Aggregate(0, (set, p) => set | 1 << p.Midi % 12);

    // The chord with its repetitions: another inversion would stand at all of these places.
    private List<int> Together(int index)
    {
        var places = new List<int> { index };
        var chord = _lattice.ChordAt(prices.Slots[index].Tick).Chord;
        for (var next = prices.After(index); next >= 0; next = prices.After(next))
        {
            var shape = prices.At(next);
            if (
                shape.Kind != LeftKind.Chord
                || prices.Slots[next].Changes
                || !shape.Pitches.Equals(prices.At(index).Pitches)
                || !_lattice.ChordAt(prices.Slots[next].Tick).Chord.Equals(chord)
            )
            {
                break;
            }
            places.Add(next);
        }
        return places;
    }

    // The part of the price that weighs most against the nearer inversion.
    private static VoicingGround Decided(long[] more, LeftShape nearer, LeftShape here)
    {
        var most = (PricePart)Array.IndexOf(more, more.Max());
        return most switch
        {
            PricePart.Home => VoicingGround.Home,
            PricePart.RightHand => VoicingGround.RightHand,
            PricePart.Strain => VoicingGround.Strain,
            PricePart.Way => VoicingGround.Way,
            PricePart.NextLine => VoicingGround.NextChord,
            PricePart.Own when ChordShapes.Off(nearer.Low, nearer.High) > ChordShapes.Off(here.Low, here.High) =>
                VoicingGround.Register,
            PricePart.Own => VoicingGround.Sound,
            _ => VoicingGround.Variety,
        };
    }

    private ValueList<Omission> Omitted(int index, ChordSymbol chord, LeftShape shape)
    {
        var bass = prices.StruckBefore(index);
        while (bass >= 0 && prices.At(bass).Kind == LeftKind.Chord)
        {
            bass = prices.StruckBefore(bass);
        }
        var inBass = bass >= 0 ? prices.At(bass).Pitches : [];
        return chord
            .Intervals.Where(i => shape.Pitches.All(p => p.Midi % 12 != chord.Root.Plus(i).PitchClass))
            .Select(i => new Omission(chord.Root.Plus(i), Ground(i)))
            .ToValueList();

        OmissionGround Ground(Interval interval) =>
            inBass.Any(p => p.Midi % 12 == chord.Root.Plus(interval).PitchClass) ? OmissionGround.InTheBass
            : interval.Steps == 4 ? OmissionGround.Fifth
            : interval.Steps is 5 or > 6 ? OmissionGround.AddedNote
            : OmissionGround.Thin;
    }
}
