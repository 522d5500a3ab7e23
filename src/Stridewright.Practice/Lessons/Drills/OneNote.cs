using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>The rhythm of a hand on one key.</summary>
internal static class OneNote
{
    /// <summary>The bars with everything a hand strikes on one key of its own: the key note near where the hand is. Ties are
    /// those of its outer line.</summary>
    public static Score Of(Score score, Hand hand)
    {
        var key = score.Bars[0].Key.Tonic;
        var pitch = Near(key, hand == Hand.Right ? 71 : 50);
        ScoreEvent On(ScoreEvent e)
        {
            if (e.Notes.Count == 0)
            {
                return e;
            }
            var outer = hand == Hand.Right ? e.Notes[^1] : e.Notes[0];
            return e with { Notes = [outer with { Pitch = pitch }], Graces = [], Rolled = false };
        }
        ScoreVoice? Voice(ScoreBar bar) =>
            bar.Voices.FirstOrDefault(v => v.Hand == hand && v.Events.Any(e => e.Notes.Count > 0))
            ?? bar.Voices.FirstOrDefault(v => v.Hand == hand);
        return Ties.Mended(
            score with
            {
                Bars = score
                    .Bars.Select(bar =>
                    {
                        var own = Voice(bar) is { } voice
                            ? new[] { voice with { Number = 1, Events = voice.Events.Select(On).ToValueList() } }
                            : [];
                        var other = bar.Voices.Where(v => v.Hand != hand);
                        return bar with
                        {
                            Voices = (hand == Hand.Right ? own.Concat(other) : other.Concat(own)).ToValueList(),
                        };
                    })
                    .ToValueList(),
            }
        );
    }

    private static Pitch Near(Tone tone, int key)
    {
        var octave = Enumerable.Range(1, 6).MinBy(o => Math.Abs(new Pitch(tone, o).Midi - key));
        return new(tone, octave);
    }
}
