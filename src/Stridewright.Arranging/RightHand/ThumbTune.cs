using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The tune in the left thumb: an octave or two lower, in the tenor, with the right hand's chords above it on the weak
/// places. Common practice of three-handed effects.
/// </summary>
internal static class ThumbTune
{
    private const int Middle = 60,
        Highest = 69,
        Lowest = 48,
        ChordWidth = 14,
        ChordAbove = 9,
        LowestChordTop = 69;

    /// <summary>Pitch in the thumb of each of the tune's notes; null: it stays in the right hand.</summary>
    public static Pitch?[] Of(Lattice lattice)
    {
        var thumb = new Pitch?[lattice.Notes.Length];
        foreach (var (first, end) in Devices.Stretches(lattice, RightManner.ThumbTune))
        {
            var (from, to) = (lattice.Bars[first].Start, lattice.Bars[end - 1].End);
            var mine = Enumerable
                .Range(0, lattice.Notes.Length)
                .Where(i => lattice.Notes[i].Start >= from && lattice.Notes[i].Start < to)
                .ToList();
            if (mine.Count == 0)
            {
                continue;
            }
            var keys = mine.Select(i => lattice.Notes[i].Key).Order().ToList();
            var octaves = Enumerable.Range(1, 3).OrderBy(o => Math.Abs(keys[keys.Count / 2] - 12 * o - Middle)).First();
            foreach (var i in mine.Where(_ => keys[^1] - 12 * octaves <= Highest && keys[0] - 12 * octaves >= Lowest))
            {
                var pitch = lattice.Notes[i].Pitch;
                thumb[i] = pitch with { Octave = pitch.Octave - octaves };
            }
        }
        return thumb;
    }

    /// <summary>Where the neighbouring bars with the tune in the thumb end.</summary>
    public static int EndOf(Lattice lattice, int bar)
    {
        while (bar + 1 < lattice.Bars.Length && lattice.Bars[bar + 1].Treatment.Right == RightManner.ThumbTune)
        {
            bar++;
        }
        return lattice.Bars[bar].End;
    }

    /// <summary>Takes the tune out of the right hand and puts chords on the weak places.</summary>
    public static RightOnset[] Place(Lattice lattice, RightOnset[] onsets)
    {
        var thumb = Of(lattice);
        if (thumb.All(t => t is null))
        {
            return onsets;
        }
        var chords = new List<RightOnset>();
        foreach (
            var bar in lattice.Bars.Where(b => b.Treatment.Right == RightManner.ThumbTune && b.Held?.Right is null)
        )
        {
            var under = Enumerable
                .Range(0, thumb.Length)
                .Where(i =>
                    thumb[i] is not null && lattice.Notes[i].Start < bar.End && lattice.Notes[i].End > bar.Start
                )
                .ToList();
            if (under.Count == 0)
            {
                continue;
            }
            var floor = under.Max(i => thumb[i]!.Value.Midi) + 1;
            var low = Math.Max(LowestChordTop, floor + ChordAbove);
            chords.AddRange(
                bar.Groove.Chords.Where(c => !lattice.ChordAt(bar.Start + c).Chord.IsNoChord)
                    .Select(c => new RightOnset(bar.Start + c, -1)
                    {
                        Use = RightUse.AfterBeat,
                        Keys = (low, low + ChordWidth),
                        Floor = floor,
                    })
            );
        }
        return [.. onsets.Where(o => o.IsFiller || thumb[o.Tune] is null).Concat(chords).OrderBy(o => o.Tick)];
    }
}
