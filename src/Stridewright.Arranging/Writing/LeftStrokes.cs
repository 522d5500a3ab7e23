using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>The left hand's notes as strokes of a draft. A tune in the thumb has the upper voice, what lies under it the
/// lower.</summary>
internal static class LeftStrokes
{
    /// <param name="lyrics">The words go with a tune in the thumb.</param>
    public static IEnumerable<Stroke> Of(Lattice lattice, LeftNote note, bool lyrics)
    {
        var (slot, shape) = (note.Slot, note.Shape);
        var role = Spots.Role(slot, shape);
        if (slot.Thumb is { } tune)
        {
            var spot = lattice.Notes[tune];
            var end = Math.Min(spot.End, ThumbTune.EndOf(lattice, slot.Bar));
            yield return Made(1, slot.Tick, end, [shape.Pitches[^1]], "tune") with
            {
                Lyrics = lyrics ? spot.Lyrics : [],
            };
        }
        foreach (var (tick, end, pitches) in note.Strokes())
        {
            var own = slot.Thumb is null ? pitches : pitches.SkipLast(1).ToValueList();
            if (own.Count > 0)
            {
                yield return Made(slot.IsUnderThumb ? 2 : 1, tick, end, own, role) with
                {
                    Rolled = shape.Kind == LeftKind.RolledTenth,
                    Staccato = Articulation.IsShort(lattice, slot),
                };
            }
        }

        Stroke Made(int voice, int tick, int end, ValueList<Pitch> pitches, string role) =>
            new(
                Hand.Left,
                voice,
                lattice.Tick * (tick - lattice.Bars[slot.Bar].Start),
                lattice.Tick * (end - tick),
                pitches,
                role
            );
    }
}
