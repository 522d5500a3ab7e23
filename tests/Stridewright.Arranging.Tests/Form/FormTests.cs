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

    // trade.md 2.4: 4 + 9 strains of 16 bars of 2/4 are 148 bars, 201.8 s at a quarter of 88.
    [Fact]
    public void Nine_strains_and_an_introduction_have_148_bars()
    {
        var piece = Forming.Apply(FourStrains(), FormLine.Read("intro A A B B A C C D D", out _));
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
        var bars = Forming.Apply(tune, FormLine.Read("A trio:B A", out _)).Tune.Bars;
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
