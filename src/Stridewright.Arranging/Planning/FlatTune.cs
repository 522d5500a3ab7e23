using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A tune in written order on one time line, ties merged.</summary>
/// <param name="Starts">Start of each bar.</param>
internal sealed record FlatTune(ScoreTime[] Starts, FlatNote[] Notes, (ScoreTime At, ChordSymbol Chord)[] Chords)
{
    public static FlatTune Of(Tune tune)
    {
        var starts = new ScoreTime[tune.Bars.Count];
        var notes = new List<FlatNote>();
        var chords = new List<(ScoreTime, ChordSymbol)>();
        var now = ScoreTime.Zero;
        var tied = false;
        for (var i = 0; i < tune.Bars.Count; i++)
        {
            var bar = tune.Bars[i];
            starts[i] = now;
            foreach (var note in bar.Notes)
            {
                var start = now + note.At;
                if (tied && notes[^1] is var last && last.Pitch == note.Pitch && last.Start + last.Length == start)
                {
                    notes[^1] = last with { Length = last.Length + note.Length };
                }
                else
                {
                    notes.Add(new FlatNote(start, note.Length, note.Pitch, note.Lyrics, note.Graces));
                }
                tied = note.TiedToNext;
            }
            chords.AddRange(bar.Chords.Select(c => (now + c.At, c.Chord)));
            now += bar.Length;
        }
        return new FlatTune(starts, [.. notes], [.. chords]);
    }
}

internal sealed record FlatNote(
    ScoreTime Start,
    ScoreTime Length,
    Pitch Pitch,
    ValueList<Lyric> Lyrics,
    ValueList<Pitch> Graces
);
