using CsCheck;
using Stridewright.Hands;
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

    [Theory]
    [InlineData(185, 4)]
    [InlineData(205, 3)]
    [InlineData(230, 3)]
    public void The_first_level_stays_in_its_place(int span, int keys)
    {
        var hands = new PlayerHands { SpanMm = span };
        var reach = new Reach(hands);
        var shifts = Tunes
            .Samples.SelectMany(tune =>
                Moves(
                        tune,
                        new Brief
                        {
                            LeftLevel = 1,
                            RightLevel = 1,
                            Hands = hands,
                        }
                    )
                    .Select(m => Leap.Shift(reach, m.From.Low, m.From.High, m.To.Low, m.To.High))
            )
            .ToList();
        // No leap: the chords lie where they lie at every level, so that the hand drifts by up to a fourth from the bass
        // to them (a small one by a fifth), in nineteen moves of twenty.
        var wide = shifts.Count(mm => mm > keys * reach.Keyboard.WhiteKeyMm);
        Assert.True(wide <= 0.05 * shifts.Count, $"{wide} of {shifts.Count}");
    }

    [Fact]
    public void The_second_level_leaps_at_most_an_octave_in_the_samples() =>
        Assert.All(
            Tunes.Samples.SelectMany(tune => Moves(tune, new Brief { LeftLevel = 2, RightLevel = 2 })),
            move => Assert.InRange(Math.Abs(move.To.Low - move.From.Low), 0, 12)
        );

    [Fact]
    public void The_second_level_leaps_further_only_where_nothing_else_is_left()
    {
        int moves = 0,
            wide = 0;
        Tunes.Any.Sample(
            tune =>
            {
                foreach (var (from, to) in Moves(tune, new Brief { LeftLevel = 2, RightLevel = 2 }))
                {
                    Interlocked.Increment(ref moves);
                    Interlocked.Add(ref wide, Math.Abs(to.Low - from.Low) > 12 ? 1 : 0);
                }
            },
            iter: 80
        );
        Assert.True(wide <= 0.005 * moves, $"{wide} of {moves}");
    }

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
                        var due = lattice.ChordAt(tick);
                        var above = (onset.Low - due.Chord.Lowest.PitchClass) % 12;
                        Assert.Equal(onset.Low, onset.High);
                        Assert.True(
                            due.Chord.IsNoChord || above == 0 || (above == 7 && FollowsRaisedFourth(lattice, due)),
                            $"{onset} under {due.Chord}"
                        );
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

    // The fifth under I is due when it comes after a raised-fourth diminished chord (common practice).
    private static bool FollowsRaisedFourth(Lattice lattice, ChordSpan span) =>
        span.Start > 0
        && lattice.ChordAt(span.Start - 1).Chord is { Kind: ChordKind.Diminished or ChordKind.DiminishedSeventh } before
        && (before.Root.PitchClass - span.Chord.Root.PitchClass + 12) % 12 == 6;

    private static IEnumerable<(
        (ScoreTime Start, int Low, int High) From,
        (ScoreTime Start, int Low, int High) To
    )> Moves(Tune tune, Brief brief)
    {
        if (Arranger.Arrange(tune, brief).Arrangement is not { } arrangement)
        {
            return [];
        }
        var onsets = Onsets(arrangement.Score, Hand.Left);
        return onsets.Zip(onsets.Skip(1));
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
