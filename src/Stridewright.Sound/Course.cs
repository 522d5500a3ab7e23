using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>Tempo, metre, key, swing and loudness over a score as played. Times are from the start, as played.</summary>
internal sealed class Course
{
    // Fastest and slowest tempo that a MIDI file can say, in microseconds a quarter.
    private const double Fastest = 1;
    private const double Slowest = 0xFFFFFF;

    private readonly List<ScoreTime> _starts = [];
    private readonly List<ScoreBar> _bars = [];
    private readonly List<(ScoreTime At, (int Long, int Short) Value)> _swings = [];
    private readonly List<(ScoreTime At, int Value)> _dynamics = [];
    private readonly List<TempoChange> _tempi = [];
    private readonly List<MetreChange> _metres = [];
    private readonly List<KeyChange> _keys = [];
    private readonly List<PedalChange> _pedal = [];
    private ScoreTime _end;

    private Course() { }

    public static Course Of(Score score, ValueList<int> order)
    {
        var course = new Course();
        foreach (var index in order)
        {
            course.Add(score.Bars[index]);
        }
        if (course._tempi.Count == 0 || course._tempi[0].Tick > 0)
        {
            course._tempi.Insert(0, new TempoChange(0, MicrosecondsOf(Performer.DefaultTempo)));
        }
        return course;
    }

    public ValueList<TempoChange> Tempi => _tempi.ToValueList();

    public ValueList<MetreChange> Metres => _metres.ToValueList();

    public ValueList<KeyChange> Keys => _keys.ToValueList();

    public ValueList<PedalChange> Pedal => _pedal.ToValueList();

    public long EndTick => TickOf(_end);

    public static long TickOf(ScoreTime time) => time.Round(new ScoreTime(1, 4 * Performer.TicksPerQuarter));

    /// <summary>Tick of a place as a hand plays it: the right hand swings its off-beat eighths, the left is straight.
    /// What lies within a swung pair is stretched with it.</summary>
    public long TickOf(ScoreTime time, Hand hand)
    {
        if (hand == Hand.Left || Last(_swings, time) is not { Long: > 0, Short: > 0 } swing)
        {
            return TickOf(time);
        }
        var place = PlaceInFullBar(time);
        var inBeat = place - Floor(place, ScoreTime.Quarter);
        // Only places of the binary grid: a written triplet is played as it stands.
        if (!long.IsPow2(inBeat.Denominator))
        {
            return TickOf(time);
        }
        var turn = new ScoreTime(swing.Long, 4L * (swing.Long + swing.Short));
        var swung =
            inBeat <= ScoreTime.Eighth
                ? inBeat * 8 * turn
                : turn + (inBeat - ScoreTime.Eighth) * 8 * (ScoreTime.Quarter - turn);
        return TickOf(time - inBeat + swung);
    }

    /// <summary>Ticks of some milliseconds at a tick.</summary>
    public double TicksIn(double milliseconds, long tick)
    {
        var tempo = _tempi.FindLast(t => t.Tick <= tick) ?? _tempi[0];
        return milliseconds * 1000 * Performer.TicksPerQuarter / tempo.MicrosecondsPerQuarter;
    }

    /// <summary>Loudness in force, as a velocity.</summary>
    public int LoudnessAt(ScoreTime time) => Last(_dynamics, time) ?? Loudness.Usual;

    public bool IsOnBeat(ScoreTime time) => PlaceInFullBar(time).IsMultipleOf(_bars[BarAt(time)].Metre.Beat);

    /// <summary>True where the left hand has its basses: halves of the bar in even metres, dotted beats, else the bar's
    /// start (common practice).</summary>
    public bool IsOnBassBeat(ScoreTime time)
    {
        var metre = _bars[BarAt(time)].Metre;
        return PlaceInFullBar(time)
            .IsMultipleOf(
                metre.IsCompound ? metre.Beat
                : metre.Count % 2 == 0 ? metre.BarLength / 2
                : metre.BarLength
            );
    }

    /// <summary>Place in the full bar of its metre: a pick-up's places count towards the bar's end.</summary>
    public ScoreTime PlaceInFullBar(ScoreTime time)
    {
        var index = BarAt(time);
        var bar = _bars[index];
        var missing = bar.Implicit ? ScoreTime.Max(ScoreTime.Zero, bar.Metre.BarLength - bar.Length) : ScoreTime.Zero;
        return time - _starts[index] + missing;
    }

    private int BarAt(ScoreTime time)
    {
        var found = _starts.BinarySearch(time);
        return found >= 0 ? found : Math.Max(0, ~found - 1);
    }

    private void Add(ScoreBar bar)
    {
        var tick = TickOf(_end);
        var metre = PlayedMetre(bar);
        if (_metres.Count == 0 || _metres[^1].Metre != metre)
        {
            _metres.Add(new MetreChange(tick, metre));
        }
        if (_keys.Count == 0 || _keys[^1].Key != bar.Key)
        {
            _keys.Add(new KeyChange(tick, bar.Key));
        }
        foreach (var direction in bar.Directions.OrderBy(d => d.At))
        {
            Add(direction, _end + direction.At);
        }
        _starts.Add(_end);
        _bars.Add(bar);
        _end += bar.Length;
    }

    private void Add(Direction direction, ScoreTime at)
    {
        if (direction.QuartersPerMinute is { } quarters && quarters > 0)
        {
            var change = new TempoChange(TickOf(at), MicrosecondsOf(quarters));
            if (_tempi.Count == 0 || _tempi[^1].MicrosecondsPerQuarter != change.MicrosecondsPerQuarter)
            {
                _tempi.RemoveAll(t => t.Tick >= change.Tick);
                _tempi.Add(change);
            }
        }
        if (direction.Swing is { } swing)
        {
            _swings.Add((at, swing));
        }
        if (direction.Pedal is { } down)
        {
            _pedal.Add(new PedalChange(TickOf(at), down));
        }
        if (Loudness.Of(direction.Dynamic) is { } loudness)
        {
            _dynamics.Add((at, loudness));
        }
    }

    /// <summary>A bar shorter than its metre is told as a short metre, so that the bars after it fall right.</summary>
    private static Metre PlayedMetre(ScoreBar bar)
    {
        var units = bar.Length * bar.Metre.Unit;
        if (bar.Length == bar.Metre.BarLength || bar.Length.Numerator > 255 || !long.IsPow2(bar.Length.Denominator))
        {
            return bar.Metre;
        }
        return units.Denominator == 1 && units.Numerator <= 255
            ? new Metre((int)units.Numerator, bar.Metre.Unit)
            : new Metre((int)bar.Length.Numerator, (int)bar.Length.Denominator);
    }

    private static int MicrosecondsOf(double quartersPerMinute) =>
        (int)Math.Round(Math.Clamp(60e6 / quartersPerMinute, Fastest, Slowest));

    private static T? Last<T>(List<(ScoreTime At, T Value)> list, ScoreTime time)
        where T : struct
    {
        var found = list.FindLastIndex(x => x.At <= time);
        return found >= 0 ? list[found].Value : null;
    }

    private static ScoreTime Floor(ScoreTime time, ScoreTime unit)
    {
        var ratio = time.Per(unit);
        return unit * (ratio.Numerator / ratio.Denominator);
    }
}
