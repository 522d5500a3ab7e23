using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>Fingers one hand of small scores for the tests, and writes the fingers as text.</summary>
internal static class Fingered
{
    public static readonly PlayerHands Usual = new();

    public static HandFingering Hand(
        Score score,
        Hand side,
        CostTable? table = null,
        PlayerHands? hands = null,
        IReadOnlyDictionary<WrittenFinger, int>? written = null
    )
    {
        return HandFingering.Of(
            new Passage(score, null),
            hands ?? Usual,
            side,
            table ?? CostTable.Shipped,
            written ?? FingerMarks.Read(score),
            [],
            default
        );
    }

    /// <summary>Single keys in sixteenths, each with its finger where some are given.</summary>
    public static Score Line(Hand side, IEnumerable<int> keys, string fingers = "")
    {
        var events = keys.Select(
            (key, i) =>
                new ScoreEvent(ScoreTime.Sixteenth * i, ScoreTime.Sixteenth, new NoteValue(16))
                {
                    Notes = [new ScoreNote(PitchOf(key)) { Finger = fingers.Length > 0 ? fingers[i] - '0' : null }],
                }
        );
        var voice = new ScoreVoice(side, 1, events.ToValueList());
        return new()
        {
            Title = "line",
            Bars =
            [
                new()
                {
                    Number = "1",
                    Metre = Metre.FourFour,
                    Key = default,
                    Length = ScoreTime.Sixteenth * voice.Events.Count,
                    Voices = [voice],
                },
            ],
        };
    }

    /// <summary>The fingers of each onset, struck keys only, lowest first, such as <c>5 531</c>; a key without is 0.</summary>
    public static string Text(HandFingering hand) =>
        string.Join(
            ' ',
            hand.Onsets.Select(o => string.Concat(o.Keys.Where(k => !k.IsHeld).Select(k => k.Finger ?? 0)))
        );

    public static double Cost(HandFingering hand) => hand.Onsets.Sum(o => o.Cost);

    public static Pitch PitchOf(int key)
    {
        var names = "C C# D Eb E F F# G Ab A Bb B".Split(' ');
        return Pitch.Parse(
            names[key % 12] + (key / 12 - 1).ToString(System.Globalization.CultureInfo.InvariantCulture)
        );
    }
}
