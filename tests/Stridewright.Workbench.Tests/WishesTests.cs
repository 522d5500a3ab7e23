using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Tests;

public sealed class WishesTests
{
    [Fact]
    public void No_wish_at_all_is_the_usual_brief() => Assert.Equal(new Brief(), Read(new Wishes()));

    [Fact]
    public void Every_wish_reaches_the_brief() =>
        Assert.Equal(
            new Brief
            {
                Feel = Feel.SixEight,
                LeftLevel = 2,
                RightLevel = 5,
                Raggedness = 0.75,
                Tonic = new Tone(-2),
                BeatsPerMinute = 92,
                Hands = new PlayerHands
                {
                    SpanMm = 190,
                    OctaveMm = 152.5,
                    NoOctaves = true,
                },
                Lyrics = true,
                Seed = 7,
            },
            Read(
                new Wishes
                {
                    Feel = "six-eight",
                    LeftLevel = 2,
                    RightLevel = 5,
                    Raggedness = 0.75,
                    Key = "Bb",
                    BeatsPerMinute = 92,
                    Span = "190",
                    OctaveWidth = "152.5",
                    NoOctaves = true,
                    Lyrics = true,
                    Seed = 7,
                }
            )
        );

    [Theory]
    [InlineData("2", 120)]
    [InlineData("1.5", 90)]
    [InlineData("1:45", 105)]
    public void Minutes_are_read_and_ask_for_the_usual_form(string text, double seconds)
    {
        var brief = Read(new Wishes { Minutes = text });
        Assert.Equal(seconds, brief.Seconds);
        Assert.True(brief.Form!.IsUsual);
        Assert.Null(Read(new Wishes { Minutes = text, Form = "plain" }).Form);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0")]
    [InlineData("1:5")]
    [InlineData("1:75")]
    [InlineData("-2")]
    [InlineData("two")]
    [InlineData("1:2:3")]
    [InlineData("21")]
    public void A_length_that_is_none_is_refused(string text) =>
        Assert.Equal(["minutes"], FaultsOf(new Wishes { Minutes = text }));

    [Fact]
    public void One_level_holds_for_both_hands()
    {
        var brief = Read(new Wishes { Level = 6 });
        Assert.Equal((6, 6), (brief.LeftLevel, brief.RightLevel));
    }

    [Fact]
    public void A_level_for_one_hand_leaves_the_other_as_usual()
    {
        var brief = Read(new Wishes { LeftLevel = 1 });
        Assert.Equal((1, 4), (brief.LeftLevel, brief.RightLevel));
    }

    [Fact]
    public void All_faults_are_found_at_once()
    {
        var wishes = new Wishes
        {
            Feel = "swing",
            LeftLevel = 0,
            RightLevel = 7,
            Raggedness = double.NaN,
            Key = "H",
            BeatsPerMinute = -1,
            Span = "wide",
            OctaveWidth = "ninth",
        };
        Assert.Equal(
            ["bpm", "feel", "key", "left", "octave-width", "raggedness", "right", "span"],
            FaultsOf(wishes).Order(StringComparer.Ordinal)
        );
    }

    public static TheoryData<string, Wishes> Single =>
        new()
        {
            {
                "level",
                new Wishes { Level = 7 }
            },
            {
                "effort",
                new Wishes { Effort = 0.5 }
            },
            {
                "effort",
                new Wishes { Effort = double.NaN }
            },
            {
                "effort",
                new Wishes { Effort = 30, RightLevel = 3 }
            },
            {
                "level",
                new Wishes { Level = 3, RightLevel = 3 }
            },
            {
                "key",
                new Wishes { Key = "Fm" }
            },
            {
                "key",
                new Wishes { Key = "" }
            },
            {
                "key",
                new Wishes { Key = "Fb" }
            },
            {
                "bpm",
                new Wishes { BeatsPerMinute = double.PositiveInfinity }
            },
            {
                "octave-width",
                new Wishes { OctaveWidth = "" }
            },
        };

    [Theory]
    [MemberData(nameof(Single))]
    public void A_wish_that_cannot_be_is_named(string wish, Wishes wishes) => Assert.Equal([wish], FaultsOf(wishes));

    private static Brief Read(Wishes wishes)
    {
        var reader = new BriefReader(new FakeTools());
        var brief = reader.Read(wishes);
        Assert.Empty(reader.Faults);
        return brief;
    }

    private static IEnumerable<string> FaultsOf(Wishes wishes)
    {
        var reader = new BriefReader(new FakeTools());
        reader.Read(wishes);
        return reader.Faults.Select(f => f.File);
    }
}
