using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A tune in written order on one time line. A tied note is struck again: a piano's tone is short, and ragging places it
/// afresh. Only the last note of the tune keeps its ties and dies away.
/// </summary>
/// <param name="Starts">Start of each bar.</param>
internal sealed record FlatTune(ScoreTime[] Starts, FlatNote[] Notes, (ScoreTime At, ChordSymbol Chord)[] Chords)
{
    public static FlatTune Of(Tune tune)
    {
        var starts = new ScoreTime[tune.Bars.Count];
        var notes = new List<FlatNote>();
        var chords = new List<(ScoreTime, ChordSymbol)>();
        var now = ScoreTime.Zero;
        var tied = new List<bool>();
        var stresses = Stresses.Of(tune);
        for (var i = 0; i < tune.Bars.Count; i++)
        {
            var bar = tune.Bars[i];
            starts[i] = now;
            foreach (var note in bar.Notes)
            {
                if (tied.Count > 0 && tied[^1] && note.Lyrics.Count == 0)
                {
                    // What is struck again on a tie is held on the syllable before.
                    notes[^1] = notes[^1] with
                    {
                        Lyrics = notes[^1].Lyrics.Select(Held).ToValueList(),
                    };
                }
                notes.Add(
                    new FlatNote(now + note.At, note.Length, note.Pitch, note.Lyrics, note.Graces)
                    {
                        Stress = stresses[notes.Count],
                    }
                );
                tied.Add(note.TiedToNext);
            }
            chords.AddRange(bar.Chords.Select(c => (now + c.At, c.Chord)));
            now += bar.Length;
        }
        while (notes.Count > 1 && tied[notes.Count - 2] && notes[^2].Pitch == notes[^1].Pitch)
        {
            notes[^2] = notes[^2] with { Length = notes[^1].Start + notes[^1].Length - notes[^2].Start };
            notes.RemoveAt(notes.Count - 1);
        }
        return new FlatTune(starts, [.. notes], [.. chords]);
    }

    /// <summary>The chord that sounds at a place; null before the first.</summary>
    public ChordSymbol? ChordAt(ScoreTime place)
    {
        int low = 0,
            high = Chords.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = Chords[middle].At <= place ? (middle + 1, high) : (low, middle);
        }
        return low == 0 ? null : Chords[low - 1].Chord;
    }

    private static Lyric Held(Lyric lyric) => lyric with { Extends = true };
}

internal sealed record FlatNote(
    ScoreTime Start,
    ScoreTime Length,
    Pitch Pitch,
    ValueList<Lyric> Lyrics,
    ValueList<Pitch> Graces
)
{
    public Stress Stress { get; init; }
}
