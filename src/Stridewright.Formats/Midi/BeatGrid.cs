using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// The places that notes are put on: each beat is divided as its notes suggest. In a file that was written rather than
/// played (nine tenths of its notes stand exactly on some division), a beat gets the plainest division that holds all its
/// notes exactly. In one that was played it gets sixteenths or triplets, whichever lies nearer, and a finer one only
/// where notes come quicker than these.
/// </summary>
internal sealed class BeatGrid
{
    private const double WrittenShare = 0.9;

    // Notes nearer than this are struck together, in quarters.
    private const double Together = 1 / 16.0;

    // What one note in the place of another costs, in square quarters: more than any note can be moved.
    private const double Collision = 0.05;

    // In the order of trying, what a division costs beside what it moves: plain ones are meant more often.
    private static readonly double[] Prices = [0, 0.001, 0.003, 0.003, 0.006, 0.01];

    private readonly BarPlan _plan;
    private readonly int _ticksPerQuarter;
    private readonly double _exact;
    private readonly bool _written;
    private readonly Dictionary<ScoreTime, int> _divisions = []; // of each beat with notes, by its start

    public BeatGrid(BarPlan plan, int ticksPerQuarter, IEnumerable<long> ticks)
    {
        _plan = plan;
        _ticksPerQuarter = ticksPerQuarter;
        // A tick, but no less than 1/240 and no more than 1/48 of a quarter.
        _exact = Math.Max(1 / 240.0, Math.Min(1.0 / ticksPerQuarter, 1 / 48.0)) + 1e-9;
        var beats = ticks.Distinct().Select(Time).GroupBy(BeatAt).ToList();
        var all = beats.Sum(b => b.Count());
        _written = all > 0 && beats.Sum(b => b.Count(t => IsExact(b.Key, t))) >= WrittenShare * all;
        foreach (var beat in beats)
        {
            _divisions.Add(beat.Key.Start, Divide(beat.Key, beat.Order().ToArray()));
        }
    }

    public ScoreTime Time(long tick) => new(tick, 4L * _ticksPerQuarter);

    /// <summary>The nearest place of the grid.</summary>
    public ScoreTime Place(long tick)
    {
        var time = Time(tick);
        var beat = BeatAt(time);
        return Nearest(beat, time, _divisions.GetValueOrDefault(beat.Start, beat.Divisions[0]));
    }

    /// <summary>The place of the grid that a time stands on exactly; null: on none.</summary>
    public ScoreTime? ExactPlace(long tick)
    {
        var place = Place(tick);
        return Math.Abs((place - Time(tick)).ToQuarters()) <= _exact ? place : null;
    }

    /// <summary>The shortest step of the grid at a place.</summary>
    public ScoreTime Step(ScoreTime place)
    {
        var beat = BeatAt(place);
        return beat.Length / _divisions.GetValueOrDefault(beat.Start, beat.Divisions[0]);
    }

    private int Divide(Beat beat, ScoreTime[] times)
    {
        var exact = _written
            ? Array.Find(beat.Divisions, d => Array.TrueForAll(times, t => Away(beat, t, d) <= _exact))
            : 0;
        return exact > 0
            ? exact
            : beat
                .Divisions.Select((d, i) => (Division: d, Price: Price(beat, times, d) + Prices[i]))
                .MinBy(d => d.Price)
                .Division;
    }

    private static double Price(Beat beat, ScoreTime[] times, int division)
    {
        var price = 0.0;
        for (var i = 0; i < times.Length; i++)
        {
            var away = Away(beat, times[i], division);
            price += away * away;
            if (
                i > 0
                && (times[i] - times[i - 1]).ToQuarters() > Together
                && Nearest(beat, times[i], division) == Nearest(beat, times[i - 1], division)
            )
            {
                price += Collision;
            }
        }
        return price;
    }

    private bool IsExact(Beat beat, ScoreTime time) => Array.Exists(beat.Divisions, d => Away(beat, time, d) <= _exact);

    // In quarters.
    private static double Away(Beat beat, ScoreTime time, int division) =>
        Math.Abs((Nearest(beat, time, division) - time).ToQuarters());

    private static ScoreTime Nearest(Beat beat, ScoreTime time, int division)
    {
        var step = beat.Length / division;
        return beat.Start + step * (time - beat.Start).Round(step);
    }

    private Beat BeatAt(ScoreTime time)
    {
        var bar = _plan.At(time);
        var length = BeatLength(bar.Metre);
        var beats = (time - bar.Start).Per(length);
        return new(bar.Start + length * (beats.Numerator / beats.Denominator), length);
    }

    // A quarter, in compound time a dotted quarter, and one unit in metres such as 5/8.
    private static ScoreTime BeatLength(Metre metre) =>
        metre.Unit <= 4 ? ScoreTime.Quarter
        : metre.IsCompound ? metre.Beat
        : new ScoreTime(1, metre.Unit);

    private readonly record struct Beat(ScoreTime Start, ScoreTime Length)
    {
        private static readonly int[] OfQuarter = [4, 3, 8, 6, 12, 16];
        private static readonly int[] OfDotted = [6, 4, 12, 9, 18, 24];
        private static readonly int[] OfEighth = [2, 3, 4, 6, 8];
        private static readonly int[] OfOther = [3, 2, 6, 4, 12];

        /// <summary>Into how many parts the beat may fall, the plainest first: sixteenths, then triplets (in compound
        /// time four in a beat), then those halved, and finer ones.</summary>
        public int[] Divisions =>
            Length == ScoreTime.Quarter ? OfQuarter
            : Length == new ScoreTime(3, 8) ? OfDotted
            : Length == ScoreTime.Eighth ? OfEighth
            : OfOther;
    }
}
