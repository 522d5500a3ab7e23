using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>How far a harmony agrees with another of the same tune, beat by beat.</summary>
/// <param name="Beats">Beats on which both have a chord.</param>
/// <param name="Roots">Of these, with the same root.</param>
/// <param name="Shared">Of these, with two tones or more in common.</param>
public sealed record HarmonyAgreement(int Beats, int Roots, int Shared)
{
    public static HarmonyAgreement None { get; } = new(0, 0, 0);

    public double RootShare => Beats == 0 ? 0 : (double)Roots / Beats;

    public double SharedShare => Beats == 0 ? 0 : (double)Shared / Beats;

    public HarmonyAgreement Plus(HarmonyAgreement other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(Beats + other.Beats, Roots + other.Roots, Shared + other.Shared);
    }

    /// <summary>Holds the chords of <paramref name="found"/> against those of <paramref name="printed"/>: two tunes of the
    /// same bars. Beats before the first printed chord and under no chord are not counted.</summary>
    public static HarmonyAgreement Of(Tune printed, Tune found)
    {
        ArgumentNullException.ThrowIfNull(printed);
        ArgumentNullException.ThrowIfNull(found);
        var (wanted, given) = (FlatTune.Of(printed), FlatTune.Of(found));
        int beats = 0,
            roots = 0,
            shared = 0;
        for (var b = 0; b < printed.Bars.Count; b++)
        {
            var bar = printed.Bars[b];
            var lead = BarSeams.Lead(printed, b);
            for (var at = ScoreTime.Zero; at < lead + bar.Length; at += bar.Metre.Beat)
            {
                var place = wanted.Starts[b] + at - lead;
                if (
                    at >= lead
                    && wanted.ChordAt(place) is { IsNoChord: false } one
                    && given.ChordAt(place) is { IsNoChord: false } two
                )
                {
                    beats++;
                    roots += one.Root.PitchClass == two.Root.PitchClass ? 1 : 0;
                    shared += int.PopCount(one.PitchClassSet & two.PitchClassSet) >= 2 ? 1 : 0;
                }
            }
        }
        return new(beats, roots, shared);
    }
}
