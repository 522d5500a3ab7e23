using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>Makes the key strokes of one chord: its places, lengths and velocities.</summary>
internal static class StrokeMaker
{
    private const double RollMilliseconds = 25; // from one note of a rolled chord to the next
    private const double CrushMilliseconds = 45; // length of a crushed note
    private const double StaccatoShare = 0.5;
    private const double OffBeatChordShare = 0.65; // a stride chord is let go early

    public static void Add(List<KeyStroke> strokes, Course course, List<StruckNote> chord)
    {
        var source = chord[0].Source;
        var first = chord[0].Sounding;
        var start = course.TickOf(first.Start, first.Hand);
        AddCrushed(strokes, course, chord, start);
        for (var i = 0; i < chord.Count; i++)
        {
            var sounding = chord[i].Sounding;
            var end = course.TickOf(sounding.End, sounding.Hand);
            var length = (end - start) * ShareOf(chord[i], course);
            var tick = source.Rolled ? Rolled(course, start, end, i, chord.Count, sounding.Hand) : start;
            strokes.Add(
                new KeyStroke(
                    tick,
                    Math.Max(1, start + (long)Math.Round(length) - tick),
                    Math.Clamp(sounding.Key, 0, 127),
                    Loudness.Of(chord[i], i == chord.Count - 1, course),
                    sounding.Hand,
                    IdOf(sounding.Id)
                )
            );
        }
    }

    private static double ShareOf(StruckNote note, Course course)
    {
        if (note.Source.Staccato)
        {
            return StaccatoShare;
        }
        // A chord held longer than its first value, by a tie, is meant to last.
        var held = note.Sounding.End - note.Sounding.Start > note.Source.Length;
        return !held && Loudness.IsOffBeatChord(note, course) ? OffBeatChordShare : 1;
    }

    /// <summary>The right hand rolls up to the beat, so that the tune is on it; the left from the beat, so that the bass
    /// is. A roll takes at most half of the chord.</summary>
    private static long Rolled(Course course, long start, long end, int note, int notes, Hand hand)
    {
        var step = Math.Min(course.TicksIn(RollMilliseconds, start), (end - start) / 2.0 / notes);
        var steps = hand == Hand.Right ? note - (notes - 1) : note;
        return Math.Max(0, start + (long)Math.Round(steps * step));
    }

    private static void AddCrushed(List<KeyStroke> strokes, Course course, List<StruckNote> chord, long start)
    {
        var (source, hand) = (chord[0].Source, chord[0].Sounding.Hand);
        var velocity = Loudness.OfCrushed(Loudness.Of(chord[^1], highest: true, course));
        var length = Math.Max(1, (long)Math.Round(course.TicksIn(CrushMilliseconds, start)));
        for (var i = 0; i < source.Graces.Count; i++)
        {
            var note = source.Graces[i];
            // At the very start there is no time before the beat: it is struck with it.
            var tick = Math.Max(0, start - (source.Graces.Count - i) * length);
            var key = Math.Clamp(note.Pitch.Midi, 0, 127);
            strokes.Add(new KeyStroke(tick, length, key, velocity, hand, IdOf(note.Id)));
        }
    }

    private static string? IdOf(string id) => id.Length > 0 ? id : null;
}
