using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A stretch of the tune that has one harmony: half a bar in duple metres, else a bar.</summary>
/// <param name="Bar">Index of its bar.</param>
/// <param name="At">Place in the written bar.</param>
/// <param name="Start">On the tune's own time line.</param>
/// <param name="End">On the tune's own time line.</param>
/// <param name="Size">Its length in a full bar.</param>
/// <param name="StartsBar">The first of the metre's bar; a pick-up may lack it.</param>
internal readonly record struct HarmonyCut(
    int Bar,
    ScoreTime At,
    ScoreTime Start,
    ScoreTime End,
    ScoreTime Size,
    bool StartsBar
)
{
    public static IEnumerable<HarmonyCut> Of(Tune tune, FlatTune flat)
    {
        for (var b = 0; b < tune.Bars.Count; b++)
        {
            var bar = tune.Bars[b];
            var lead = BarSeams.Lead(tune, b);
            var size = bar.Metre.BarLength / Parts(bar.Metre);
            for (var place = ScoreTime.Zero; place < lead + bar.Length; place += size)
            {
                var from = ScoreTime.Max(place - lead, ScoreTime.Zero);
                var to = ScoreTime.Min(place + size - lead, bar.Length);
                if (to > from)
                {
                    yield return new(b, from, flat.Starts[b] + from, flat.Starts[b] + to, size, place.IsZero);
                }
            }
        }
    }

    /// <summary>How many harmonies a bar has room for.</summary>
    private static int Parts(Metre metre) =>
        metre.BarLength.Per(metre.Beat) is { Denominator: 1, Numerator: 2 or 4 } ? 2 : 1;
}
