using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What the left hand plays at one place.</summary>
internal sealed record LeftNote(LeftSlot Slot, LeftShape Shape)
{
    /// <summary>Its strokes in time order, ends in ticks: one, or of a broken shape one a key.</summary>
    public IEnumerable<(int Tick, int End, ValueList<Pitch> Pitches)> Strokes()
    {
        if (!Shape.Broken)
        {
            yield return (Slot.Tick, Slot.End, Shape.Pitches);
            yield break;
        }
        for (var i = 0; i < Shape.Pitches.Count; i++)
        {
            var tick = Slot.Tick + i * Lattice.TicksPerUnit;
            var end = i == Shape.Pitches.Count - 1 ? Slot.End : tick + Lattice.TicksPerUnit;
            yield return (tick, end, [Shape.Pitches[i]]);
        }
    }
}

/// <summary>The finished left hand.</summary>
/// <param name="RunPrice">The extra price of runs that it was found at.</param>
/// <param name="WeakPlaces">How many chords the plain pattern has.</param>
internal sealed record LeftLine(LeftNote[] Notes, long RunPrice, int WeakPlaces, long Cost)
{
    public bool Runs => Notes.Any(n => n.Shape.IsRun && n.Shape.MustStep);

    /// <summary>Share of the plain pattern's chords that give way to runs, breaks and rests.</summary>
    public double GivenWay =>
        WeakPlaces == 0
            ? 0
            : 1 - (double)Notes.Count(n => !n.Slot.IsBass && !(n.Shape.IsRun && n.Shape.MustStep)) / WeakPlaces;
}
