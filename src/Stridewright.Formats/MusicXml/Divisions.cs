using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>The smallest number of divisions of a quarter note that holds every time of a score.</summary>
internal sealed record Divisions(long PerQuarter)
{
    public static Divisions Of(Score score)
    {
        long divisions = 1;
        void Take(ScoreTime time)
        {
            var below = (time * 4).Denominator;
            var (a, b) = (divisions, below);
            while (b != 0)
            {
                (a, b) = (b, a % b);
            }
            divisions *= below / a;
        }
        foreach (var bar in score.Bars)
        {
            Take(bar.Length);
            foreach (var e in bar.Voices.SelectMany(v => v.Events))
            {
                Take(e.Length);
            }
            foreach (var at in bar.Chords.Select(c => c.At).Concat(bar.Directions.Select(d => d.At)))
            {
                Take(at);
            }
        }
        return new Divisions(divisions);
    }

    public long Of(ScoreTime time) => (time * 4 * PerQuarter).Numerator;
}
