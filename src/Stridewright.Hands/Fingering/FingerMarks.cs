using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Reads fingers off the notes of a score and writes them there.</summary>
internal static class FingerMarks
{
    /// <summary>The fingers that stand at struck notes; of two at one key the first.</summary>
    public static Dictionary<WrittenFinger, int> Read(Score score)
    {
        var found = new Dictionary<WrittenFinger, int>();
        for (var bar = 0; bar < score.Bars.Count; bar++)
        {
            foreach (var voice in score.Bars[bar].Voices)
            {
                foreach (var e in voice.Events)
                {
                    foreach (var note in e.Notes.Where(n => n.Finger is not null && !n.TieStop))
                    {
                        found.TryAdd(new(voice.Hand, bar, e.At, note.Pitch.Midi), note.Finger!.Value);
                    }
                }
            }
        }
        return found;
    }

    /// <summary>The fingers that stand at crushed notes.</summary>
    public static Dictionary<CrushedPlace, int> ReadCrushed(Score score) =>
        CrushedPlace
            .Of(score)
            .SelectMany(c => c.Notes.Select((note, i) => (Place: c.Place with { Index = i }, note.Finger)))
            .Where(c => c.Finger is not null)
            .ToDictionary(c => c.Place, c => c.Finger!.Value);

    /// <summary>The score with these fingers at its struck notes and no others; a key struck by two voices shows one. Fingers
    /// at tied notes, where a finger takes over, stay if <paramref name="keepsTied"/>.</summary>
    /// <param name="next">Fingers that take over while a key is held, at its stroke.</param>
    public static Score Write(
        Score score,
        Dictionary<WrittenFinger, int> fingers,
        Dictionary<CrushedPlace, int> crushed,
        Dictionary<WrittenFinger, int> next,
        bool keepsTied
    )
    {
        var left = new Dictionary<WrittenFinger, int>(fingers);
        var bars = new List<ScoreBar>();
        foreach (var bar in score.Bars)
        {
            var index = bars.Count;
            bars.Add(
                bar with
                {
                    Voices = bar
                        .Voices.Select(v => v with { Events = v.Events.Select(e => With(index, v, e)).ToValueList() })
                        .ToValueList(),
                }
            );
        }
        return score with { Bars = bars.ToValueList() };

        ScoreEvent With(int bar, ScoreVoice voice, ScoreEvent e) =>
            e.Notes.Count == 0
                ? e
                : e with
                {
                    Notes = e.Notes.Select(n => Fingered(bar, voice.Hand, e.At, n)).ToValueList(),
                    Graces = e
                        .Graces.Select(
                            (n, i) =>
                                n with
                                {
                                    Finger = crushed.TryGetValue(new(voice.Hand, bar, voice.Number, e.At, i), out var f)
                                        ? f
                                        : null,
                                    NextFinger = null,
                                }
                        )
                        .ToValueList(),
                };

        ScoreNote Fingered(int bar, Hand hand, ScoreTime at, ScoreNote note) =>
            new WrittenFinger(hand, bar, at, note.Pitch.Midi) is var place && left.Remove(place, out var finger)
                ? note with
                {
                    Finger = finger,
                    NextFinger = next.TryGetValue(place, out var other) ? other : null,
                }
            : note.TieStop && keepsTied ? note
            : note with { Finger = null, NextFinger = null };
    }
}
