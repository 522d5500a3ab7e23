using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>How the sustain pedal was used.</summary>
internal static class PedalMeasure
{
    private const double After = 0.25; // quarters after an asked place at which the pedal is looked at

    /// <summary>Null: it was neither used nor asked for.</summary>
    public static PedalHeard? Of(Alignment alignment, HandStrokes strokes, BeatLine line)
    {
        var (pedal, notes) = (alignment.Take.Pedal, alignment.Take.Notes);
        var asked = Asked(alignment, line);
        if (notes.Count == 0 || (pedal.Count == 0 && asked.Count == 0))
        {
            return null;
        }
        var (from, to) = (notes[0].Onset, notes[^1].Release);
        var down = pedal.Sum(p => Math.Max(0, Math.Min(p.Up, to) - Math.Max(p.Down, from)));
        return new PedalHeard(
            pedal.Count,
            to > from ? Math.Min(1, down / (to - from)) : 0,
            asked.Count,
            asked.Count(at => pedal.Any(p => p.Down <= at && at < p.Up)),
            Blurred(pedal, strokes).ToValueList()
        );
    }

    // When the pedal should be down, by what the score says where it was played.
    private static List<double> Asked(Alignment alignment, BeatLine line)
    {
        var places = new List<double>();
        foreach (var bar in alignment.Score.Bars)
        {
            places.AddRange(
                bar.Bar.Directions.Where(d => d.Pedal is true).Select(d => bar.Start + d.At.ToQuarters() + After)
            );
        }
        return
        [
            .. Enumerable
                .Range(0, alignment.Runs.Count)
                .SelectMany(run => places.Select(place => line.At(run, place)))
                .OfType<double>(),
        ];
    }

    // Bars whose bass, another than before, is struck into a pedal that was down well before it and stays down well after.
    private static IEnumerable<int> Blurred(ValueList<PedalHeld> pedal, HandStrokes strokes)
    {
        var firsts = strokes.Left.GroupBy(s => (s.Run, s.Bar)).Select(g => g.First()).ToList();
        for (var i = 1; i < firsts.Count; i++)
        {
            var (before, now) = (firsts[i - 1], firsts[i]);
            if (
                now.Run == before.Run
                && now.Bar == before.Bar + 1
                && (now.Low - before.Low) % 12 != 0
                && now.Beats > before.Beats
            )
            {
                var room = Thresholds.Blurred.Value * (now.Onset - before.Onset) / (now.Beats - before.Beats);
                if (pedal.Any(p => p.Down <= now.Onset - room && p.Up >= now.Onset + room))
                {
                    yield return now.Bar;
                }
            }
        }
    }
}
