using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Easier right hands inside a written one: its upper line, its octaves, its rhythm put back on the beat.</summary>
internal static class RightThinning
{
    private const int Octave = 12;

    /// <summary>The highest note of what is struck in the first voice, nothing else.</summary>
    public static Score Line(Score right) => Thinned(right, e => [e.Notes[^1]]);

    /// <summary>The highest note and its lower octave where that is written.</summary>
    public static Score Octaves(Score right) =>
        Thinned(right, e => e.Notes.Where(n => e.Notes[^1].Pitch.Midi - n.Pitch.Midi is 0 or Octave).ToValueList());

    /// <summary>Highest and lowest note of what is struck together.</summary>
    public static Score Frame(Score right) =>
        Thinned(right, e => e.Notes.Count > 2 ? [e.Notes[0], e.Notes[^1]] : e.Notes);

    /// <summary>The lowest note of what is struck together.</summary>
    public static Score Thumb(Score right) => Thinned(right, e => [e.Notes[0]]);

    /// <summary>
    /// The upper line with its syncopations on the beat, but for those of the kinds that stay. Null where a value is a
    /// tuplet's: its rhythm cannot be moved by halves.
    /// </summary>
    public static Score? Straight(Score right, SyncopationKind? upTo)
    {
        var line = Line(right);
        var strokes = UpperLine.Of(line);
        if (strokes.Any(s => !OnGrid(s.Start) || !OnGrid(s.End)))
        {
            return null;
        }
        for (var kind = SyncopationKind.OverBar; upTo is null || kind > upTo; kind--)
        {
            strokes = Syncopations.OnTheBeat(line, strokes, kind);
            if (kind == SyncopationKind.Untied)
            {
                break;
            }
        }
        return UpperLine.Written(line, strokes);
    }

    // Values down to the 256th can be spelled.
    private static bool OnGrid(ScoreTime time) => time.IsMultipleOf(new ScoreTime(1, 256));

    private static Score Thinned(Score right, Func<ScoreEvent, ValueList<ScoreNote>> kept)
    {
        ScoreVoice Of(ScoreVoice voice) =>
            voice with
            {
                Events = voice
                    .Events.Select(e =>
                        e.Notes.Count == 0
                            ? e with
                            {
                                Hidden = false,
                            }
                            : e with
                            {
                                Notes = kept(e),
                                Graces = [],
                                Rolled = false,
                            }
                    )
                    .ToValueList(),
            };
        return Ties.Mended(
            right with
            {
                Bars = right
                    .Bars.Select(bar =>
                    {
                        // A second voice sounds under the first; alone in its bar it is the line.
                        var voice =
                            bar.Voices.FirstOrDefault(v => v.Events.Any(e => e.Notes.Count > 0))
                            ?? (bar.Voices is [var first, ..] ? first : null);
                        return bar with { Voices = voice is null ? [] : [Of(voice) with { Number = 1 }] };
                    })
                    .ToValueList(),
            }
        );
    }
}
