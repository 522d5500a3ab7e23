using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>
/// Writes small scores from text. A bar of one hand is a row of <c>keys/part</c>: <c>C2/8 E3+G3/8 r/4</c>; a dot after
/// the part dots it, <c>~</c> ties to the next, <c>*</c> before the keys rolls them.
/// </summary>
internal static class Written
{
    public static Score Score(Metre metre, params (string Right, string Left)[] bars) =>
        new() { Title = "test", Bars = bars.Select((b, i) => Bar(metre, i + 1, b.Right, b.Left)).ToValueList() };

    public static Score Right(Metre metre, params string[] bars) => Score(metre, [.. bars.Select(b => (b, ""))]);

    public static Score Left(Metre metre, params string[] bars) => Score(metre, [.. bars.Select(b => ("", b))]);

    public static Score At(this Score score, int bar, double quartersPerMinute) =>
        score with
        {
            Bars = score
                .Bars.Select(
                    (b, i) =>
                        i != bar
                            ? b
                            : b with
                            {
                                Directions = [new(ScoreTime.Zero) { BeatsPerMinute = quartersPerMinute }],
                            }
                )
                .ToValueList(),
        };

    /// <summary>Every key moved by so many octaves.</summary>
    public static Score MovedByOctaves(this Score score, int octaves)
    {
        ScoreNote Note(ScoreNote n) => n with { Pitch = n.Pitch with { Octave = n.Pitch.Octave + octaves } };
        ScoreEvent Event(ScoreEvent e) => e with { Notes = e.Notes.Select(Note).ToValueList() };
        ScoreVoice Voice(ScoreVoice v) => v with { Events = v.Events.Select(Event).ToValueList() };
        return score with
        {
            Bars = score.Bars.Select(b => b with { Voices = b.Voices.Select(Voice).ToValueList() }).ToValueList(),
        };
    }

    public static int Key(string name) => Pitch.Parse(name).Midi;

    private static ScoreBar Bar(Metre metre, int number, string right, string left)
    {
        ScoreVoice[] voices = [Voice(Hand.Right, right), Voice(Hand.Left, left)];
        var length = voices.Max(v => v.Events.Count == 0 ? ScoreTime.Zero : v.Events[^1].At + v.Events[^1].Length);
        return new()
        {
            Number = number.ToString(System.Globalization.CultureInfo.InvariantCulture),
            Metre = metre,
            Key = default,
            Length = length,
            Voices = voices.ToValueList(),
        };
    }

    private static ScoreVoice Voice(Hand hand, string text)
    {
        var events = new List<ScoreEvent>();
        var (at, tied) = (ScoreTime.Zero, text.StartsWith('~'));
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var (keys, part) = (word.Trim('~', '*').Split('/')[0], word.Trim('~').Split('/')[1]);
            var value = new NoteValue(
                int.Parse(part.TrimEnd('.'), System.Globalization.CultureInfo.InvariantCulture),
                part.Count(c => c == '.')
            );
            var tieStart = word.EndsWith('~');
            var notes =
                keys == "r"
                    ? []
                    : keys.Split('+')
                        .Select(k => new ScoreNote(Pitch.Parse(k)) { TieStart = tieStart, TieStop = tied })
                        .ToValueList();
            events.Add(new(at, value.Length, value) { Notes = notes, Rolled = word.Contains('*') });
            (at, tied) = (at + value.Length, tieStart);
        }
        return new(hand, 1, events.ToValueList());
    }
}
