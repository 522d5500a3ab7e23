using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>The leaps and the changes of chord that a left hand has, each kind of them once.</summary>
internal sealed class StrokePairs(Score goal, Pace pace, PlayerHands hands)
{
    private readonly List<HandStroke> _strokes = HandStroke.Of(goal, Hand.Left);
    private readonly Keyboard _keyboard = new(hands.OctaveMm);

    /// <summary>From a bass to a chord an octave away or more, up or down; fast and frequent ones first.</summary>
    public List<StrokePair> Leaps()
    {
        var found = new List<(HandStroke Bass, HandStroke Chord, HandStroke First, HandStroke Second)>();
        for (var i = 1; i < _strokes.Count; i++)
        {
            var (before, after) = (_strokes[i - 1], _strokes[i]);
            var (bass, chord) = before.Low.Midi < after.Low.Midi ? (before, after) : (after, before);
            if (bass.IsBass && !chord.IsBass && chord.Low.Midi - bass.Low.Midi >= Thresholds.Leap.Value)
            {
                found.Add((bass, chord, before, after));
            }
        }
        return Grouped(found, p => p.Rate * Often(p));
    }

    /// <summary>From one chord to the next other one, basses between them passed over; far and frequent ones first.</summary>
    public List<StrokePair> Changes()
    {
        var chords = _strokes.FindAll(s => !s.IsBass);
        var found = new List<(HandStroke, HandStroke, HandStroke, HandStroke)>();
        for (var i = 1; i < chords.Count; i++)
        {
            var (before, after) = (chords[i - 1], chords[i]);
            if (!before.Keys.Equals(after.Keys) && after.Bar - before.Bar <= 1)
            {
                found.Add((before, after, before, after));
            }
        }
        return Grouped(found, p => Travel(p.From, p.To) * Often(p));
    }

    // What comes often is worth more than what comes once: a quarter more for each doubling (common practice).
    private static double Often(StrokePair pair) => 1 + 0.25 * Math.Log2(pair.Bars.Count);

    // Semitones that the fingers travel, lowest to lowest and so on up.
    private static double Travel(HandStroke from, HandStroke to) =>
        Enumerable
            .Range(0, Math.Max(from.Keys.Count, to.Keys.Count))
            .Sum(i => Math.Abs(from.Keys[Math.Min(i, from.Keys.Count - 1)] - to.Keys[Math.Min(i, to.Keys.Count - 1)]));

    private List<StrokePair> Grouped(
        List<(HandStroke From, HandStroke To, HandStroke First, HandStroke Second)> found,
        Func<StrokePair, double> weight
    ) =>
        [
            .. found
                .GroupBy(f => (f.From.Keys, f.To.Keys))
                .Select(g =>
                {
                    var nearest = g.MinBy(f => f.Second.Start - f.First.Start);
                    var apart = nearest.Second.Start - nearest.First.Start;
                    var seconds = apart.ToQuarters() * 60 / pace.Quarters(pace.BeatsPerMinute);
                    var mm = _keyboard.Distance(nearest.From.Low.Midi, nearest.To.Low.Midi);
                    return new StrokePair(
                        nearest.From,
                        nearest.To,
                        apart,
                        seconds,
                        Leap.Rate(mm, seconds, _keyboard),
                        g.Select(f => f.First.Bar).ToValueList(),
                        g.First().Second.Bar
                    );
                })
                .OrderByDescending(weight)
                .ThenByDescending(p => p.Bars.Count)
                .ThenBy(p => p.Bars[0]),
        ];
}
