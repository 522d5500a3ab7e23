using CsCheck;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>What a level and a wish promise of every tune.</summary>
public sealed class LevelLaws
{
    [Fact]
    public void Raggedness_nought_strikes_the_tune_in_its_places_and_nothing_else() =>
        Gen.Select(Tunes.Any, Gen.Int[1, 6])
            .Sample(
                (tune, level) =>
                {
                    var brief = new Brief { RightLevel = level, Raggedness = 0 };
                    if (Arranger.Arrange(tune, brief).Arrangement is not { } arrangement)
                    {
                        return;
                    }
                    var lattice = Lay(tune, brief);
                    var expected = lattice.Notes.Select(n => (lattice.Tick * n.Start, n.Key));
                    Assert.Equal(expected, Onsets(arrangement.Score, Hand.Right).Select(o => (o.Start, o.High)));
                    Assert.All(
                        Onsets(arrangement.Score, Hand.Right),
                        o => Assert.True(level > 3 || o.Low == o.High, $"{o.Low} to {o.High} at level {level}")
                    );
                },
                iter: 80
            );

    [Fact]
    public void The_second_level_leaps_at_most_an_octave() =>
        Tunes.Any.Sample(
            tune =>
            {
                if (
                    Arranger.Arrange(tune, new Brief { LeftLevel = 2, RightLevel = 2 }).Arrangement
                    is not { } arrangement
                )
                {
                    return;
                }
                var lows = Onsets(arrangement.Score, Hand.Left).Select(o => o.Low).ToList();
                Assert.All(lows.Zip(lows.Skip(1)), pair => Assert.InRange(Math.Abs(pair.Second - pair.First), 0, 12));
            },
            iter: 80
        );

    [Fact]
    public void The_first_level_strikes_roots_alone_as_basses() =>
        Tunes.Any.Sample(
            tune =>
            {
                var brief = new Brief { LeftLevel = 1, RightLevel = 1 };
                if (Arranger.Arrange(tune, brief).Arrangement is not { } arrangement)
                {
                    return;
                }
                var lattice = Lay(tune, brief);
                foreach (var onset in Onsets(arrangement.Score, Hand.Left))
                {
                    var tick = (int)onset.Start.Per(lattice.Tick).Numerator;
                    var bar = lattice.Bars[lattice.BarAt(tick)];
                    if (bar.Groove.Basses.Contains(tick - bar.Start))
                    {
                        var due = lattice.ChordAt(tick).Chord;
                        Assert.Equal(onset.Low, onset.High);
                        Assert.True(due.IsNoChord || onset.Low % 12 == due.Lowest.PitchClass, $"{onset} under {due}");
                    }
                }
            },
            iter: 80
        );

    [Fact]
    public void A_tempo_wanted_is_printed_to_the_letter_or_refused() =>
        Gen.Select(Tunes.Any, Gen.Int[30, 220], Gen.Int[1, 6])
            .Sample(
                (tune, tempo, level) =>
                {
                    var brief = new Brief
                    {
                        BeatsPerMinute = tempo,
                        LeftLevel = level,
                        RightLevel = level,
                    };
                    var result = Arranger.Arrange(tune, brief);
                    if (result.Arrangement is { } arrangement)
                    {
                        Assert.Equal(tempo, arrangement.Score.Bars[0].Directions[0].BeatsPerMinute);
                        Assert.Equal(tempo, arrangement.BeatsPerMinute);
                    }
                    else
                    {
                        Assert.NotEmpty(result.Refusal!.Message);
                    }
                },
                iter: 80
            );

    [Fact]
    public void A_key_wanted_is_the_key_of_the_score_in_the_mode_of_the_tune() =>
        Gen.Select(Tunes.Any, Gen.Int[-6, 6])
            .Sample(
                (tune, fifths) =>
                {
                    var tonic = new Tone(fifths);
                    if (Arranger.Arrange(tune, new Brief { Tonic = tonic }).Arrangement is { } arrangement)
                    {
                        var wanted = new Key(tonic, tune.Bars[0].Key.Mode);
                        Assert.All(arrangement.Score.Bars, bar => Assert.Equal(wanted, bar.Key));
                        Assert.Equal(wanted, arrangement.Key);
                    }
                },
                iter: 60
            );

    [Fact]
    public void A_refusal_names_its_bar()
    {
        var refused = 0;
        Gen.Select(Tunes.Any, Gen.Int[150, 400])
            .Sample(
                (tune, tempo) =>
                {
                    if (
                        tune.Bars.Any(b => b.Notes.Count > 0)
                        && Arranger.Arrange(tune, new Brief { BeatsPerMinute = tempo }).Refusal is { } refusal
                    )
                    {
                        Interlocked.Increment(ref refused);
                        Assert.NotEqual(Place.Whole, refusal.Place);
                        Assert.Contains("slower", refusal.Message, StringComparison.Ordinal);
                    }
                },
                iter: 60
            );
        Assert.True(refused > 0);
    }

    private static Lattice Lay(Tune tune, Brief brief)
    {
        var unfolded = Unfolding.WithRepeatStarts(Unfolding.BySectionOrder(tune));
        var metre = Feels.MainMetre(unfolded);
        return new Setting(unfolded, brief, Feels.For(metre), metre, Prices.Standard).Plan().Lattice;
    }

    private static List<(ScoreTime Start, int Low, int High)> Onsets(Score score, Hand hand) =>
        [
            .. Timeline
                .Of(score)
                .Where(s => s.Hand == hand)
                .GroupBy(s => s.Start)
                .OrderBy(g => g.Key)
                .Select(g => (g.Key, g.Min(s => s.Key), g.Max(s => s.Key))),
        ];
}
