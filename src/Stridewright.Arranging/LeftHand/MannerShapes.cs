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
        HighestTenth = 52,
        HighestSingle = 57,
        LowestCadence = 34,
        HighestCadence = 48,
        LowestAnswer = 45,
        HighestAnswer = 60,
        FurthestAnswer = 24;

    // A walk that begins on another tone than the bass; a tenth that is not struck at once.
    private const long OffRoot = 600,
        Breaking = 300;
    private readonly Lattice _lattice = stage.Lattice;
    private readonly BrokenTenths _broken = new(stage);

    /// <summary>True where a bar can lead home: the next one begins on its tonic.</summary>
    public static bool LeadsHome(Lattice lattice, int bar) =>
        bar + 1 < lattice.Bars.Length
        && lattice.ChordAt(lattice.Bars[bar + 1].Start).Chord is { IsNoChord: false } chord
        && chord.Lowest.PitchClass == lattice.Bars[bar + 1].Key.Tonic.PitchClass;

    /// <summary>The shapes that the manner of its bar asks for at a place; none: as usual.</summary>
    public IEnumerable<LeftShape> Of(LeftSlot[] slots, int index)
    {
        var slot = slots[index];
        if (slot.IsLast)
        {
            return [];
        }
        var bar = _lattice.Bars[slot.Bar];
        var next = index + 1 < slots.Length ? slots[index + 1] : null;
        var free = !slot.First && !slot.Changes;
        if (slot.IsAnswer)
        {
            return Answer(slots, index);
        }
        // What leads on has nothing to lead to where the piece goes back.
        var goesOn = bar.Marks.RepeatEnd == 0;
        return bar.Treatment.Left switch
        {
            LeftManner.WalkingOctaves
            or LeftManner.WalkingTenths
            or LeftManner.ContraryRun
            or LeftManner.ChromaticApproach when !goesOn => [],
            LeftManner.WalkingOctaves => Walk(slots, index, HighestOctave, Octave),
            LeftManner.WalkingTenths => Walk(slots, index, HighestTenth, Tenth),
            LeftManner.ContraryRun when free && Direction(slot.Bar) is var way and not 0 => Singles(
                _ => true,
                slot,
                StepRule.Step(-way),
                next is { First: true } ? StepRule.Step(-way) : null
            ),
            LeftManner.ChromaticApproach when free && !slot.IsBass && next is { First: true } => Singles(
                _ => true,
                slot,
                null,
                new StepRule(1, 1, 0)
            ),
            LeftManner.LowPedal when slot.IsBass => Pedal(slot),
            LeftManner.BrokenTenths => _broken.Of(slots, index),
            LeftManner.BackBeatTenths => _broken.Backward(slot),
            LeftManner.CadenceFigure when LeadsHome(_lattice, slot.Bar) => Cadence(slots, index),
            _ => [],
        };
    }

    /// <summary>A shape as asked for.</summary>
    public static LeftShape Asked(
        LeftKind kind,
        ValueList<Pitch> pitches,
        long price,
        StepRule? into,
        StepRule? onTo = null
    ) =>
        new(kind, pitches, Stretch.Comfortable, price, false)
        {
            IsAsked = true,
            Into = into,
            OnTo = onTo,
        };

    // Steps one way from a tone of the chord to the next bar's bass; a chord on the way is met on one of its tones.
    private IEnumerable<LeftShape> Walk(
        LeftSlot[] slots,
        int index,
        int highest,
        Func<LeftSlot, int, IEnumerable<LeftShape>> at
    )
    {
        var slot = slots[index];
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        var opens = index == 0 || slots[index - 1].Bar != slot.Bar;
        foreach (var way in new[] { 1, -1 })
        {
            for (var key = Lowest; key <= highest; key++)
            {
                var isRoot = key % 12 == chord.Lowest.PitchClass;
                if ((opens || slot.Changes) && !isRoot && !chord.Tones.Any(t => t.PitchClass == key % 12))
                {
                    continue;
                }
                foreach (var shape in at(slot, key))
                {
                    yield return shape with
                    {
                        Price = shape.Price + ((opens || slot.Changes) && !isRoot ? OffRoot : 0),
                        Into = opens ? null : StepRule.Step(way),
                        OnTo = index + 1 < slots.Length ? StepRule.Step(way) : null,
                    };
                }
            }
        }
    }

    // A run one way in the tenor, from a tone of the chord.
    private IEnumerable<LeftShape> Answer(LeftSlot[] slots, int index)
    {
        var slot = slots[index];
        var (opens, closes) = (!slots[index - 1].IsAnswer, index + 1 == slots.Length || !slots[index + 1].IsAnswer);
        var tones = _lattice.ChordAt(slot.Tick).Chord.Tones;
        for (var key = LowestAnswer; key <= HighestAnswer; key++)
        {
            var tone = Spelled(slot, key);
            if (opens && !tones.Contains(tone))
            {
                continue;
            }
            foreach (var way in new[] { 1, -1 })
            {
                var into = opens ? new StepRule(1, FurthestAnswer, 0) : StepRule.Step(way);
                var onTo = closes ? null : StepRule.Step(way);
                yield return Asked(LeftKind.Run, [Pitch.At(key, tone)], 3 * Foreign(slot, tone), into, onTo);
            }
        }
    }

    // The way the tune goes from a bar's first note to its last, or on into the next bar: up 1, down −1.
    private int Direction(int index)
    {
        var bar = _lattice.Bars[index];
        var keys = _lattice.Notes.Where(n => n.Start >= bar.Start && n.Start <= bar.End).Select(n => n.Key).ToList();
        var within = _lattice.Notes.Count(n => n.Start >= bar.Start && n.Start < bar.End);
        return within == 0 ? 0
            : keys[within - 1] != keys[0] ? Math.Sign(keys[within - 1] - keys[0])
            : Math.Sign(keys[^1] - keys[0]);
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
                var tone = Spelled(slot, key);
                yield return Asked(LeftKind.Run, [Pitch.At(key, tone)], Foreign(slot, tone), into, onTo);
            }
        }
    }

    // Octaves, and single notes where the hand cannot take one after the other.
    private IEnumerable<LeftShape> Octave(LeftSlot slot, int key)
    {
        var low = Pitch.At(key, Spelled(slot, key));
        var stretch = stage.LeftReach.Of(key, key + 12);
        yield return stage.Brief.Hands.NoOctaves || stretch > Stretch.Possible
            ? Asked(LeftKind.Run, [low], Foreign(slot, low.Tone), null)
            : Asked(LeftKind.RunOctave, [low, low with { Octave = low.Octave + 1 }], Foreign(slot, low.Tone), null) with
            {
                Stretch = stretch,
            };
    }

    // A tenth held by the hand that spans it, else broken where there is time: two rolled ones never run (common practice).
    private IEnumerable<LeftShape> Tenth(LeftSlot slot, int key)
    {
        var low = Spelled(slot, key);
        foreach (var up in new[] { 15, 16 })
        {
            var high = Spelled(slot, key + up);
            if (Interval.Between(new Pitch(low, 2), new Pitch(high, 3)).Steps % 7 != 2)
            {
                continue;
            }
            ValueList<Pitch> pitches = [Pitch.At(key, low), Pitch.At(key + up, high)];
            var price = Foreign(slot, low) + Foreign(slot, high);
            var stretch = stage.LeftReach.Of(key, key + up);
            if (stretch != Stretch.Out && stage.Brief.Hands.Wants(up))
            {
                yield return Asked(LeftKind.Tenth, pitches, price, null) with
                {
                    Stretch = stretch,
                };
            }
            if (_broken.HasTime(slot, key, key + up))
            {
                yield return Asked(LeftKind.Tenth, pitches, price + Breaking, null) with
                {
                    Broken = true,
                };
            }
        }
    }

    // The chord's bass where the pedal began, held through the bars of the strain that ask for it, under chords that bear it:
    // none that has a tone a semitone above it, and at the strain's end none but its own.
    private IEnumerable<LeftShape> Pedal(LeftSlot slot)
    {
        var first = slot.Bar;
        while (
            first > 0
            && !_lattice.Bars[first].SeamBefore
            && _lattice.Bars[first - 1].Treatment.Left == LeftManner.LowPedal
        )
        {
            first--;
        }
        var tone = _lattice.ChordAt(_lattice.Bars[first].Start).Chord is { IsNoChord: false } began
            ? began.Lowest
            : _lattice.Bars[first].Key.Tonic;
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        var isBorne =
            chord.IsNoChord
            || chord.Lowest.PitchClass == tone.PitchClass
            || (
                !_lattice.Bars[slot.Bar].EndsStrain
                && chord.Tones.All(t => (t.PitchClass - tone.PitchClass + 12) % 12 != 1)
            );
        var key = Enumerable.Range(Lowest, 12).First(k => k % 12 == tone.PitchClass);
        return isBorne ? [Asked(LeftKind.Bass, [Pitch.At(key, tone)], 0, null)] : [];
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
        return Enumerable
            .Range(LowestCadence, HighestCadence + 1 - LowestCadence)
            .Where(k => k % 12 == due)
            .SelectMany(k => Octave(slot, k))
            .Select(s => s with { Into = left == 2 ? null : new StepRule(1, 1, 1) });
    }
}
