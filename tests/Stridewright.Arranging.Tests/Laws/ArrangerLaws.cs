using CsCheck;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>What holds for every tune and brief.</summary>
public sealed class ArrangerLaws
{
    private static readonly Gen<Brief> Briefs =
        from left in Gen.Int[1, 6]
        from right in Gen.Int[1, 6]
        from raggedness in Gen.Int[0, 4].Select(i => i / 4.0)
        from span in Gen.Int[160, 240].Select(i => (double)i)
        from noOctaves in Gen.Bool
        from seed in Gen.Int[0, 1000]
        from stride in Gen.Int[0, 3]
        select new Brief
        {
            Feel = stride == 0 ? Feel.Stride : null,
            LeftLevel = left,
            RightLevel = right,
            Raggedness = raggedness,
            Seed = seed,
            Hands = new PlayerHands { SpanMm = span, NoOctaves = noOctaves },
        };

    [Fact]
    public void What_is_arranged_is_playable_complete_and_the_same_every_time() =>
        Gen.Select(Gen.Frequency((3, Tunes.Any), (1, Tunes.Wild)), Briefs)
            .Sample(
                (tune, brief) =>
                {
                    var result = Arranger.Arrange(tune, brief);
                    if (result.Arrangement is not { } arrangement)
                    {
                        Assert.False(string.IsNullOrWhiteSpace(result.Refusal!.Message));
                        return;
                    }
                    Assert.True(Judge.Check(arrangement.Score, brief.Hands).IsPlayable);
                    Assert.All(arrangement.Score.Bars, AssertFilled);
                    Assert.Equal(Bytes(arrangement.Score), Bytes(Arranger.Arrange(tune, brief).Arrangement!.Score));
                    if (brief.Hands.NoOctaves)
                    {
                        Assert.All(
                            Events(arrangement.Score),
                            e => Assert.InRange(e.Notes[^1].Pitch.Midi - e.Notes[0].Pitch.Midi, 0, 11)
                        );
                    }
                    if (brief.RightLevel <= 3)
                    {
                        Assert.All(Events(arrangement.Score, Hand.Right), e => Assert.Single(e.Notes));
                    }
                },
                iter: 120
            );

    // The same tunes every time: a share of new ones would fall below any bound now and then.
    [Fact]
    public void Most_random_tunes_can_be_arranged()
    {
        var source = new PCG(1, 20_260_704);
        var tunes = Enumerable.Range(0, 200).Select(_ => Tunes.Any.Generate(source, null, out var _)).ToList();
        var refused = 0;
        Parallel.ForEach(
            tunes.Where(t => t.Bars.Any(b => b.Notes.Count > 0)),
            tune => Interlocked.Add(ref refused, Arranger.Arrange(tune, new Brief()).Arrangement is null ? 1 : 0)
        );
        Assert.True(refused <= 0.1 * tunes.Count, $"{refused} of {tunes.Count} refused");
    }

    [Fact]
    public void Raggedness_nought_is_the_plain_tune() =>
        Tunes.Any.Sample(
            tune =>
            {
                var brief = new Brief { Raggedness = 0 };
                if (Arranger.Arrange(tune, brief).Arrangement is { } arrangement)
                {
                    Assert.Equal((0, 0, 0), (arrangement.Tune.Early, arrangement.Tune.Late, arrangement.Tune.Fillers));
                }
            },
            iter: 60
        );

    [Fact]
    public void A_tune_an_octave_higher_gives_the_same_setting() =>
        Tunes.Any.Sample(
            tune =>
            {
                var higher = Register.Move(tune, Interval.Octave);
                var (one, other) = (Arranger.Arrange(tune, new Brief()), Arranger.Arrange(higher, new Brief()));
                Assert.Equal(one.Arrangement is null, other.Arrangement is null);
                if (one.Arrangement is not null)
                {
                    Assert.Equal(Bytes(one.Arrangement.Score), Bytes(other.Arrangement!.Score));
                }
            },
            iter: 40
        );

    [Theory]
    [InlineData("M:3/4\nL:1/4\nK:C", "\"C\"CEG|cGE|", Feel.Classic)]
    [InlineData("M:3/4\nL:1/4\nK:C", "\"C\"CEG|cGE|", Feel.SixEight)]
    [InlineData("M:2/4\nL:1/8\nK:C", "\"C\"CEGE|cGEC|", Feel.Waltz)]
    [InlineData("M:6/8\nL:1/8\nK:C", "\"C\"CEGCEG|c3c3|", Feel.Stride)]
    public void A_feel_that_does_not_fit_the_metre_is_refused(string head, string body, Feel feel)
    {
        var result = Arranger.Arrange(
            Tunes.Abc(head, body),
            new Brief { Feel = feel },
            TestContext.Current.CancellationToken
        );
        Assert.Null(result.Arrangement);
        Assert.Contains("cannot be set as", result.Refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tune_without_notes_and_chords_is_refused_with_the_reason()
    {
        var result = Arranger.Arrange(
            Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"N.C.\"z4|z4|"),
            new Brief(),
            TestContext.Current.CancellationToken
        );
        Assert.Contains("neither notes nor chords", result.Refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tune_of_chords_alone_gives_a_left_hand_alone_and_says_so()
    {
        var arrangement = Arranger
            .Arrange(
                Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"z4|\"F\"z4|"),
                new Brief(),
                TestContext.Current.CancellationToken
            )
            .Arrangement!;
        Assert.True(arrangement.Score.LeftHandOnly);
        Assert.Contains(arrangement.Notes, n => n.Message.Contains("no notes", StringComparison.Ordinal));
    }

    [Fact]
    public void Tempo_and_key_wanted_are_printed()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"CEGE|\"G7\"FDB,D|\"C\"CEGc|c4|");
        var score = Arranger
            .Arrange(
                tune,
                new Brief { BeatsPerMinute = 63, Tonic = Tone.Parse("Eb") },
                TestContext.Current.CancellationToken
            )
            .Arrangement!.Score;
        Assert.Equal(63, score.Bars[0].Directions[0].BeatsPerMinute);
        Assert.All(score.Bars, b => Assert.Equal(new Key(Tone.Parse("Eb"), Mode.Major), b.Key));
    }

    [Fact]
    public void A_cancelled_run_stops() =>
        Assert.ThrowsAny<OperationCanceledException>(() =>
            Arranger.Arrange(
                Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"CEGE|\"G7\"FDB,D|\"C\"CEGc|c4|"),
                new Brief(),
                new CancellationToken(true)
            )
        );

    private static void AssertFilled(ScoreBar bar) =>
        Assert.All(
            bar.Voices,
            voice =>
            {
                var at = ScoreTime.Zero;
                foreach (var e in voice.Events)
                {
                    Assert.Equal(at, e.At);
                    at += e.Length;
                }
                Assert.Equal(bar.Length, at);
            }
        );

    private static IEnumerable<ScoreEvent> Events(Score score, Hand? hand = null) =>
        score
            .Bars.SelectMany(b => b.Voices)
            .Where(v => hand is null || v.Hand == hand)
            .SelectMany(v => v.Events)
            .Where(e => e.Notes.Count > 0);

    private static byte[] Bytes(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }
}
