using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// What the left hand may strike where a bar's treatment asks for more than stride. The shapes stand in the same search as
/// all others, which only costs more there: where hands and tempo forbid a manner, the bar falls back to stride.
/// Figures: common practice of ragtime and stride left hands.
/// </summary>
internal sealed class MannerShapes(Stage stage)
{
    /// <summary>Extra price of what was not asked for.</summary>
    public const long Unasked = 10_000;
    private const int Lowest = 36,
        HighestOctave = 47,
        HighestSingle = 57;
    private static readonly StepRule ByStep = new(1, 2, 0);
    private readonly Lattice _lattice = stage.Lattice;

    /// <summary>The shapes that the manner of its bar asks for at a place; none: as usual.</summary>
    public IEnumerable<LeftShape> Of(LeftSlot[] slots, int index)
    {
        var slot = slots[index];
        if (slot.IsLast)
        {
            return [];
        }
        var bar = _lattice.Bars[slot.Bar];
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        var next = index + 1 < slots.Length ? slots[index + 1] : null;
        var free = !slot.First && !slot.Changes;
        return bar.Treatment.Left switch
        {
            LeftManner.WalkingOctaves when slot.First => Octaves(k => k % 12 == chord.Lowest.PitchClass, slot, null),
            LeftManner.WalkingOctaves => Octaves(
                k => free || k % 12 == chord.Lowest.PitchClass,
                slot,
                ByStep,
                next is null ? null : ByStep
            ),
            LeftManner.WalkingTenths => Tenths(slot),
            LeftManner.ContraryRun when free && Direction(bar) is var way and not 0 => Singles(
                _ => true,
                slot,
                new StepRule(1, 2, -way)
            ),
            LeftManner.ChromaticApproach when free && !slot.IsBass && next is { IsBass: true } => Singles(
                k => Math.Abs(k % 12 - _lattice.ChordAt(next.Tick).Chord.Lowest.PitchClass) is 1 or 11,
                slot,
                null,
                new StepRule(1, 1, 0)
            ),
            LeftManner.LowPedal when slot.IsBass => [Pedal(slot)],
            LeftManner.BrokenTenths or LeftManner.BackBeatTenths => Broken(
                slot,
                chord,
                bar.Treatment.Left == LeftManner.BackBeatTenths
            ),
            LeftManner.CadenceFigure => Cadence(slots, index),
            _ => [],
        };
    }

    // The way the tune goes in a bar: up 1, down −1.
    private int Direction(LatticeBar bar)
    {
        var notes = _lattice.Notes.Where(n => n.Start >= bar.Start && n.Start < bar.End).ToList();
        return notes.Count == 0 ? 0 : Math.Sign(notes[^1].Key - notes[0].Key);
    }

    private Tone Spelled(LeftSlot slot, int key)
    {
        var tones = _lattice.ChordAt(slot.Tick).Chord.Tones;
        return tones.Any(t => t.PitchClass == key % 12)
            ? tones.First(t => t.PitchClass == key % 12)
            : _lattice.Bars[slot.Bar].Key.Spell(key);
    }

    // Notes outside key and chord are dearer.
    private long Foreign(LeftSlot slot, Tone tone) =>
        _lattice.Bars[slot.Bar].Key.Contains(tone) || _lattice.ChordAt(slot.Tick).Chord.Tones.Contains(tone) ? 0 : 500;

    private IEnumerable<LeftShape> Singles(Func<int, bool> fits, LeftSlot slot, StepRule? into, StepRule? onTo = null)
    {
        for (var key = Lowest; key <= HighestSingle; key++)
        {
            if (fits(key))
            {
                yield return Asked(slot, LeftKind.Run, [Pitch.At(key, Spelled(slot, key))], into, onTo);
            }
        }
    }

    // Octaves, and single notes where the hand cannot.
    private IEnumerable<LeftShape> Octaves(Func<int, bool> fits, LeftSlot slot, StepRule? into, StepRule? onTo = null)
    {
        for (var key = Lowest; key <= HighestOctave; key++)
        {
            if (!fits(key))
            {
                continue;
            }
            var low = Pitch.At(key, Spelled(slot, key));
            var stretch = stage.Reach.Of(key, key + 12);
            yield return stage.Brief.Hands.NoOctaves || stretch == Stretch.Out
                ? Asked(slot, LeftKind.Run, [low], into, onTo)
                : Asked(slot, LeftKind.RunOctave, [low, low with { Octave = low.Octave + 1 }], into, onTo) with
                {
                    Stretch = stretch,
                };
        }
    }

    private IEnumerable<LeftShape> Tenths(LeftSlot slot)
    {
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        for (var key = Lowest; key <= 52; key++)
        {
            var low = Spelled(slot, key);
            if (Foreign(slot, low) > 0 || ((slot.First || slot.Changes) && low != chord.Lowest))
            {
                continue;
            }
            foreach (var up in new[] { 15, 16 })
            {
                var high = Spelled(slot, key + up);
                var stretch = stage.Reach.Of(key, key + up);
                var rolls = stretch == Stretch.Out && stage.Reach.CanRoll(key, key + up);
                if (Foreign(slot, high) == 0 && !stage.Brief.Hands.NoOctaves && (stretch != Stretch.Out || rolls))
                {
                    yield return Asked(
                        slot,
                        rolls ? LeftKind.RolledTenth : LeftKind.Tenth,
                        [Pitch.At(key, low), Pitch.At(key + up, high)],
                        slot.First ? null : ByStep
                    ) with
                    {
                        Stretch = rolls ? Stretch.Comfortable : stretch,
                    };
                }
            }
        }
    }

    // The chord's bass where the pedal began, held through the bars that ask for it.
    private LeftShape Pedal(LeftSlot slot)
    {
        var first = slot.Bar;
        while (first > 0 && _lattice.Bars[first - 1].Treatment.Left == LeftManner.LowPedal)
        {
            first--;
        }
        var tone = _lattice.ChordAt(_lattice.Bars[first].Start).Chord is { IsNoChord: false } chord
            ? chord.Lowest
            : _lattice.Bars[first].Key.Tonic;
        var key = Enumerable.Range(Lowest, 12).First(k => k % 12 == tone.PitchClass);
        return Asked(slot, LeftKind.Bass, [Pitch.At(key, tone)], null);
    }

    private IEnumerable<LeftShape> Broken(LeftSlot slot, ChordSymbol chord, bool backward)
    {
        if (chord.Intervals.Where(i => i.Steps == 2).Select(i => (Interval?)i).FirstOrDefault() is not { } third)
        {
            yield break;
        }
        var up = 12 + third.Semitones;
        for (var key = Lowest; key <= 47; key++)
        {
            if (key % 12 != chord.Root.PitchClass)
            {
                continue;
            }
            var pitch =
                slot.IsBass == backward ? Pitch.At(key + up, chord.Root.Plus(third)) : Pitch.At(key, chord.Root);
            yield return Asked(
                slot,
                slot.IsBass ? LeftKind.Bass : LeftKind.Run,
                [pitch],
                slot.IsBass || slot.Changes ? null : new StepRule(up, up, backward ? -1 : 1)
            );
        }
    }

    // Fourth degree, raised fourth, fifth on the last three places of the bar; the root is the next bar's own.
    private IEnumerable<LeftShape> Cadence(LeftSlot[] slots, int index)
    {
        var slot = slots[index];
        var left = slots.Skip(index + 1).TakeWhile(s => s.Bar == slot.Bar).Count();
        if (left > 2)
        {
            return [];
        }
        var tonic = _lattice.Bars[slot.Bar].Key.Tonic.PitchClass;
        var due = (tonic + 7 - left) % 12;
        return Octaves(k => k % 12 == due, slot, left == 2 ? null : new StepRule(1, 1, 1));
    }

    private LeftShape Asked(
        LeftSlot slot,
        LeftKind kind,
        ValueList<Pitch> pitches,
        StepRule? into,
        StepRule? onTo = null
    ) =>
        new(kind, pitches, Stretch.Comfortable, Foreign(slot, pitches[0].Tone), false)
        {
            IsAsked = true,
            Into = into,
            OnTo = onTo,
        };
}
