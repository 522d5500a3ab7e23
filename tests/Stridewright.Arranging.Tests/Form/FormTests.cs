using Stridewright.Formats.Abc;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests;

public sealed class FormTests
{
    [Theory]
    [InlineData("intro A zzz", "'zzz' at character 9")]
    [InlineData("A(octaves", "bracket at character 2")]
    [InlineData("A(octaves,loud)", "'loud' at character 11")]
    [InlineData("intro end", "no strain")]
    [InlineData("A(high)B", "before character 8")]
    [InlineData("A intro(run)A", "before character 13")]
    [InlineData("A tag*", "'tag*' at character 3")]
    [InlineData("half:A*", "'half:A*' at character 1")]
    [InlineData("A(run)", "'run' at character 3 does not go")]
    [InlineData("A tag(mf, segue)", "'segue' at character 11 does not go")]
    [InlineData("A(rag:1.5)", "'rag:1.5' at character 3")]
    [InlineData("A(rag:-1)", "'rag:-1' at character 3")]
    [InlineData("A(high?)", "'high?' at character 3")]
    [InlineData("A()", "'' at character 3")]
    public void A_fault_in_a_form_is_told_with_its_place(string line, string expected)
    {
        Assert.Null(FormLine.Read(line, out var fault));
        Assert.Contains(expected, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_manner_of_both_hands_can_be_asked_for()
    {
        foreach (var (word, left) in Manners.Left)
        {
            Assert.Equal(left, FormLine.Read($"A({word})", out _)!.Parts[0].Treatment.Left);
        }
        foreach (var (word, right) in Manners.Right)
        {
            Assert.Equal(right, FormLine.Read($"A({word})", out _)!.Parts[0].Treatment.Right);
        }
        Assert.Equal(Enum.GetValues<LeftManner>().Length, Manners.Left.Count);
        Assert.Equal(Enum.GetValues<RightManner>().Length, Manners.Right.Count);
    }

    [Theory]
    [InlineData("usual")]
    [InlineData("intro(run,f) vamp A(stop-time,octaves?,rag:0.8,thick,high,breaks,mf) A* B*(turnaround) tag end")]
    [InlineData("trio:C(thin,segue,pedal,p) half:A half:B(sixths)")]
    public void A_form_is_written_as_it_is_read(string line)
    {
        var form = FormLine.Read(line, out _)!;
        Assert.Equal(line, form.ToString());
        Assert.Equal(form.ToString(), FormLine.Read(form.ToString(), out _)!.ToString());
    }

    [Fact]
    public void A_manner_with_a_question_mark_waits_for_its_level()
    {
        var part = FormLine.Read("A(octaves?,walking-octaves?)", out _)!.Parts[0];
        Treatment At(int level) => part.For(new Brief { LeftLevel = level, RightLevel = level });
        Assert.Equal((LeftManner.Stride, RightManner.Ragged), (At(4).Left, At(4).Right));
        Assert.Equal((LeftManner.WalkingOctaves, RightManner.Octaves), (At(5).Left, At(5).Right));
    }

    // trade.md 2.4: 4 + 9 strains of 16 bars of 2/4 are 148 bars, 201.8 s at a quarter of 88.
    [Fact]
    public void Nine_strains_and_an_introduction_have_148_bars()
    {
        var piece = Apply(FourStrains(), "intro A A B B A C C D D");
        Assert.Equal(148, piece.Tune.Bars.Count);
        Assert.Equal(201.8, piece.Tune.Bars.Sum(b => b.Length.ToQuarters()) * 60 / 88, 1);
        Assert.Equal(4, piece.Treatments.Count(t => t.IsAdded));
    }

    // trade.md 2.4: the trio has one more flat.
    [Theory]
    [InlineData("Eb", "Ab")]
    [InlineData("C", "F")]
    [InlineData("G", "C")]
    [InlineData("Bb", "Eb")]
    public void A_trio_stands_in_the_subdominant(string home, string expected)
    {
        var tune = Register.Move(FourStrains(), Register.For(FourStrains(), Tone.Parse(home)));
        var bars = Apply(tune, "A trio:B A").Tune.Bars;
        Assert.Equal(Tone.Parse(home), bars[15].Key.Tonic);
        Assert.Equal(Tone.Parse(expected), bars[16].Key.Tonic);
        Assert.Equal(bars[15].Key.Signature - 1, bars[16].Key.Signature);
        Assert.Equal(Tone.Parse(home), bars[32].Key.Tonic);
    }

    [Fact]
    public void A_section_that_the_tune_has_not_is_refused()
    {
        var result = Arranger.Arrange(
            FourStrains(),
            new Brief { Form = FormLine.Read("A E", out _) },
            TestContext.Current.CancellationToken
        );
        Assert.Contains("E at character 3", result.Refusal!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_form_with_all_its_parts_is_playable_and_its_choruses_differ()
    {
        var brief = new Brief
        {
            Form = FormLine.Read("intro vamp A A(mf) B(stop-time) trio:C(breaks) A(high,ff) tag end", out _),
        };
        var result = Arranger.Arrange(FourStrains(), brief, TestContext.Current.CancellationToken);
        var score = Assert.IsType<Arrangement>(result.Arrangement).Score;
        Assert.Equal(4 + 2 + 5 * 16 + 2 + 1, score.Bars.Count);
        Assert.True(Judge.Check(score, brief.Hands).IsPlayable);
        Assert.Equal(
            ["Intro", "Vamp", "A", "A", "B", "Trio", "A", "Tag", "End"],
            score.Bars.SelectMany(b => b.Directions).Select(d => d.Section).OfType<string>()
        );
        Assert.Equal(["mf", "ff"], score.Bars.SelectMany(b => b.Directions).Select(d => d.Dynamic).OfType<string>());
        Assert.Equal(2, score.Bars[5].Marks.RepeatEnd);
        // Stop-time: one stroke a bar in the left hand; breaks: the same in bars 7 and 8.
        Assert.All(score.Bars.Skip(38).Take(16), bar => Assert.True(Strokes(bar, Hand.Left) <= 1));
        Assert.All(new[] { 60, 61, 68, 69 }, i => Assert.True(Strokes(score.Bars[i], Hand.Left) <= 1));
        // At least three bars of ten differ in rhythm or texture from the first time.
        var differing = Enumerable.Range(0, 16).Count(i => Right(score.Bars[6 + i]) != Right(score.Bars[22 + i]));
        Assert.True(differing >= 5, $"{differing} of 16 bars differ");
        // The last chorus lies an octave higher.
        Assert.True(Top(score, 70) >= Top(score, 6) + 7, $"{Top(score, 6)} and {Top(score, 70)}");
    }

    // The tune is written a fourth higher already: three sections, the last in the subdominant.
    [Fact]
    public void A_section_that_is_written_in_the_subdominant_stays_there()
    {
        var tune = FourStrains();
        var there = Register.Move(tune, Interval.PerfectFourth).Bars.Skip(48);
        var bars = Apply(tune with { Bars = [.. tune.Bars.Take(48), .. there] }, "A trio:D").Tune.Bars;
        Assert.Equal(Tone.Parse("F"), bars[16].Key.Tonic);
    }

    // Three beats a bar, a pick-up of one and a last bar of two: common practice joins them.
    [Fact]
    public void A_pick_up_goes_into_the_last_bar_before_its_strain()
    {
        var tune = Tunes.Abc("M:3/4\nL:1/4\nK:C", "G | \"C\"c2e | \"G7\"d2B | \"C\"c2 |");
        var bars = Apply(tune, "A A end").Tune.Bars;
        Assert.Equal([1, 3, 3, 3, 3, 3, 3, 3], bars.Select(b => b.Length.ToQuarters()));
        Assert.Equal([72, 67], bars[3].Notes.Select(n => n.Pitch.Midi));
        Assert.Equal(2, bars[3].Notes[1].At.ToQuarters());
        // With an introduction no bar is short.
        Assert.All(Apply(tune, "intro A A").Tune.Bars, b => Assert.Equal(3, b.Length.ToQuarters()));
    }

    [Fact]
    public void A_pick_up_that_finds_no_room_is_a_short_bar_for_the_right_hand_alone()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "G2 | \"C\"c2e2 | \"G7\"d2B2 | \"C\"c2e2 |");
        var brief = new Brief { Form = FormLine.Read("A A", out _) };
        var score = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement!.Score;
        Assert.Equal([true, false, false, false, true, false, false, false], score.Bars.Select(b => b.Implicit));
        Assert.Equal(["1", "2", "3", "4", "5", "6"], score.Bars.Where(b => !b.Implicit).Select(b => b.Number));
        Assert.Equal(0, Strokes(score.Bars[4], Hand.Left));
        Assert.Equal(1, Strokes(score.Bars[4], Hand.Right));
    }

    [Fact]
    public void A_star_repeats_a_strain_with_endings_where_its_pick_up_asks_for_them()
    {
        var tune = Tunes.Abc("M:3/4\nL:1/4\nK:C", "G | \"C\"c2e | \"G7\"d2B | \"C\"c2 |");
        var bars = Apply(tune, "A* end").Tune.Bars;
        Assert.Equal([0, 1, 2, 3, 1, 2, 4, 5], Timeline.PlayOrder(bars.Select(b => b.Marks).ToList()));
        Assert.Equal([1], bars[3].Marks.Ending);
        Assert.Equal([2], bars[4].Marks.Ending);
        Assert.Equal(2, bars[3].Notes.Count);
        Assert.Single(bars[4].Notes);
    }

    [Fact]
    public void A_star_leaves_the_repeats_of_the_tune_as_they_are_written()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/4\nK:C", "|: \"C\"ce | gc |1 \"G7\"df :|2 \"C\"c2 |");
        var bars = Apply(tune, "intro A* end").Tune.Bars;
        Assert.Equal([0, 1, 2, 3, 4, 5, 3, 4, 6, 7], Timeline.PlayOrder(bars.Select(b => b.Marks).ToList()));
    }

    // Common practice: I VI7 II7 V7 under a held tonic, in half bars.
    [Theory]
    [InlineData("\"C\"c4- | c4 |", "C A7 D7 G7")]
    [InlineData("\"C\"c2e2 | c4 |", "C A7 D7 G7")]
    [InlineData("\"G7\"d2B2 | \"C\"c4 |", null)]
    [InlineData("\"C\"c2f2 | c4 |", null)]
    public void A_turnaround_leads_back_where_the_tune_has_come_home(string end, string? expected)
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"c2e2 | \"F\"f2a2 | " + end);
        var piece = Apply(tune, "A(turnaround) A");
        var chords = string.Join(' ', piece.Tune.Bars.Skip(2).Take(2).SelectMany(b => b.Chords).Select(c => c.Chord));
        Assert.Single(piece.Notes);
        if (expected is null)
        {
            Assert.StartsWith("no turnaround at the end of A", piece.Notes[0], StringComparison.Ordinal);
        }
        else
        {
            Assert.Equal(expected, chords);
            Assert.Equal(72, piece.Tune.Bars[2].Notes[0].Pitch.Midi);
        }
    }

    [Fact]
    public void A_strain_that_cannot_be_lifted_is_named()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"c2c''2 | c4 |");
        var piece = Apply(Register.Move(tune, Interval.Octave), "A(high)");
        Assert.StartsWith("A cannot be lifted", Assert.Single(piece.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Raggedness_and_fullness_act_on_their_own_bars()
    {
        var brief = new Brief
        {
            LeftLevel = 5,
            RightLevel = 5,
            Form = FormLine.Read("A(rag:0) A(rag:1) A(thin) A(thick)", out _),
        };
        var result = Arranger.Arrange(FourStrains(), brief, TestContext.Current.CancellationToken).Arrangement!;
        Assert.Equal([16, 16, 16, 16], result.Score.Bars.Chunk(16).Select(c => c.Length));
        Assert.Equal(0, OffBeats(0));
        Assert.True(OffBeats(16) >= 10, $"{OffBeats(16)} off-beats");
        Assert.True(Keys(48) >= Keys(32) + 0.2, $"{Keys(32)} and {Keys(48)} keys");

        IEnumerable<ScoreEvent> Struck(int from) =>
            result
                .Score.Bars.Skip(from)
                .Take(16)
                .SelectMany(b => b.Voices.Where(v => v.Hand == Hand.Right))
                .SelectMany(v => v.Events)
                .Where(e => e.Notes.Any(n => !n.TieStop));
        int OffBeats(int from) => Struck(from).Count(e => !e.At.IsMultipleOf(ScoreTime.Eighth));
        double Keys(int from) => Struck(from).Average(e => e.Notes.Count);
    }

    private static Piece Apply(Tune tune, string line) =>
        Forming.Apply(tune, new Brief { Form = FormLine.Read(line, out _) });

    private static double Top(Score score, int from) =>
        score
            .Bars.Skip(from)
            .Take(16)
            .SelectMany(b => b.Voices.Where(v => v.Hand == Hand.Right))
            .SelectMany(v => v.Events)
            .Where(e => e.Notes.Count > 0)
            .Average(e => e.Notes.Max(n => n.Pitch.Midi));

    private static int Strokes(ScoreBar bar, Hand hand) =>
        bar.Voices.Where(v => v.Hand == hand).SelectMany(v => v.Events).Count(e => e.Notes.Any(n => !n.TieStop));

    private static string Right(ScoreBar bar) =>
        string.Join(
            ' ',
            bar.Voices.Where(v => v.Hand == Hand.Right)
                .SelectMany(v => v.Events)
                .Where(e => e.Notes.Any(n => !n.TieStop))
                .Select(e => $"{e.At}:{e.Notes.Count}")
        );

    private static Tune FourStrains()
    {
        string[] tunes =
        [
            "\"C\"c2 e2|g2 e2|\"G7\"d2 f2|\"C\"e4|",
            "\"F\"f2 a2|\"C\"g2 e2|\"G7\"d2 B2|\"C\"c4|",
            "\"C\"e2 c2|\"F\"A2 c2|\"G7\"B2 d2|\"C\"c4|",
            "\"C\"g2 e2|\"A7\"e2 ^c2|\"D7\"d2 ^f2|\"G7\"g4|",
        ];
        var text = "X:1\nT:Four strains\nM:2/4\nL:1/8\nK:C\n";
        for (var i = 0; i < tunes.Length; i++)
        {
            text += $"P:{(char)('A' + i)}\n{string.Concat(Enumerable.Repeat(tunes[i] + "\n", 4))}";
        }
        return AbcReader.Read(new StringReader(text)).Value![0];
    }
}
