using System.Globalization;

namespace Stridewright.Music;

/// <summary>How a metre is printed.</summary>
public enum MetreSign
{
    Numbers,
    Common,
    Cut,
}

/// <summary>A metre such as 6/8: how many units a bar has, and the unit's part of a whole note (a power of two).</summary>
public readonly record struct Metre(int Count, int Unit, MetreSign Sign = MetreSign.Numbers)
{
    public static readonly Metre TwoFour = new(2, 4);
    public static readonly Metre ThreeFour = new(3, 4);
    public static readonly Metre FourFour = new(4, 4);
    public static readonly Metre SixEight = new(6, 8);

    public ScoreTime BarLength => new(Count, Unit);

    /// <summary>True for 6/8, 9/8, 12/8, 6/4 and the like, whose beat is three units.</summary>
    public bool IsCompound => Count > 3 && Count % 3 == 0 && Unit >= 4;

    /// <summary>The beat: three units in compound metres, else one unit.</summary>
    public ScoreTime Beat => IsCompound ? new(3, Unit) : new(1, Unit);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Count}/{Unit}");
}
