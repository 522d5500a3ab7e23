namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>The prices that reasons weigh are those of the search: since the line found is the cheapest, no exchange of one
/// chord for another is cheaper.</summary>
public sealed class LeftPricesTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(6)]
    public void No_other_voicing_in_place_of_one_is_cheaper(int level)
    {
        var exchanges = 0;
        foreach (var tune in Tunes.Samples)
        {
            var brief = new Brief { LeftLevel = level, RightLevel = level };
            var solution = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement!.Solution!;
            var prices = new LeftPrices(solution);
            for (var i = 0; i < prices.Slots.Length; i++)
            {
                var (slot, shape) = (prices.Slots[i], prices.At(i));
                if (shape.Kind != LeftKind.Chord)
                {
                    continue;
                }
                var chord = solution.Lattice.ChordAt(slot.Tick).Chord;
                var (lowest, highest) = (ChordShapes.LowestKey(slot), ChordShapes.HighestKey);
                var voicings = ChordShapes
                    .Of(chord, solution.Lattice.Feel, solution.Stage.LeftReach, lowest, highest, slot.Changes)
                    .ToList();
                var here = voicings.Where(v => v.Pitches.Equals(shape.Pitches)).MinBy(v => v.Price)!;
                foreach (var other in voicings)
                {
                    exchanges++;
                    Assert.True(
                        prices.More([i], other, here).Sum() >= 0,
                        $"{tune.Title} bar {slot.Bar}: {other.Pitches} for {here.Pitches}"
                    );
                }
            }
        }
        Assert.True(exchanges > 5000, $"{exchanges}");
    }
}
