using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>Keys that a hand strikes together, read off a score.</summary>
/// <param name="Start">From the start of the first bar.</param>
/// <param name="End">When the last of them is released.</param>
internal sealed record Struck(int Bar, ScoreTime At, ScoreTime Start, ScoreTime End, int[] Keys, bool Rolled)
{
    public int Low => Keys[0];

    public int High => Keys[^1];

    /// <summary>An off-beat chord: two notes or more within less than an octave.</summary>
    public bool IsChord => Keys.Length > 1 && High - Low < 12;
}

/// <summary>What a finished score says by itself: strokes, chord symbols in force, bars on one time line.</summary>
internal sealed class ScoreFacts
{
    private readonly List<(ScoreTime At, ChordSymbol Chord)> _chords = [];

    public ScoreFacts(Score score, PlayerHands hands)
    {
        Score = score;
        Reach = new Reach(hands);
        var now = ScoreTime.Zero;
        Starts = new ScoreTime[score.Bars.Count + 1];
        for (var i = 0; i < score.Bars.Count; i++)
        {
            Starts[i] = now;
            _chords.AddRange(score.Bars[i].Chords.Select(c => (now + c.At, c.Chord)));
            now += score.Bars[i].Length;
        }
        Starts[^1] = now;
        Sounding = Timeline.Of(score);
        Left = Strokes(Hand.Left);
        Right = Strokes(Hand.Right);
    }

    public Score Score { get; }

    public Reach Reach { get; }

    /// <summary>Start of every bar, and the end of the last.</summary>
    public ScoreTime[] Starts { get; }

    public ValueList<Sounding> Sounding { get; }

    public Struck[] Left { get; }

    public Struck[] Right { get; }

    public ScoreTime Place(int bar, ScoreTime at) => Starts[bar] + at;

    /// <summary>Index of the stroke at a place; −1: none.</summary>
    public static int IndexAt(Struck[] strokes, ScoreTime place) => Array.FindIndex(strokes, s => s.Start == place);

    /// <summary>How a key of a left-hand stroke is spelled.</summary>
    public Tone SpellingOf(Struck stroke, int key) =>
        Score
            .Bars[stroke.Bar]
            .Voices.Where(v => v.Hand == Hand.Left)
            .SelectMany(v => v.Events)
            .Where(e => e.At == stroke.At)
            .SelectMany(e => e.Notes)
            .First(n => n.Pitch.Midi == key)
            .Pitch.Tone;

    public IEnumerable<Struck> RightIn(int bar) => Right.Where(s => s.Bar == bar);

    /// <summary>The chord symbol in force and the place where it was first printed in a row of equal ones.</summary>
    public (ScoreTime Since, ChordSymbol? Chord) ChordAt(ScoreTime place)
    {
        (ScoreTime Since, ChordSymbol? Chord) found = (ScoreTime.Zero, null);
        foreach (var (at, chord) in _chords.TakeWhile(c => c.At <= place))
        {
            found = chord.Equals(found.Chord) ? found : (at, chord);
        }
        return found;
    }

    /// <summary>Chord symbols from a place on, one of equal neighbours, the one in force first.</summary>
    public IEnumerable<string> ChordsFrom(ScoreTime place)
    {
        var last = ChordAt(place).Chord;
        yield return last?.ToString() ?? "";
        foreach (var (_, chord) in _chords.Where(c => c.At > place))
        {
            if (!chord.Equals(last))
            {
                yield return chord.ToString();
                last = chord;
            }
        }
    }

    /// <summary>What is missing of the metre's bar before a bar: only a pick-up starts late.</summary>
    public ScoreTime Lead(int bar) =>
        bar == 0 && Score.Bars[0].Implicit ? Score.Bars[0].Metre.BarLength - Score.Bars[0].Length : ScoreTime.Zero;

    private Struck[] Strokes(Hand hand) =>
        [
            .. Sounding
                .Where(s => s.Hand == hand)
                .GroupBy(s => s.Start)
                .OrderBy(g => g.Key)
                .Select(g => new Struck(
                    g.First().Bar,
                    g.First().At,
                    g.Key,
                    g.Max(s => s.End),
                    [.. g.Select(s => s.Key).Order()],
                    g.Any(s => s.Rolled)
                )),
        ];
}
