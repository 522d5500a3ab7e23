namespace Stridewright.Practice.Listening.Search;

/// <summary>A stretch of the take without a jump: its played notes and the chords that it runs through.</summary>
/// <param name="PlayedEnd">Index after its last played note.</param>
internal sealed record Stretch(int FirstPlayed, int PlayedEnd, int FirstChord, int LastChord)
{
    /// <summary>Played notes.</summary>
    public int Count => PlayedEnd - FirstPlayed;

    /// <summary>Cuts a path where it jumps.</summary>
    public static List<Stretch> Of(PathPoint[] path)
    {
        var stretches = new List<Stretch>();
        for (var from = 0; from < path.Length; )
        {
            var to = from + 1;
            while (to < path.Length && path[to].Step != PathStep.Jumped)
            {
                to++;
            }
            var struck = path[from..to].Where(p => p.Step != PathStep.Beside).Select(p => p.Chord).ToList();
            if (struck.Count > 0)
            {
                stretches.Add(new Stretch(from, to, struck.Min(), struck.Max()));
            }
            from = to;
        }
        return stretches;
    }
}
