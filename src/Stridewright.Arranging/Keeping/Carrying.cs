using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Takes kept bars over to a setting of the corrected tune, where tune and harmony are as they were.</summary>
internal static class Carrying
{
    public static ValueList<KeptBar> Over(Lattice before, Lattice after, ValueList<KeptBar> kept) =>
        IsLikeBarred(before, after)
            ? kept.Select(spot => Over(before, after, spot)).OfType<KeptBar>().ToValueList()
            : [];

    private static bool IsLikeBarred(Lattice before, Lattice after) =>
        (before.Feel, before.Tick, before.Scale) == (after.Feel, after.Tick, after.Scale)
        && before.Bars.Select(b => (b.Start, b.Length)).SequenceEqual(after.Bars.Select(b => (b.Start, b.Length)));

    private static KeptBar? Over(Lattice before, Lattice after, KeptBar spot)
    {
        if (
            spot.Bar >= before.Bars.Length
            || !Chords(before, spot.Bar).SequenceEqual(Chords(after, spot.Bar))
            || (spot.Hand == Hand.Right && !Notes(before, spot.Bar).SequenceEqual(Notes(after, spot.Bar)))
        )
        {
            return null;
        }
        var strokes = new List<KeptStroke>();
        foreach (var stroke in spot.Strokes)
        {
            int? tune = stroke.Tune is { } note ? Place(note) : null;
            if (tune < 0)
            {
                return null;
            }
            strokes.Add(stroke with { Tune = tune });
        }
        var leftOut = spot.LeftOut.Select(Place).ToValueList();
        return leftOut.Contains(-1) ? null : spot with { Strokes = strokes.ToValueList(), LeftOut = leftOut };

        // −1: it is there no more.
        int Place(int note) =>
            note < 0 || note >= before.Notes.Length
                ? -1
                : Array.FindIndex(after.Notes, n => Same(n) == Same(before.Notes[note]));
    }

    private static (int Start, int Length, int Key) Same(TuneSpot note) => (note.Start, note.Length, note.Key);

    private static IEnumerable<(int, int, int)> Notes(Lattice lattice, int bar) =>
        lattice.Notes.Where(n => lattice.BarAt(n.Start) == bar).Select(Same);

    private static IEnumerable<(int, ChordSymbol)> Chords(Lattice lattice, int bar) =>
        lattice
            .Chords.Where(c => c.Start < lattice.Bars[bar].End && c.End > lattice.Bars[bar].Start)
            .Select(c => (Math.Max(c.Start, lattice.Bars[bar].Start), c.Chord));
}
