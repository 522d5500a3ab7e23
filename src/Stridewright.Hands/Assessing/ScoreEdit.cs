using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Small changes to what a hand strikes at one place of a score; the rest stays as it is.</summary>
internal static class ScoreEdit
{
    public static Score Roll(Score score, int bar, Hand hand, ScoreTime at) =>
        Changed(score, bar, hand, at, e => e.Notes.Count > 0 ? e with { Rolled = true } : e);

    /// <summary>Without one key, which is not tied on either.</summary>
    public static Score LeaveOut(Score score, int bar, Hand hand, ScoreTime at, int key)
    {
        for (var tied = true; tied && bar < score.Bars.Count; )
        {
            tied = false;
            var end = at;
            score = Changed(
                score,
                bar,
                hand,
                at,
                e =>
                {
                    foreach (var note in e.Notes.Where(n => n.Pitch.Midi == key))
                    {
                        (tied, end) = (tied || note.TieStart, e.At + e.Length);
                    }
                    return e with { Notes = e.Notes.Where(n => n.Pitch.Midi != key).ToValueList() };
                }
            );
            (bar, at) = end < score.Bars[bar].Length ? (bar, end) : (bar + 1, ScoreTime.Zero);
        }
        return score;
    }

    private static Score Changed(Score score, int bar, Hand hand, ScoreTime at, Func<ScoreEvent, ScoreEvent> change)
    {
        ScoreVoice Voice(ScoreVoice voice) =>
            voice.Hand != hand
                ? voice
                : voice with
                {
                    Events = voice.Events.Select(e => e.At == at ? change(e) : e).ToValueList(),
                };
        var bars = score.Bars.Select((b, i) => i == bar ? b with { Voices = b.Voices.Select(Voice).ToValueList() } : b);
        return score with { Bars = bars.ToValueList() };
    }
}
