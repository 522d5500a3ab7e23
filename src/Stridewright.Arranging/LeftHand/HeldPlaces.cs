using Stridewright.Hands;

namespace Stridewright.Arranging;

/// <summary>Held bars of the left hand: the places where it strikes there, and the one shape that is left at each.</summary>
internal static class HeldPlaces
{
    /// <summary>All places: in a held bar the usual ones and those where something is held.</summary>
    public static LeftSlot[] Apply(Lattice lattice, LeftSlot[] slots)
    {
        if (lattice.Bars.All(b => b.Held?.Left is null))
        {
            return slots;
        }
        var found = new List<LeftSlot>();
        foreach (var slot in slots)
        {
            found.Add(At(lattice, slot) is { } held ? slot with { End = held.End } : slot);
        }
        for (var bar = 0; bar < lattice.Bars.Length; bar++)
        {
            foreach (var held in lattice.Bars[bar].Held?.Left ?? [])
            {
                if (!slots.Any(s => s.Tick == held.Tick))
                {
                    var isBass = held.Kind is not (LeftKind.Chord or LeftKind.Run or LeftKind.RunOctave);
                    var first = held.Tick == lattice.Bars[bar].Start;
                    found.Add(new LeftSlot(held.Tick, held.End, bar, isBass, first, false, false) { IsOwn = true });
                }
            }
        }
        found.Sort((a, b) => a.Tick.CompareTo(b.Tick));
        for (var i = 0; i + 1 < found.Count; i++)
        {
            found[i] = found[i] with { End = Math.Min(found[i].End, found[i + 1].Tick) };
        }
        return [.. found];
    }

    /// <summary>What is left of the usual shapes of a place in a held bar.</summary>
    public static LeftShape[] Shapes(Lattice lattice, Reach reach, LeftSlot slot, IReadOnlyList<LeftShape> usual)
    {
        if (At(lattice, slot) is not { } held)
        {
            return [usual.FirstOrDefault(s => s.IsRest) ?? new(LeftKind.Rest, [], Stretch.Comfortable, 0, false)];
        }
        var same = usual
            .Where(s => s.Pitches.Equals(held.Pitches))
            .Where(s =>
                s.Broken == held.Broken
                && s.IsRun == held.Kind is LeftKind.Run or LeftKind.RunOctave
                && (s.Kind == LeftKind.RolledTenth) == (held.Kind == LeftKind.RolledTenth)
            )
            .ToArray();
        var stretch =
            held.Kind == LeftKind.RolledTenth
                ? Stretch.Comfortable
                : reach.Of(held.Pitches[0].Midi, held.Pitches[^1].Midi);
        return same.Length > 0 ? same : [new(held.Kind, held.Pitches, stretch, 0, false) { Broken = held.Broken }];
    }

    private static HeldLeft? At(Lattice lattice, LeftSlot slot)
    {
        foreach (var held in lattice.Bars[slot.Bar].Held?.Left ?? [])
        {
            if (held.Tick == slot.Tick)
            {
                return held;
            }
        }
        return null;
    }
}
