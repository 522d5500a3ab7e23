using Stridewright.Music;

namespace Stridewright.Arranging.Tests;

/// <summary>Sections of tunes that name none: what repeats set off (common practice).</summary>
public sealed class StrainsTests
{
    private static string Bars(int count, string bar = "C2 E2") =>
        string.Concat(Enumerable.Range(0, count).Select(i => bar + (i + 1 < count ? "|" : "")));

    private static Strains Of(string body) =>
        Strains.Of(Unfolding.WithRepeatStarts(Tunes.Abc("M:2/4\nL:1/8\nK:C", body)));

    public static TheoryData<string, string, int[]> Tune =>
        new()
        {
            { "two parts, both repeated", $"|:{Bars(8)}:|:{Bars(8, "G2 E2")}:|", [0, 1] },
            { "the first repeat's start is not written", $"{Bars(8)}:|:{Bars(8, "G2 E2")}:|", [0, 1] },
            { "with pick-ups", $"G2|:{Bars(8)}:|E2|:{Bars(8, "G2 E2")}:|", [0, 1] },
            { "with endings", $"|:{Bars(7)}|1 C4:|2 C4||:{Bars(8, "G2 E2")}:|", [0, 1] },
            { "an introduction belongs to the first part", $"{Bars(4)}||:{Bars(8)}:|:{Bars(8, "G2 E2")}:|", [0, 1] },
            { "introduction and strains", $"{Bars(4)}||:{Bars(16)}:|:{Bars(16, "G2 E2")}:|", [0, 1] },
            { "the first part comes back", $"|:{Bars(16)}:|:{Bars(16, "G2 E2")}:|{Bars(16)}|]", [0, 1, 0] },
            { "a song by sixteens", $"{Bars(16)}||{Bars(16, "G2 E2")}|]", [0] },
            { "a song by eights", $"{Bars(8)}||{Bars(8)}||{Bars(8, "G2 E2")}||{Bars(8)}|]", [0] },
            { "a song with its first eight repeated", $"|:{Bars(8)}:|{Bars(8, "G2 E2")}|{Bars(8)}|]", [0] },
            { "short parts", $"|:{Bars(4)}:|:{Bars(4, "G2 E2")}:|", [0] },
            { "nothing set off", Bars(32) + "|]", [0] },
        };

    [Theory]
    [MemberData(nameof(Tune))]
    public void Strains_are_what_is_set_off(string what, string body, int[] order)
    {
        var strains = Of(body);
        Assert.True(order.SequenceEqual(strains.Order), $"{what}: {string.Join(' ', strains.Order)}");
        Assert.Equal(order.Distinct().Count(), strains.All.Count);
    }

    [Fact]
    public void A_rag_without_letters_has_its_trio()
    {
        var strains = new[] { "C2 E2", "G2 E2", "F2 A2", "A2 c2" }.Select(b => $"|:{Bars(16, b)}:|");
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", string.Concat(strains));
        var brief = new Brief
        {
            LeftLevel = 5,
            RightLevel = 5,
            Form = FormLine.Usual,
        };
        var form = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement!.Brief.Form!;
        Assert.Equal("AABBACCDD", string.Concat(form.Parts.Where(p => p.HasLetter).Select(p => p.Letter)));
        Assert.Contains(form.Parts, p => p.Kind == PartKind.Trio && p.Letter == 'C');
    }
}
