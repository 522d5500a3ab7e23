using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A place where the left hand strikes.</summary>
/// <param name="Tick">When.</param>
/// <param name="End">When the next thing begins: the longest it may sound.</param>
/// <param name="Bar">Index of its bar.</param>
/// <param name="IsBass">A strong place: bass; else a weak one: chord.</param>
/// <param name="First">The first strong place of its bar.</param>
/// <param name="Changes">A harmony has begun since the place before: its bass note is due.</param>
/// <param name="IsLast">The closing bass of the piece.</param>
internal sealed record LeftSlot(int Tick, int End, int Bar, bool IsBass, bool First, bool Changes, bool IsLast)
{
    /// <summary>No usual place: only what is held there is struck.</summary>
    public bool IsOwn { get; init; }

    /// <summary>A note of the answer to a call.</summary>
    public bool IsAnswer { get; init; }

    /// <summary>Index of the tune's note that the thumb strikes; null: none.</summary>
    public int? Thumb { get; init; }

    /// <summary>In a bar whose tune is in the thumb.</summary>
    public bool IsUnderThumb { get; init; }

    /// <summary>All places of a piece, those under no chord left out.</summary>
    public static LeftSlot[] Of(Lattice lattice)
    {
        var places = new List<(int Tick, int Bar, bool IsBass, bool First)>();
        for (var b = 0; b < lattice.Bars.Length; b++)
        {
            var bar = lattice.Bars[b];
            if (bar.IsShort && bar.Lead > 0 && lattice.Bars.Length > 1 && IsPickUp(lattice, b))
            {
                // The pick-up belongs to the right hand alone.
                continue;
            }
            var basses = bar.Groove.Basses;
            var chords = bar.Groove.Chords;
            // The last bar holds its last bass, or in three-time its first chord, unless a harmony begins later still.
            var lastChange = lattice.ChordAt(bar.End - 1).Start - bar.Start;
            if (b == lattice.Bars.Length - 1 && basses.Count > 1 && lastChange <= basses[^1])
            {
                chords = chords.Where(c => c < basses[^1]).ToValueList();
            }
            else if (b == lattice.Bars.Length - 1 && chords.Count > 1 && basses.Count == 1 && lastChange <= chords[0])
            {
                chords = [chords[0]];
            }
            var all = basses
                .Select((t, i) => (Tick: t, IsBass: true, First: i == 0 && bar.Lead == 0))
                .Concat(chords.Select(t => (Tick: t, IsBass: false, First: false)))
                .OrderBy(p => p.Tick);
            places.AddRange(all.Select(p => (bar.Start + p.Tick, b, p.IsBass, p.First)));
        }
        var slots = new List<LeftSlot>();
        ChordSpan? sounding = null;
        for (var i = 0; i < places.Count; i++)
        {
            var (tick, bar, isBass, first) = places[i];
            var span = lattice.ChordAt(tick);
            if (span.Chord.IsNoChord)
            {
                sounding = span;
                continue;
            }
            var end =
                i + 1 < places.Count ? Math.Min(places[i + 1].Tick, lattice.Bars[bar].End) : lattice.Bars[bar].End;
            var last = i == places.Count - 1 && isBass;
            var changes = sounding is null || (span != sounding && !span.Chord.Equals(sounding.Chord));
            slots.Add(new LeftSlot(tick, end, bar, isBass, first, changes, last));
            sounding = span;
        }
        return [.. slots];
    }

    // Before the piece, or before a strain of a form where the bar before is a whole one.
    private static bool IsPickUp(Lattice lattice, int bar) =>
        bar == 0 || (lattice.Bars[bar].Treatment.Part.Length > 0 && !lattice.Bars[bar - 1].IsShort);
}
