using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Crushed notes at level 6, and wherever they are asked for: a black key slides into the white one above it, on accented
/// tune notes that carry the chord's third or fifth, never twice within a bar unless asked for (common practice: one finger
/// slides from black to white).
/// </summary>
internal static class Crushing
{
    private const int Level = 6;
    private const int OneIn = 4;

    public static RightLine Add(Stage stage, RightLine line)
    {
        var usual = stage.Brief is { RightLevel: >= Level, Raggedness: > 0 };
        var seed = stage.Seed(11);
        var last = -1;
        return line with
        {
            Notes = line
                .Notes.Select(note =>
                {
                    if (stage.Lattice.HeldAt(note.Tick) is { End: not null } held)
                    {
                        return note with { Crushed = held.Crushed };
                    }
                    var bar = stage.Lattice.BarAt(note.Tick);
                    var asked = stage.Lattice.Bars[bar].Treatment.Right == RightManner.CrushedNotes;
                    var chosen = asked || (usual && bar != last && Variety.Mix(seed, note.Tick) % OneIn == 0);
                    if (!chosen || !Suits(stage.Lattice, note))
                    {
                        return note;
                    }
                    last = bar;
                    var top = note.Top;
                    return note with { Crushed = top.Plus(new Interval(-1, -1)) };
                })
                .ToArray(),
        };
    }

    private static bool Suits(Lattice lattice, RightNote note)
    {
        var bar = lattice.Bars[lattice.BarAt(note.Tick)];
        var place = note.Tick - bar.Start + bar.Lead;
        var chord = lattice.ChordAt(note.Tick).Chord;
        return !note.IsFiller
            && !note.UnderHeld
            && note.Tick > 0
            && place % (2 * Lattice.TicksPerUnit) == 0
            && note.End - note.Tick >= 2 * Lattice.TicksPerUnit
            && note.Below.Count <= 1
            && note.Top.Alter == 0
            && Keyboard.IsBlack(note.Top.Midi - 1)
            && chord.Intervals.Any(i => i.Steps is 2 or 4 && chord.Root.Plus(i).PitchClass == note.Top.Midi % 12);
    }
}
