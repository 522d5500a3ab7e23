using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>A stroke against the tempo of what was played around it.</summary>
/// <param name="Beats">Quarters from the first note, as written.</param>
/// <param name="Late">Seconds behind that tempo; negative: before it.</param>
public sealed record TimingPoint(Hand Hand, int Bar, double Beats, double Late);

/// <summary>
/// The tempo that was played, as a line through the strokes of both hands around each place: least squares, the nearer the
/// heavier. It follows what is slow (a ritardando), not what is quick (a stroke too early).
/// </summary>
public sealed class PlayedTrend
{
    private const double Reach = 2.5; // quarters to either side
    private const int Fewest = 4; // strokes

    private readonly List<(int Run, double Beats, double Onset, HandStroke Stroke)> _strokes;

    internal PlayedTrend(Alignment alignment, HandStrokes strokes)
    {
        var swing = new AskedSwing(alignment.Score);
        _strokes =
        [
            .. strokes
                .Right.Concat(strokes.Left)
                .Select(s => (s.Run, Beats: swing.BeatsOf(s.Notes[0]), s.Onset, s))
                .OrderBy(s => s.Run)
                .ThenBy(s => s.Beats),
        ];
        Swing = swing;
    }

    public static PlayedTrend Of(Alignment alignment)
    {
        ArgumentNullException.ThrowIfNull(alignment);
        return new(alignment, new HandStrokes(alignment));
    }

    private AskedSwing Swing { get; }

    /// <summary>When a note is due in a stretch of the take, in seconds; null: too little was played around it.</summary>
    public double? At(int run, ExpectedNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return Line(run, Swing.BeatsOf(note), without: -1);
    }

    /// <summary>Every stroke of which the tempo around it is known, each hand's in the order of the take.</summary>
    public ValueList<TimingPoint> Points() =>
        _strokes
            .Select((s, i) => (s.Stroke, Due: Line(s.Run, s.Beats, i)))
            .Where(s => s.Due is not null)
            .Select(s => new TimingPoint(
                s.Stroke.Notes[0].Hand,
                s.Stroke.Bar,
                s.Stroke.Beats,
                s.Stroke.Onset - s.Due!.Value
            ))
            .ToValueList();

    private double? Line(int run, double beats, int without)
    {
        var (count, weight, x, y, xx, xy) = (0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = First(run, beats - Reach); i < _strokes.Count; i++)
        {
            var s = _strokes[i];
            if (s.Run != run || s.Beats > beats + Reach)
            {
                break;
            }
            if (i == without)
            {
                continue;
            }
            var (w, b) = (1 - Math.Abs(s.Beats - beats) / (Reach + 0.5), s.Beats - beats);
            count++;
            (weight, x, y, xx, xy) = (weight + w, x + w * b, y + w * s.Onset, xx + w * b * b, xy + w * b * s.Onset);
        }
        var spread = weight * xx - x * x;
        return count < Fewest || spread < 1e-9 ? null : (y * xx - x * xy) / spread;
    }

    private int First(int run, double beats)
    {
        var (low, high) = (0, _strokes.Count);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var s = _strokes[middle];
            (low, high) = s.Run < run || (s.Run == run && s.Beats < beats) ? (middle + 1, high) : (low, middle);
        }
        return low;
    }
}
