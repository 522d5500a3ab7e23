using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>
/// Plays a score: repeats unfolded, 480 ticks to a quarter. Strokes fall exactly on their written places but for swing,
/// rolled chords and crushed notes; what makes it sound played is how loud and how long they are.
/// </summary>
public static class Performer
{
    public const int TicksPerQuarter = 480;

    /// <summary>Tempo of a score that gives none, in quarters per minute (Standard MIDI File 1.0).</summary>
    public const double DefaultTempo = 120;

    /// <summary>The performance of a score. The same score always gives the same performance.</summary>
    public static Performance Perform(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        var order = Timeline.PlayOrder(score);
        var course = Course.Of(score, order);
        var strokes = new List<KeyStroke>();
        foreach (var chord in Chords(Timeline.Strike(score, order)))
        {
            StrokeMaker.Add(strokes, course, chord);
        }
        var played = Releases.BeforeRestrikes(strokes);
        return new Performance
        {
            TicksPerQuarter = TicksPerQuarter,
            Title = score.Title,
            Strokes = played,
            Pedal = course.Pedal,
            Tempi = course.Tempi,
            Metres = course.Metres,
            Keys = course.Keys,
            EndTick = played.Aggregate(course.EndTick, (end, s) => Math.Max(end, s.Tick + s.Length)),
        };
    }

    /// <summary>Notes of the same event, lowest first: tied events strike nothing.</summary>
    private static IEnumerable<List<StruckNote>> Chords(IReadOnlyList<StruckNote> notes) =>
        notes
            .GroupBy(n => (n.Sounding.Start, n.Voice.Hand, n.Voice.Number))
            .Select(g => g.OrderBy(n => n.Sounding.Key).ToList());
}
