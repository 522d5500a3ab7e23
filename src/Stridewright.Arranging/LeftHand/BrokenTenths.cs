using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Tenths struck one key after the other: bass, fifth, tenth, or backward the tenth first and the bass after it. Common
/// practice of stride left hands, and the way round a tenth that the hand does not span.
/// </summary>
internal sealed class BrokenTenths(Stage stage)
{
    private const int Unit = Lattice.TicksPerUnit;
    private const int Lowest = 36,
        Highest = 47;

    /// <summary>True where a place lasts two units and the way between the keys can be gone in one.</summary>
    public bool HasTime(LeftSlot slot, int low, int high) =>
        slot.End - slot.Tick >= 2 * Unit
        && Leap.Bits(Leap.Shift(stage.LeftReach, low, low, high, high), stage.LeftReach.Keyboard)
            <= stage.LeapLimit(slot.Tick, Hand.Left) * Unit * stage.SecondsPerTick;

    /// <summary>Bass, fifth and tenth, as the places of a beat give room: the fifth after the bass or before the tenth
    /// within one of them, or at a weak place of its own.</summary>
    public IEnumerable<LeftShape> Of(LeftSlot[] slots, int index)
    {
        var (slot, chord) = (slots[index], stage.Lattice.ChordAt(slots[index].Tick).Chord);
        if (Degree(chord, 2) is not { } third || Degree(chord, 4) is not { } fifth)
        {
            yield break;
        }
        var first = index;
        while (first > 0 && !slots[first].IsBass)
        {
            first--;
        }
        var weak = slots.Skip(first + 1).TakeWhile(s => !s.IsBass && s.Bar == slot.Bar).Count();
        var (place, up) = (index - first, 12 + third.Semitones);
        if (!slots[first].IsBass || weak == 0 || (place > 0 && slot.Changes) || place > 2)
        {
            yield break;
        }
        for (var key = Lowest; key <= Highest; key++)
        {
            if (key % 12 != chord.Root.PitchClass)
            {
                continue;
            }
            var bass = Pitch.At(key, chord.Root);
            var middle = Pitch.At(key + fifth.Semitones, chord.Root.Plus(fifth));
            var top = Pitch.At(key + up, chord.Root.Plus(third));
            var late = weak == 1 && HasTime(slots[Math.Min(first + 1, slots.Length - 1)], middle.Midi, top.Midi);
            var soon = weak == 1 && !late && HasTime(slots[first], bass.Midi, middle.Midi);
            yield return place switch
            {
                0 when soon => Asked(LeftKind.Bass, null, bass, middle),
                0 => Asked(LeftKind.Bass, null, bass),
                1 when weak > 1 => Asked(LeftKind.Run, Up(fifth.Semitones), middle),
                1 when late => Asked(LeftKind.Run, Up(fifth.Semitones), middle, top),
                1 => Asked(LeftKind.Run, Up(up), top),
                _ => Asked(LeftKind.Run, Up(up - fifth.Semitones), top),
            };
        }

        static StepRule Up(int semitones) => new(semitones, semitones, 1);
    }

    /// <summary>The tenth's upper note on the beat, the bass after it.</summary>
    public IEnumerable<LeftShape> Backward(LeftSlot slot)
    {
        var chord = stage.Lattice.ChordAt(slot.Tick).Chord;
        if (Degree(chord, 2) is not { } third)
        {
            yield break;
        }
        var up = 12 + third.Semitones;
        for (var key = Lowest; key <= Highest; key++)
        {
            if (key % 12 == chord.Root.PitchClass && (slot.IsBass || !slot.Changes))
            {
                yield return slot.IsBass
                    ? Asked(LeftKind.Bass, null, Pitch.At(key + up, chord.Root.Plus(third)))
                    : Asked(LeftKind.Run, new StepRule(up, up, -1), Pitch.At(key, chord.Root));
            }
        }
    }

    private static LeftShape Asked(LeftKind kind, StepRule? into, params Pitch[] pitches) =>
        MannerShapes.Asked(kind, pitches.ToValueList(), 0, into) with
        {
            Broken = pitches.Length > 1,
        };

    private static Interval? Degree(ChordSymbol chord, int steps) =>
        chord.Intervals.Where(i => i.Steps == steps).Select(i => (Interval?)i).FirstOrDefault();
}
