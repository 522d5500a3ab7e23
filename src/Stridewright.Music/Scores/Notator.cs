using Stridewright.Music.Notation;

namespace Stridewright.Music;

/// <summary>
/// Spells a draft: note values, ties, rests and beams that let the beat be read. A stroke is cut at bar lines and
/// where the metre must show, and its pieces are tied. Every voice fills its bar exactly. No tuplets: places and lengths
/// lie on the binary grid down to the 256th.
/// </summary>
public static class Notator
{
    /// <exception cref="ArgumentException">Strokes overlap within a hand and voice, a stroke has no keys or one key
    /// twice, lies outside its bar or runs past the last, or a time is not on the binary grid. The bar is
    /// named.</exception>
    public static Score Write(Draft draft)
    {
        ArgumentNullException.ThrowIfNull(draft);
        var ids = NoteIds.OfBars(draft.Bars);
        var segments = Cut(draft.Bars);
        var above = draft.Bars.Any(b => b.Above.Count > 0)
            ? Cut(draft.Bars.Select(b => b with { Strokes = b.Above }).ToValueList())
            : null;
        Hand[] hands = draft.LeftHandOnly ? [Hand.Left] : [Hand.Right, Hand.Left];
        return new Score
        {
            Title = draft.Title,
            Composer = draft.Composer,
            Subtitle = draft.Subtitle,
            LeftHandOnly = draft.LeftHandOnly,
            Bars = draft.Bars.Select((bar, i) => Spell(bar, ids[i], segments[i], above?[i], hands)).ToValueList(),
        };
    }

    private static ScoreBar Spell(DraftBar bar, string id, List<Segment> segments, List<Segment>? above, Hand[] hands)
    {
        var speller = new VoiceSpeller(bar, id);
        List<Segment> Of(Hand hand, int voice) =>
            [.. segments.Where(s => s.Stroke.Hand == hand && s.Stroke.Voice == voice).OrderBy(s => s.At)];
        IEnumerable<ScoreVoice> Voices(Hand hand) => speller.Spell(hand, Of(hand, 1), Of(hand, 2));
        return new ScoreBar
        {
            Number = bar.Number,
            Implicit = bar.Implicit,
            Metre = bar.Metre,
            Key = bar.Key,
            Length = bar.Length,
            Chords = bar.Chords,
            Directions = bar.Directions,
            Marks = bar.Marks,
            Id = id,
            Voices = hands.SelectMany(Voices).ToValueList(),
            Above = above is null ? [] : speller.Spell(Hand.Right, [.. above.OrderBy(s => s.At)], []).Single().Events,
        };
    }

    /// <summary>What falls into each bar: strokes cut at the bar lines.</summary>
    private static List<Segment>[] Cut(ValueList<DraftBar> bars)
    {
        var segments = bars.Select(_ => new List<Segment>()).ToArray();
        for (var i = 0; i < bars.Count; i++)
        {
            foreach (var stroke in bars[i].Strokes)
            {
                Check(bars[i], stroke);
                var (bar, at, left, first) = (i, stroke.At, stroke.Length, true);
                while (!left.IsZero)
                {
                    if (bar == bars.Count)
                    {
                        throw At(bars[i], stroke, "a stroke runs past the last bar");
                    }
                    var here = ScoreTime.Min(left, bars[bar].Length - at);
                    left -= here;
                    segments[bar].Add(new Segment(stroke, at, at + here, first, left.IsZero));
                    (bar, at, first) = (bar + 1, ScoreTime.Zero, false);
                }
            }
        }
        return segments;
    }

    private static void Check(DraftBar bar, Stroke stroke)
    {
        if (bar.Length <= ScoreTime.Zero || stroke.At < ScoreTime.Zero || stroke.At >= bar.Length)
        {
            throw At(bar, stroke, "a stroke lies outside its bar");
        }
        if (stroke.Length <= ScoreTime.Zero)
        {
            throw At(bar, stroke, "a stroke has no length");
        }
        if (stroke.Voice is not (1 or 2))
        {
            throw At(bar, stroke, "a voice is neither 1 nor 2");
        }
        if (stroke.Pitches.Count == 0)
        {
            throw At(bar, stroke, "a stroke has no keys");
        }
        for (var i = 1; i < stroke.Pitches.Count; i++)
        {
            if (stroke.Pitches[i].Midi <= stroke.Pitches[i - 1].Midi)
            {
                throw At(bar, stroke, "a stroke's keys do not rise");
            }
        }
    }

    private static ArgumentException At(DraftBar bar, Stroke stroke, string what) =>
        new($"bar {bar.Number}, place {stroke.At}: {what} ({stroke.Hand} hand, {stroke.Role})");
}
