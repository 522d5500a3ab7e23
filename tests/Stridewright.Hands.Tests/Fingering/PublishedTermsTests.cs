using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>The twelve rules of Parncutt et al. 1997 (Music Perception 14(4)), with the totals printed there.</summary>
public sealed class PublishedTermsTests
{
    /// <summary>Fragment A: E4 G4 F4 G4 E4 F4 D4 E4.</summary>
    private static readonly int[] FragmentA = [64, 67, 65, 67, 64, 65, 62, 64];

    private static readonly int[] CMajor = [60, 62, 64, 65, 67, 69, 71, 72];

    // The printed table: fingering, rules 1 to 8, total. Rules 9 to 12 charge nothing here.
    [Theory]
    [InlineData("24342313", "0 1 0 1 1 2 0 1", 6)]
    [InlineData("13231213", "0 1 0 2 4 0 0 0", 7)]
    [InlineData("14342313", "0 3 0 1 1 2 0 1", 8)]
    [InlineData("35453423", "0 0 0 0 0 4 3 1", 8)]
    [InlineData("13231323", "0 2 2 2 3 0 0 0", 9)]
    [InlineData("13231423", "0 4 0 1 3 1 0 0", 9)]
    [InlineData("13242313", "0 3 0 3 2 1 0 0", 9)]
    [InlineData("12142313", "0 4 0 3 2 1 0 0", 10)]
    [InlineData("13232313", "0 1 2 3 4 0 0 0", 10)]
    [InlineData("24342323", "0 0 2 2 3 2 0 1", 10)]
    public void The_printed_totals_come_out(string fingers, string rules, int total)
    {
        var hand = Fingered.Hand(Fingered.Line(Hand.Right, FragmentA, fingers), Hand.Right, CostTable.Published);
        Assert.Equal(fingers, Fingered.Text(hand).Replace(" ", ""));
        Assert.Equal(total, Fingered.Cost(hand));
        var byRule = Enumerable
            .Range(0, 12)
            .Select(r => hand.Onsets.Sum(o => o.Terms.Where(t => (int)t.Term == r).Sum(t => t.Points)));
        Assert.Equal(rules + " 0 0 0 0", string.Join(' ', byRule));
    }

    [Fact]
    public void C_major_has_one_optimum_among_all_fingerings()
    {
        var found = Fingered.Hand(Fingered.Line(Hand.Right, CMajor), Hand.Right, CostTable.Published);
        Assert.Equal("1 2 3 1 2 3 4 5", Fingered.Text(found));
        Assert.Equal(15, Fingered.Cost(found));
        var line = new LineCosts(CostTable.Published, FingerHand.Of(Fingered.Usual, Hand.Right));
        var best = All(CMajor.Length)
            .Select(fingers => (Cost: CostOf(line, CMajor, fingers), Fingers: string.Concat(fingers)))
            .OrderBy(f => f.Cost)
            .Take(2)
            .ToList();
        Assert.Equal([(1500, "12312345"), (2000, "12412345")], best);
    }

    [Fact]
    public void Another_fingering_of_c_major_costs_what_it_should() =>
        Assert.Equal(
            23,
            Fingered.Cost(Fingered.Hand(Fingered.Line(Hand.Right, CMajor, "12341234"), Hand.Right, CostTable.Published))
        );

    [Fact]
    public void A_descending_scale_costs_what_it_should() =>
        Assert.Equal(
            14,
            Fingered.Cost(
                Fingered.Hand(Fingered.Line(Hand.Right, CMajor.Reverse(), "54321321"), Hand.Right, CostTable.Published)
            )
        );

    // Rules 9 to 12 are not in the printed table: their definitions.
    [Theory]
    [InlineData(64, 3, 66, 4, CostTerm.FourOnBlack, 1)]
    [InlineData(66, 4, 64, 3, CostTerm.FourOnBlack, 1)]
    [InlineData(65, 3, 67, 4, CostTerm.FourOnBlack, 0)]
    [InlineData(64, 1, 66, 2, CostTerm.ThumbPass, 0)]
    [InlineData(64, 3, 65, 1, CostTerm.ThumbPass, 1)]
    [InlineData(65, 1, 64, 3, CostTerm.ThumbPass, 1)]
    [InlineData(64, 3, 66, 1, CostTerm.ThumbPass, 3)]
    [InlineData(66, 3, 67, 1, CostTerm.ThumbPass, 0)]
    [InlineData(66, 1, 67, 2, CostTerm.ThumbOnBlack, 3)]
    [InlineData(66, 1, 68, 2, CostTerm.ThumbOnBlack, 1)]
    [InlineData(64, 3, 66, 5, CostTerm.FiveOnBlack, 2)]
    [InlineData(66, 3, 68, 5, CostTerm.FiveOnBlack, 0)]
    public void Rules_9_to_12_charge_by_colour(int from, int finger, int to, int next, CostTerm term, int cost)
    {
        var hand = Fingered.Hand(
            Fingered.Line(Hand.Right, [from, to], $"{finger}{next}"),
            Hand.Right,
            CostTable.Published
        );
        Assert.Equal(cost, hand.Onsets.Sum(o => o.Terms.Where(t => t.Term == term).Sum(t => t.Points)));
    }

    [Fact]
    public void The_left_hand_is_the_right_hand_mirrored()
    {
        // 64 + n and 64 - n have the same colour when mirrored at D (62) or G sharp.
        int[] keys = [62, 64, 66, 67, 69, 67, 71, 62, 61];
        var right = Fingered.Hand(Fingered.Line(Hand.Right, keys), Hand.Right, CostTable.Published);
        var left = Fingered.Hand(Fingered.Line(Hand.Left, keys.Select(k => 124 - k)), Hand.Left, CostTable.Published);
        Assert.Equal(Fingered.Text(right), Fingered.Text(left));
        Assert.Equal(Fingered.Cost(right), Fingered.Cost(left));
    }

    private static IEnumerable<int[]> All(int length) =>
        length == 0
            ?
            [
                [],
            ]
            : All(length - 1).SelectMany(f => Enumerable.Range(1, 5).Select(finger => (int[])[.. f, finger]));

    private static int CostOf(LineCosts line, int[] keys, int[] fingers)
    {
        var sum = new CostSum();
        for (var i = 0; i < keys.Length; i++)
        {
            var (before, after) = (i > 0 ? keys[i - 1] : -1, i + 1 < keys.Length ? keys[i + 1] : -1);
            line.AddWeak(ref sum, fingers[i], isSingle: true);
            line.AddColour(ref sum, before, keys[i], fingers[i], after, 1);
            if (i > 0)
            {
                line.AddPair(ref sum, keys[i - 1], fingers[i - 1], keys[i], fingers[i], CostTable.Never, 1);
            }
            if (i > 1)
            {
                line.AddTriple(ref sum, keys[i - 2], fingers[i - 2], keys[i - 1], fingers[i - 1], keys[i], fingers[i]);
            }
        }
        return sum.Total;
    }
}
