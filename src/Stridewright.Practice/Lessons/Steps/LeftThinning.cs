using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Easier left hands inside a written one: the same chords, its basses single, or beside their chords.</summary>
internal static class LeftThinning
{
    private const int Octave = 12;

    /// <summary>Octaves and tenths as their lowest note, where the little finger goes; chords as they are.</summary>
    public static Score SingleBass(Score left) => Mapped(left, (_, _, e) => IsBass(e) ? Lowest(e) : e);

    /// <summary>Single basses, each less than an octave under the lowest key of the chord that follows it in its bar (the last
    /// chord before it, where none does), or on that key, so that the hand stays in one place.</summary>
    public static Score InPlace(Score left) =>
        Mapped(
            left,
            (bar, voice, e) =>
            {
                if (!IsBass(e))
                {
                    return e;
                }
                var lowest = Lowest(e);
                return ChordBeside(bar, voice, e) is { } chord
                    ? lowest with
                    {
                        Notes = lowest.Notes.Select(n => n with { Pitch = Under(n.Pitch, chord) }).ToValueList(),
                    }
                    : lowest;
            }
        );

    // Keys struck together that are no chord: one, an octave, a tenth.
    private static bool IsBass(ScoreEvent e) => e.Notes.Count == 1 || (e.Notes.Count == 2 && Span(e) is 12 or 15 or 16);

    private static int Span(ScoreEvent e) => e.Notes[^1].Pitch.Midi - e.Notes[0].Pitch.Midi;

    private static ScoreEvent Lowest(ScoreEvent e) => e with { Notes = [e.Notes[0]], Rolled = false };

    private static int? ChordBeside(ScoreBar bar, ScoreVoice voice, ScoreEvent bass)
    {
        var chords = bar
            .Voices.Where(v => v.Hand == voice.Hand)
            .SelectMany(v => v.Events)
            .Where(e => e.Notes.Count > 1 && !IsBass(e))
            .ToList();
        var beside = chords.Where(e => e.At > bass.At).MinBy(e => e.At) ?? chords.MaxBy(e => e.At);
        return beside?.Notes[0].Pitch.Midi;
    }

    // At most eleven semitones below the lowest key of the chord.
    private static Pitch Under(Pitch bass, int chord)
    {
        var up = (chord - bass.Midi) / Octave;
        return up > 0 ? bass with { Octave = bass.Octave + up } : bass;
    }

    private static Score Mapped(Score left, Func<ScoreBar, ScoreVoice, ScoreEvent, ScoreEvent> change) =>
        Ties.Mended(
            left with
            {
                Bars = left
                    .Bars.Select(bar =>
                        bar with
                        {
                            Voices = bar
                                .Voices.Select(voice =>
                                    voice with
                                    {
                                        Events = voice
                                            .Events.Select(e => e.Notes.Count == 0 ? e : change(bar, voice, e))
                                            .ToValueList(),
                                    }
                                )
                                .ToValueList(),
                        }
                    )
                    .ToValueList(),
            }
        );
}
