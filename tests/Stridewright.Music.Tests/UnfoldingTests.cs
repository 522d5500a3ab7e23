using CsCheck;

namespace Stridewright.Music.Tests;

public sealed class UnfoldingTests
{
    // Bars in a small notation of the tests: a letter is a bar; |: and :| repeats (:|3 three times), [1 [1,3 endings up
    // to the next mark, || a double bar, =A a section label.

    /// <summary>Source: common practice; ABC 2.1, 4.8 to 4.10 for starts and endings.</summary>
    [Theory]
    [InlineData("a b c", "abc")]
    [InlineData("|: a b :| c", "ababc")]
    [InlineData("a b :| c d :|", "ababcdcd")]
    [InlineData("|: a [1 b :| [2 c || d", "abacd")]
    [InlineData("|: a [1 b :| [2 c :| d", "abacd")]
    [InlineData("|: a [1 b c :| [2 d || e :|", "abcadee")]
    [InlineData("|: a [1 b :| c", "abac")]
    [InlineData("|: a [1,3 b :| [2,4 c :|", "abacabac")]
    [InlineData("|: a [1,2 b :| [3 c :| [4 d || e", "ababacade")]
    [InlineData("a b || c d :|", "abcdcd")]
    [InlineData("|: a || b :|", "abab")]
    [InlineData("=A a b :| =B c d :|", "ababcdcd")]
    [InlineData("=A a b =B c d :|", "abcdcd")]
    [InlineData("a :|3 b", "aaab")]
    [InlineData("|: a b c", "abc")]
    [InlineData("a |: b |: c :| d", "abccd")]
    [InlineData("[2 a [1 b c", "abc")]
    [InlineData("|: a [1 b [2 c :| d", "abacd")]
    [InlineData("|: a [2 b :| [1 c || d", "acabd")]
    public void Repeats_and_endings_are_played_out(string written, string played) =>
        Assert.Equal(played, Played(Unfolding.Unfold(Tune(written))));

    /// <summary>Source: ABC 2.1, 3.1.9 (parts); each part keeps its own repeats.</summary>
    [Theory]
    [InlineData("=A a :| =B b c", "A B A", "aabcaa")]
    [InlineData("x =A a =B b", "B A", "xba")]
    [InlineData("=A a =B b", "B Z B", "bb")]
    [InlineData("=A a =B b", "Z", "ab")]
    [InlineData("a b", "A", "ab")]
    [InlineData("=A a =A b", "A A", "aa")]
    public void Sections_are_played_in_their_order(string written, string order, string played) =>
        Assert.Equal(played, Played(Unfolding.Unfold(Tune(written, order))));

    [Fact]
    public void Ordering_sections_keeps_the_inner_repeats()
    {
        var ordered = Unfolding.BySectionOrder(Tune("=A |: a [1 b :| [2 c =B d :|", "B A"));
        Assert.Empty(ordered.SectionOrder);
        Assert.Equal("dabc", Played(ordered));
        Assert.True(ordered.Bars[1].Marks.RepeatStart);
        Assert.Equal("ddabac", Played(Unfolding.Unfold(ordered)));
    }

    [Fact]
    public void A_form_that_grows_too_long_is_left_as_written()
    {
        Assert.Equal("ab", Played(Unfolding.Unfold(Tune("a b :|1000000"))));
        Assert.Equal("a", Played(Unfolding.Unfold(Tune("=A a", string.Join(' ', Enumerable.Repeat("A", 5000))))));
    }

    [Fact]
    public void A_tie_survives_only_where_the_pitch_goes_on()
    {
        var tie = new TuneNote(default, ScoreTime.Whole, Pitch.Parse("C5")) { TiedToNext = true };
        var tune = Tune("|: a [1 b :| [2 c");
        tune = tune with
        {
            Bars =
            [
                tune.Bars[0] with
                {
                    Notes = [tie],
                },
                tune.Bars[1] with
                {
                    Notes = [tie with { TiedToNext = false }],
                },
                tune.Bars[2] with
                {
                    Notes = [tie with { TiedToNext = false, Pitch = Pitch.Parse("D5") }],
                },
            ],
        };
        var unfolded = Unfolding.Unfold(tune);
        Assert.Equal([true, false, false, false], unfolded.Bars.Select(b => b.Notes[0].TiedToNext));
    }

    [Fact]
    public void Any_marks_end_in_a_bounded_tune_without_repeat_marks() =>
        Gen.Select(Gen.Bool, Gen.OneOf(Gen.Const(0), Gen.Int[0, 3], Gen.Int), Gen.Int[-1, 5].Array[0, 2], Gen.Bool)
            .Select(b => new BarMarks
            {
                RepeatStart = b.Item1,
                RepeatEnd = b.Item2,
                Ending = b.Item3.ToValueList(),
                DoubleBarAfter = b.Item4,
            })
            .Array[1, 12]
            .Sample(
                marks =>
                {
                    var tune = Tune(string.Join(' ', marks.Select(_ => "a")));
                    tune = tune with { Bars = tune.Bars.Select((b, i) => b with { Marks = marks[i] }).ToValueList() };
                    var unfolded = Unfolding.Unfold(tune);
                    Assert.InRange(unfolded.Bars.Count, 1, Unfolding.MaxBars);
                    Assert.All(
                        unfolded.Bars,
                        b => Assert.True(b.Marks is { RepeatStart: false, RepeatEnd: 0, Ending.Count: 0 })
                    );
                },
                iter: 500
            );

    private static string Played(Tune tune) => string.Concat(tune.Bars.Select(b => b.Number));

    private static Tune Tune(string written, string order = "")
    {
        var bars = new List<TuneBar>();
        string? section = null;
        var start = false;
        ValueList<int> ending = [];
        void Mark(Func<BarMarks, BarMarks> change)
        {
            bars[^1] = bars[^1] with { Marks = change(bars[^1].Marks) };
            ending = [];
        }
        foreach (var token in written.Split(' '))
        {
            if (token == "|:")
            {
                (start, ending) = (true, []);
            }
            else if (token.StartsWith(":|", StringComparison.Ordinal))
            {
                var times = token.Length > 2 ? int.Parse(token[2..]) : 2;
                Mark(m => m with { RepeatEnd = times });
            }
            else if (token == "||")
            {
                Mark(m => m with { DoubleBarAfter = true });
            }
            else if (token[0] == '[')
            {
                ending = token[1..].Split(',').Select(int.Parse).ToValueList();
            }
            else if (token[0] == '=')
            {
                (section, ending) = (token[1..], []);
            }
            else
            {
                bars.Add(
                    new TuneBar
                    {
                        Number = token,
                        Metre = Metre.FourFour,
                        Key = default,
                        Length = ScoreTime.Whole,
                        Section = section,
                        Marks = new BarMarks { RepeatStart = start, Ending = ending },
                    }
                );
                (section, start) = (null, false);
            }
        }
        return new Tune
        {
            Title = "test",
            Bars = bars.ToValueList(),
            SectionOrder = order.Split(' ', StringSplitOptions.RemoveEmptyEntries).ToValueList(),
        };
    }
}
