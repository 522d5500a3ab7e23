using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>Harmonies without a thought, to hold a found one against.</summary>
internal static class Baselines
{
    /// <summary>The printed key's tonic throughout.</summary>
    public static Tune Tonic(Tune tune) => Each(tune, bar => Triad(bar.Key.Tonic, bar.Key.IsMinor));

    /// <summary>Per bar the key's triad whose tones sound longest in it.</summary>
    public static Tune BestTriad(Tune tune) =>
        Each(
            tune,
            bar =>
                Triads(bar.Key)
                    .MaxBy(t =>
                        bar.Notes.Sum(n =>
                            (t.PitchClassSet >> n.Pitch.Tone.PitchClass & 1) == 1 ? n.Length.ToQuarters() : 0
                        )
                    )!
        );

    private static IEnumerable<ChordSymbol> Triads(Key key)
    {
        foreach (var step in Enum.GetValues<Step>().OrderBy(s => s == key.Tonic.Step ? 0 : 1))
        {
            var root = key.ToneOf(step);
            yield return Triad(root, !key.Contains(root.Plus(new Interval(2, 4))));
        }
    }

    private static ChordSymbol Triad(Tone root, bool minor) => new(root, minor ? ChordKind.Minor : ChordKind.Major);

    private static Tune Each(Tune tune, Func<TuneBar, ChordSymbol> chord) =>
        tune with
        {
            Bars = tune.Bars.Select(b => b with { Chords = [new PlacedChord(ScoreTime.Zero, chord(b))] }).ToValueList(),
        };
}
