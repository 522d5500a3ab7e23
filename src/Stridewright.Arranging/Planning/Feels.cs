using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Which feel fits which metre, and how each goes.</summary>
public static class Feels
{
    /// <summary>The metre that settings in this feel are printed in.</summary>
    public static Metre UsualMetre(Feel feel) =>
        feel switch
        {
            Feel.Classic => Metre.TwoFour,
            Feel.Stride => Metre.FourFour,
            Feel.Waltz => Metre.ThreeFour,
            _ => Metre.SixEight,
        };

    /// <summary>The metre that a setting of a tune in some metre is printed in.</summary>
    internal static Metre SettingMetre(Feel feel, Metre metre) =>
        feel is Feel.Classic or Feel.Stride ? UsualMetre(feel) : metre;

    /// <summary>2/4, 4/4 and 2/2: settings on half bars of four units.</summary>
    internal static bool IsDuple(Metre metre) =>
        metre is { Count: 2, Unit: 4 } or { Count: 4, Unit: 4 } or { Count: 2, Unit: 2 };

    /// <summary>2/4, 4/4, 2/2, 3/4 and 6/8: the metres this music is written in.</summary>
    internal static bool IsUsual(Metre metre) =>
        IsDuple(metre) || metre is { Count: 3, Unit: 4 } or { Count: 6, Unit: 8 };

    /// <summary>The feel taken when the brief names none. Metres other than 2/4, 4/4, 2/2, 3/4 and 6/8 are arranged in
    /// their own groove, three-timed ones as a waltz, compound ones as a march.</summary>
    internal static Feel For(Metre metre) =>
        IsDuple(metre) ? Feel.Classic
        : metre.IsCompound ? Feel.SixEight
        : Feel.Waltz;

    /// <summary>The same where somebody sings: a song in 4/4 or 2/2 keeps its note values, as stride.</summary>
    internal static Feel UnderVoice(Metre metre) =>
        IsDuple(metre) && metre.BarLength == Metre.FourFour.BarLength ? Feel.Stride : For(metre);

    /// <summary>True when a tune in this metre can be set in this feel.</summary>
    internal static bool Fit(Feel feel, Metre metre) =>
        feel switch
        {
            Feel.Classic or Feel.Stride => IsDuple(metre),
            Feel.SixEight => metre.IsCompound,
            _ => !IsDuple(metre) && !metre.IsCompound,
        };

    /// <summary>The metre that most of a tune is in.</summary>
    internal static Metre MainMetre(Tune tune) =>
        tune
            .Bars.GroupBy(b => b.Metre)
            .OrderByDescending(g => g.Count())
            .ThenBy(g => g.Key.ToString(), StringComparer.Ordinal)
            .First()
            .Key;

    /// <summary>
    /// Tempo in printed beats per minute for the harder hand's level: slow for the first levels, performance tempo at
    /// the fifth (2/4: learner's ladder 60–72 working, 76–96 performance, common practice).
    /// </summary>
    internal static double Tempo(Feel feel, int level) =>
        feel switch
        {
            Feel.Classic => (ReadOnlySpan<double>)[60, 66, 72, 80, 88, 92] is var t ? t[level - 1] : 0,
            Feel.Stride => (ReadOnlySpan<double>)[100, 112, 126, 144, 160, 172] is var t ? t[level - 1] : 0,
            Feel.Waltz => (ReadOnlySpan<double>)[96, 104, 112, 120, 132, 138] is var t ? t[level - 1] : 0,
            _ => (ReadOnlySpan<double>)[66, 72, 80, 88, 96, 100] is var t ? t[level - 1] : 0,
        };

    /// <summary>The beat that the tempo counts.</summary>
    internal static NoteValue BeatUnit(Metre metre) =>
        metre.IsCompound ? new NoteValue(metre.Unit / 2, 1) : new NoteValue(metre.Unit == 2 ? 2 : 4);
}
