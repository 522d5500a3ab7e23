using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Basses of a strong place: which tone (root at a change; root, fifth, third or a walking note elsewhere), in which
/// register (single 36–55, octaves from 34, measured), single, octave or tenth as the level has it. Common practice of
/// march and stride basses; the rule of the fifth under I after a raised-fourth diminished seventh or iv likewise.
/// </summary>
internal sealed class BassShapes(Stage stage)
{
    public const int LowestAtLevelOne = 43;
    private const int LowestSingle = 36,
        HighestSingle = 55,
        LowestOctave = 34,
        HighestOctave = 47;
    private const double LeastTenthBeatSeconds = 0.35;
    private readonly int _level = stage.Brief.LeftLevel;

    public IEnumerable<LeftShape> Of(LeftSlot slot, LeftSlot? next)
    {
        var chord = stage.Lattice.ChordAt(slot.Tick).Chord;
        foreach (var (tone, price, mustStep) in Tones(slot, next, chord))
        {
            foreach (var shape in Registers(slot, tone, price, mustStep))
            {
                yield return shape;
            }
            if (_level >= 6 && !mustStep && slot.First && tone == chord.Root && stage.EaseOf(slot.Bar) < Ease.Tenths)
            {
                foreach (var tenth in Tenths(slot, chord, price))
                {
                    yield return tenth;
                }
            }
        }
    }

    /// <summary>True where a level strikes a bass in octaves, hands allowing.</summary>
    public static bool HasOctaves(int level, LeftSlot slot) =>
        level >= 5 || (level == 4 && slot.First) || (level >= 3 && slot.IsLast);

    private IEnumerable<(Tone Tone, long Price, bool MustStep)> Tones(LeftSlot slot, LeftSlot? next, ChordSymbol chord)
    {
        var due = chord.Lowest;
        if (slot.Changes || slot.IsLast || _level == 1 || (slot.First && stage.Lattice.Bars[slot.Bar].EndsStrain))
        {
            yield return (due, 0, false);
            if (slot.Changes && chord.Bass is null && FifthUnderTonic(slot, chord) is { } fifthUnder)
            {
                yield return (fifthUnder, -300, false);
            }
            yield break;
        }
        // The fifth is left alone where it is the next downbeat's bass.
        var nextBass = next is null ? (Tone?)null : stage.Lattice.ChordAt(next.Tick).Chord.Lowest;
        long Ahead(Tone tone) => next is { Changes: true } && nextBass == tone ? 1600 : 0;
        // Where a bar has one bass, root and fifth alternate by the bar.
        var opens =
            slot.First
            && (
                stage.Lattice.Bars[slot.Bar].Groove.Basses.Count > 1 || stage.Lattice.Bars[slot.Bar].StrainBar % 2 == 0
            );
        yield return (due, opens ? 0 : 700, false);
        if (Alternate(chord) is { } alternate && alternate != due)
        {
            yield return (alternate, (opens ? 1500 : 0) + Ahead(alternate), false);
        }
        if (chord.Root != due)
        {
            yield return (chord.Root, opens ? 700 : 500, false);
        }
        if (_level >= 3 && Third(chord) is { } third && third != due)
        {
            yield return (third, (opens ? 1500 : 800) + Ahead(third), false);
        }
        if (_level >= 4 && !slot.First && stage.Lattice.Bars[slot.Bar].Marks.RepeatEnd == 0)
        {
            var key = stage.Lattice.Bars[slot.Bar].Key;
            var tones = chord.Tones;
            foreach (var step in Enum.GetValues<Step>())
            {
                var tone = key.ToneOf(step);
                if (!tones.Contains(tone))
                {
                    yield return (tone, 900, true);
                }
            }
        }
    }

    // Diminished chords alternate with third or diminished fifth, augmented ones with the third, others with the fifth.
    private static Tone? Alternate(ChordSymbol chord) =>
        chord.Intervals.Any(i => i is { Steps: 4, Semitones: 8 }) ? Third(chord) : Degree(chord, 4) ?? Third(chord);

    private static Tone? Third(ChordSymbol chord) => Degree(chord, 2);

    private static Tone? Degree(ChordSymbol chord, int steps)
    {
        foreach (var interval in chord.Intervals)
        {
            if (interval.Steps == steps)
            {
                return chord.Root.Plus(interval);
            }
        }
        return null;
    }

    private Tone? FifthUnderTonic(LeftSlot slot, ChordSymbol chord)
    {
        if (
            slot.Tick == 0
            || chord.Intervals.Any(i => i.Steps == 6)
            || !chord.Intervals.Contains(Interval.PerfectFifth)
        )
        {
            return null;
        }
        var before = stage.Lattice.ChordAt(stage.Lattice.ChordAt(slot.Tick).Start - 1).Chord;
        var diminished = before.Kind is ChordKind.Diminished or ChordKind.DiminishedSeventh;
        var fromRaisedFourth = diminished && before.Root.PitchClass == (chord.Root.PitchClass + 6) % 12;
        return fromRaisedFourth ? Degree(chord, 4) : null;
    }

    private IEnumerable<LeftShape> Registers(LeftSlot slot, Tone tone, long price, bool mustStep)
    {
        var lowest = _level == 1 ? LowestAtLevelOne : LowestSingle;
        var octaves = HasOctaves(_level, slot) && stage.EaseOf(slot.Bar) < Ease.Octaves;
        var single = octaves ? 450 : 0;
        for (var key = lowest; key <= HighestSingle; key++)
        {
            if (key % 12 == tone.PitchClass)
            {
                // Singles lie best from A2 to A3, a closing bass lower.
                var off =
                    40L * Math.Max(0, (slot.IsLast ? 38 : 41) - key)
                    + 60L
                        * Math.Max(
                            0,
                            key
                                - (
                                    _level == 1 ? 52
                                    : slot.IsLast ? 43
                                    : 50
                                )
                        );
                yield return new LeftShape(
                    LeftKind.Bass,
                    [Pitch.At(key, tone)],
                    Stretch.Comfortable,
                    price + single + off,
                    mustStep
                );
            }
        }
        if (!octaves || stage.Brief.Hands.NoOctaves)
        {
            yield break;
        }
        for (var key = LowestOctave; key <= HighestOctave; key++)
        {
            var stretch = stage.LeftReach.Of(key, key + 12);
            if (key % 12 == tone.PitchClass && stretch != Stretch.Out)
            {
                var off = 40L * Math.Max(0, 36 - key) + 60L * Math.Max(0, key - 43);
                var low = Pitch.At(key, tone);
                yield return new LeftShape(
                    LeftKind.Octave,
                    [low, low with { Octave = low.Octave + 1 }],
                    stretch,
                    price + off,
                    mustStep
                );
            }
        }
    }

    // Tenths belong to stride; elsewhere they are a rare colour. A hand that cannot span one rolls it, where there is time.
    private IEnumerable<LeftShape> Tenths(LeftSlot slot, ChordSymbol chord, long price)
    {
        if (!stage.Brief.Hands.Wants(15) || Third(chord) is not { } third)
        {
            yield break;
        }
        var beat = (slot.End - slot.Tick) * stage.SecondsPerTick;
        for (var key = 33; key <= 53; key++)
        {
            if (key % 12 != chord.Root.PitchClass)
            {
                continue;
            }
            var up = 12 + (third.PitchClass - chord.Root.PitchClass + 12) % 12;
            var stretch = stage.LeftReach.Of(key, key + up);
            var colour = stage.Lattice.Feel == Feel.Stride ? -100 : 0;
            ValueList<Pitch> pitches = [Pitch.At(key, chord.Root), Pitch.At(key + up, third)];
            if (stretch != Stretch.Out)
            {
                yield return new LeftShape(LeftKind.Tenth, pitches, stretch, price + colour, false);
            }
            else if (stage.LeftReach.CanRoll(key, key + up) && beat >= LeastTenthBeatSeconds)
            {
                yield return new LeftShape(
                    LeftKind.RolledTenth,
                    pitches,
                    Stretch.Comfortable,
                    price + colour + 600,
                    false
                );
            }
        }
    }
}
