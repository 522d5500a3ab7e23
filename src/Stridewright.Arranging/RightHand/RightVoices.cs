namespace Stridewright.Arranging;

/// <summary>The two voices of the right hand.</summary>
internal static class RightVoices
{
    /// <summary>Ends each note where the next of its voice begins, in place.</summary>
    /// <param name="notes">In time order.</param>
    public static RightNote[] Apart(RightNote[] notes)
    {
        int upper = int.MaxValue,
            lower = int.MaxValue;
        for (var i = notes.Length - 1; i >= 0; i--)
        {
            var note = notes[i];
            ref var next = ref note.UnderHeld ? ref lower : ref upper;
            notes[i] = note with { End = Math.Min(note.End, next) };
            next = note.Tick;
        }
        return notes;
    }
}
