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
        for (var i = 0; i < notes.Length; i++)
        {
            if (lattice.HeldAt(notes[i].Tick) is { End: { } end } held)
            {
                notes[i] = notes[i] with { End = end, Holds = held.Holds, UnderHeld = held.UnderHeld };
            }
        }
        // In each voice a note ends where the next begins, and nothing lies under a note that has ended.
        RightNote? holding = null;
        var nextInVoice = new int[] { lattice.End, lattice.End };
        for (var i = notes.Length - 1; i >= 0; i--)
        {
            var voice = notes[i].UnderHeld ? 1 : 0;
            notes[i] = notes[i] with { End = Math.Min(notes[i].End, nextInVoice[voice]) };
            nextInVoice[voice] = notes[i].Tick;
        }
        for (var i = 0; i < notes.Length; i++)
        {
            if (!notes[i].UnderHeld)
            {
                holding = notes[i];
            }
            else if (holding is not { Holds: true } || holding.End <= notes[i].Tick)
            {
                notes[i] = notes[i] with { UnderHeld = false };
                holding = notes[i];
            }
        }
        for (var i = 0; i + 1 < notes.Length; i++)
        {
            if (notes[i].Holds && !notes[i + 1].UnderHeld)
            {
                notes[i] = notes[i] with { Holds = false };
            }
        }
        return notes;
    }
}
