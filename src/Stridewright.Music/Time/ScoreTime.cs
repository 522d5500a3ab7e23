using System.Globalization;
using System.Numerics;

namespace Stridewright.Music;

/// <summary>
/// Exact score time, place or length, as a fraction of a whole note in lowest terms: 1/4 is a quarter note.
/// <c>default</c> is zero. Any result must fit 63-bit terms; overflow throws, and readers bound what they take in.
/// </summary>
public readonly struct ScoreTime
    : IEquatable<ScoreTime>,
        IComparable<ScoreTime>,
        IAdditionOperators<ScoreTime, ScoreTime, ScoreTime>,
        ISubtractionOperators<ScoreTime, ScoreTime, ScoreTime>,
        IComparisonOperators<ScoreTime, ScoreTime, bool>
{
    private readonly long _below; // denominator less one, so that default is 0/1

    public ScoreTime(long numerator, long denominator)
    {
        ArgumentOutOfRangeException.ThrowIfZero(denominator);
        if (denominator < 0)
        {
            (numerator, denominator) = (-numerator, -denominator);
        }
        var divisor = Divisor(Math.Abs(numerator), denominator);
        Numerator = numerator / divisor;
        _below = denominator / divisor - 1;
    }

    public static readonly ScoreTime Zero;
    public static readonly ScoreTime Whole = new(1, 1);
    public static readonly ScoreTime Half = new(1, 2);
    public static readonly ScoreTime Quarter = new(1, 4);
    public static readonly ScoreTime Eighth = new(1, 8);
    public static readonly ScoreTime Sixteenth = new(1, 16);

    public long Numerator { get; }

    public long Denominator => _below + 1;

    public bool IsZero => Numerator == 0;

    /// <summary>Length in quarter notes, for display and for seconds; not exact.</summary>
    public double ToQuarters() => 4.0 * Numerator / Denominator;

    /// <summary>How many times <paramref name="unit"/> goes into this time, exactly.</summary>
    public ScoreTime Per(ScoreTime unit) =>
        new(checked(Numerator * unit.Denominator), checked(Denominator * unit.Numerator));

    /// <summary>Whole multiples of <paramref name="unit"/>, rounded to the nearest (half up).</summary>
    public long Round(ScoreTime unit)
    {
        var ratio = Per(unit);
        return FloorDivide(2 * ratio.Numerator + ratio.Denominator, 2 * ratio.Denominator);
    }

    /// <summary>True when this is a whole multiple of <paramref name="unit"/>.</summary>
    public bool IsMultipleOf(ScoreTime unit) => Per(unit).Denominator == 1;

    public static ScoreTime Min(ScoreTime a, ScoreTime b) => a < b ? a : b;

    public static ScoreTime Max(ScoreTime a, ScoreTime b) => a > b ? a : b;

    public static ScoreTime operator +(ScoreTime a, ScoreTime b) =>
        a.Denominator == b.Denominator
            ? new(checked(a.Numerator + b.Numerator), a.Denominator)
            : new(
                checked(a.Numerator * b.Denominator + b.Numerator * a.Denominator),
                checked(a.Denominator * b.Denominator)
            );

    public static ScoreTime operator -(ScoreTime a) => new(-a.Numerator, a.Denominator);

    public static ScoreTime operator -(ScoreTime a, ScoreTime b) => a + -b;

    public static ScoreTime operator *(ScoreTime a, long factor) => new(checked(a.Numerator * factor), a.Denominator);

    public static ScoreTime operator *(ScoreTime a, ScoreTime b) =>
        new(checked(a.Numerator * b.Numerator), checked(a.Denominator * b.Denominator));

    public static ScoreTime operator /(ScoreTime a, long by) => new(a.Numerator, checked(a.Denominator * by));

    public static bool operator <(ScoreTime a, ScoreTime b) => a.CompareTo(b) < 0;

    public static bool operator >(ScoreTime a, ScoreTime b) => a.CompareTo(b) > 0;

    public static bool operator <=(ScoreTime a, ScoreTime b) => a.CompareTo(b) <= 0;

    public static bool operator >=(ScoreTime a, ScoreTime b) => a.CompareTo(b) >= 0;

    public static bool operator ==(ScoreTime a, ScoreTime b) => a.Equals(b);

    public static bool operator !=(ScoreTime a, ScoreTime b) => !a.Equals(b);

    public int CompareTo(ScoreTime other) =>
        Denominator == other.Denominator
            ? Numerator.CompareTo(other.Numerator)
            : ((Int128)Numerator * other.Denominator).CompareTo((Int128)other.Numerator * Denominator);

    public bool Equals(ScoreTime other) => Numerator == other.Numerator && _below == other._below;

    public override bool Equals(object? obj) => obj is ScoreTime other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(Numerator, _below);

    /// <summary>Fraction of a whole note, such as <c>3/8</c> or <c>2</c>.</summary>
    public override string ToString() =>
        Denominator == 1
            ? Numerator.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{Numerator}/{Denominator}");

    private static long Divisor(long a, long b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }
        return a == 0 ? 1 : a;
    }

    private static long FloorDivide(long a, long b) => a / b - (a % b != 0 && (a < 0) != (b < 0) ? 1 : 0);
}
