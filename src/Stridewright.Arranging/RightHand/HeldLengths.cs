namespace Stridewright.Arranging;

/// <summary>Gives the onsets of held bars the lengths and voices that they are held with, as far as what follows the bar
/// leaves room.</summary>
internal static class HeldLengths
{
    public static RightNote[] Apply(Lattice lattice, RightNote[] notes)
    {
        if (lattice.Bars.All(b => b.Held?.Right is null))
        {
            return notes;
        }
        RightNote? upper = null;
        for (var i = 0; i < notes.Length; i++)
        {
            if (lattice.HeldAt(notes[i].Tick) is { End: { } end } held)
            {
                notes[i] = notes[i] with { End = end, UnderHeld = held.UnderHeld };
            }
            // Nothing lies under a note that has ended.
            if (upper is null || upper.End <= notes[i].Tick)
            {
                notes[i] = notes[i] with { UnderHeld = false };
            }
            upper = notes[i].UnderHeld ? upper : notes[i];
        }
        RightVoices.Apart(notes);
        for (var i = 0; i < notes.Length; i++)
        {
            notes[i] = notes[i] with
            {
                End = Math.Min(notes[i].End, lattice.End),
                Holds = !notes[i].UnderHeld && i + 1 < notes.Length && notes[i + 1].UnderHeld,
            };
        }
        return notes;
    }
}
