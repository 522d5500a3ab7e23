using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// What it costs the left hand to follow one shape with another: the way in millimetres against time, and the line that
/// basses and chords make. All prices in thousandths of a natural logarithm.
/// </summary>
internal sealed class LeftMoves(Stage stage)
{
    /// <summary>Taken only where nothing else will do.</summary>
    public const long Forced = 40_000;
    private const double DriftKeys = 3;
    private const int FirstOfOctaves = 4;
    private readonly Reach _reach = stage.LeftReach;
    private readonly Reach _usualReach = new(
        new PlayerHands
        {
            SpanMm = Math.Max(stage.LeftReach.SpanMm, new PlayerHands().SpanMm),
            OctaveMm = stage.Brief.Hands.OctaveMm,
        }
    );
    private readonly int _level = stage.Brief.LeftLevel;

    // Levels of octaves are played the faster the higher they are. Travel is priced as at one tempo for all of them, so that
    // none is thinner than the one before; and no leap is found that the last level's tempo would take away again.
    private readonly double _pace = PaceOf(stage, FirstOfOctaves - 1),
        _fastest = PaceOf(stage, Brief.HighestLevel);

    // Bits of a leap between two lowest keys, in rows of one left; 0: not reckoned yet, or none.
    private readonly double[]?[] _strideBits = new double[]?[128];

    /// <summary>Prices of going from each shape of a place to each of the next, in rows of one left: travel, the strain of
    /// both, and steps where steps are due.</summary>
    public int[] Between(LeftSlot before, LeftSlot slot, LeftShape[] from, LeftShape[] to)
    {
        var prices = new int[from.Length * to.Length];
        var seconds = (slot.Tick - before.Tick) * stage.SecondsPerTick;
        var limit = stage.LeapLimit(before.Tick, Hand.Left);
        for (var f = 0; f < from.Length; f++)
        {
            for (var t = 0; t < to.Length; t++)
            {
                prices[f * to.Length + t] = checked(
                    (int)(Travel(from[f], to[t], seconds, limit) + Steps(from[f], to[t], slot))
                );
            }
        }
        return prices;
    }

    private long Travel(LeftShape from, LeftShape to, double seconds, double limit)
    {
        if (from.IsRest || to.IsRest)
        {
            return 0;
        }
        // Of broken shapes the last key is left and the first one reached.
        var (fromLow, toHigh) = (from.Low, to.High);
        if (from.Broken)
        {
            fromLow = from.High;
            seconds -= (from.Pitches.Count - 1) * Lattice.TicksPerUnit * stage.SecondsPerTick;
        }
        if (to.Broken)
        {
            toHigh = to.Low;
        }
        var stride = (from.Kind == LeftKind.Chord) != (to.Kind == LeftKind.Chord);
        var shift = Leap.Shift(_reach, fromLow, from.High, to.Low, toHigh);
        var bits = stride ? StrideBits(fromLow, to.Low) : Leap.Bits(shift, _reach.Keyboard);
        var rate = bits / seconds;
        var price = (long)(4 * rate * rate * _pace * _pace);
        if (rate * _fastest > limit)
        {
            price += Forced + (long)(1000 * (rate * _fastest - limit));
        }
        if (from.IsStrained && to.IsStrained)
        {
            price += Forced;
        }
        if (from.Kind == LeftKind.RolledTenth && to.Kind == LeftKind.RolledTenth)
        {
            price += Forced;
        }
        if (to.Kind == LeftKind.Chord && from.Kind != LeftKind.Chord && to.Low <= from.Low)
        {
            price += 3000;
        }
        // The first levels: no leap, the hand may drift by a fourth; then leaps up to an octave.
        if (_level == 1 && shift > 0)
        {
            // By a usual hand's measure: the places are the same for a small one.
            var drift = Leap.Shift(_usualReach, from.Low, from.High, to.Low, to.High);
            price += (drift > DriftKeys * _reach.Keyboard.WhiteKeyMm ? 2000 : 0) + (long)(20 * drift);
        }
        if (_level == 2 && Math.Abs(to.Low - from.Low) > 12)
        {
            price += 6000;
        }
        return price;
    }

    // The tempo of a level beside that of this one.
    private static double PaceOf(Stage stage, int level) =>
        stage.Brief.LeftLevel >= FirstOfOctaves
            ? Feels.Tempo(stage.Lattice.Feel, level) / Feels.Tempo(stage.Lattice.Feel, stage.Brief.LeftLevel)
            : 1;

    private double StrideBits(int from, int to)
    {
        ref var bits = ref (_strideBits[from] ??= new double[128])[to];
        return bits > 0 ? bits : bits = Leap.Bits(_reach.Keyboard.Distance(from, to), _reach.Keyboard);
    }

    private static long Steps(LeftShape from, LeftShape to, LeftSlot slot)
    {
        if (to.Into is not null || from.OnTo is not null)
        {
            var move = to.Low - from.Low;
            if (
                from.IsRest
                || to.IsRest
                || to.Into is { } into && !into.Allows(move)
                || from.OnTo is { } onTo && !onTo.Allows(move)
            )
            {
                return Forced;
            }
        }
        if (!from.MustStep && !to.MustStep)
        {
            return 0;
        }
        if (from.IsRest || to.IsRest)
        {
            return Forced;
        }
        var step = Math.Abs(to.Low - from.Low);
        var steps = step is 1 or 2;
        if (from.MustStep && from.IsRun)
        {
            // A run leads by step, to the new root above all.
            return steps ? (slot.Changes ? -200 : 0) : Forced;
        }
        if (to.IsRun)
        {
            // From the bass into the run: by step, or a third within the chord.
            return steps ? 0
                : step is 3 or 4 ? 700
                : Forced;
        }
        // A walking bass needs the run before or after it.
        return from.IsRun ? 0 : Forced / 4;
    }

    /// <summary>Prices of bass after bass or chord after chord, in rows of one replaced.</summary>
    public static int[] Lines(LeftSlot slot, LeftShape[] from, LeftShape[] to, int index)
    {
        var prices = new int[from.Length * to.Length];
        for (var f = 0; f < from.Length; f++)
        {
            for (var t = 0; t < to.Length; t++)
            {
                if (!from[f].IsRest && !to[t].IsRest && index > 0)
                {
                    var line = slot.IsBass ? BassLine(slot, from[f], to[t]) : ChordLine(from[f], to[t]);
                    prices[f * to.Length + t] = checked((int)line);
                }
            }
        }
        return prices;
    }

    private static long BassLine(LeftSlot slot, LeftShape from, LeftShape to)
    {
        var interval = to.Low - from.Low;
        var price = from.Kind != to.Kind && !slot.First ? 350L : 0;
        if (!slot.First)
        {
            return price
                + interval switch
                {
                    -5 => 0,
                    -7 => 50,
                    0 => 350,
                    -4 or 4 => 500,
                    -3 or 3 => 600,
                    5 => 700,
                    7 => 700,
                    1 or 2 or -1 or -2 => 500,
                    -12 or 12 => 1200,
                    _ => 1200 + 100 * Math.Max(0, Math.Abs(interval) - 7),
                };
        }
        return price
            + Math.Abs(interval) switch
            {
                0 => 2000,
                1 or 2 => 0,
                5 or 7 => 450,
                12 => 2200,
                var wide => 300 + 120 * Math.Max(0, wide - 7),
            };
    }

    public static long ChordLine(LeftShape from, LeftShape to)
    {
        if (to.IsRun)
        {
            return !from.IsRun ? 1500
                : from.Kind == to.Kind ? 0
                : 800;
        }
        if (from.Kind != LeftKind.Chord)
        {
            return 0;
        }
        var distance = VoiceLeading.Registered(from.Pitches, to.Pitches);
        if (distance == 0 && from.Pitches.Equals(to.Pitches))
        {
            return 0;
        }
        return 250 + 60 * distance + (from.Pitches.Count != to.Pitches.Count ? 300 : 0);
    }
}
