using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Tremolo on long notes: the tune's note and one below it in turn, half a unit each: an octave where the hand has it at
/// ease, else a note of the chord. Common practice: on what lasts a half of 4/4 or more, spanning an octave at most; and nothing else is struck meanwhile.
/// </summary>
internal static class Tremolo
{
    private const int LongUnits = 4,
        LowestKey = 60;

    public static RightLine Add(Stage stage, RightLine line, HomePositions homes)
    {
        var lattice = stage.Lattice;
        if (!lattice.Bars.Any(b => b.Treatment.Right == RightManner.Tremolo))
        {
            return line;
        }
        return line with { Notes = [.. line.Notes.SelectMany(Struck)] };

        IEnumerable<RightNote> Struck(RightNote note)
        {
            var bar = lattice.Bars[lattice.BarAt(note.Tick)];
            if (
                note.IsFiller
                || bar.Treatment.Right != RightManner.Tremolo
                || bar.Held?.Right is not null
                || note.End - note.Tick < LongUnits * Lattice.TicksPerUnit
                || line.Notes.Any(n => n.Tick > note.Tick && n.Tick < note.End)
                || Partner(stage, note, homes) is not { } under
            )
            {
                yield return note;
                yield break;
            }
            for (var tick = note.Tick; tick < note.End; tick++)
            {
                var first = tick == note.Tick;
                yield return note with
                {
                    Tick = tick,
                    End = tick + 1,
                    Tune = first ? note.Tune : -1,
                    Top = (tick - note.Tick) % 2 == 0 ? note.Top : under,
                    Below = [],
                    Holds = false,
                    Use = RightUse.Tremolo,
                };
            }
        }
    }

    private static Pitch? Partner(Stage stage, RightNote note, HomePositions homes)
    {
        var lowest = Math.Max(LowestKey, homes.HighestKey(note.Tick, note.End) + 1);
        var octave = note.Top with { Octave = note.Top.Octave - 1 };
        if (
            octave.Midi >= lowest
            && !stage.Brief.Hands.NoOctaves
            && stage.RightReach.Of(octave.Midi, note.Top.Midi) <= Stretch.Possible
        )
        {
            return octave;
        }
        var chord = stage.Lattice.ChordAt(note.Tick).Chord;
        return Texturing
            .Inner(note.Top, chord)
            .Where(p => note.Top.Midi - p.Midi is >= 3 and <= 9 && p.Midi >= lowest)
            .Select(p => (Pitch?)p)
            .FirstOrDefault();
    }
}
