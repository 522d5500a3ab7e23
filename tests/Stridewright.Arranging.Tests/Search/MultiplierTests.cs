namespace Stridewright.Arranging.Tests.Search;

public sealed class MultiplierTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 25)]
    [InlineData(399, 400)]
    [InlineData(400, 400)]
    [InlineData(790, 800)]
    public void The_least_price_that_holds_is_found_to_within_the_step(long needed, long found) =>
        Assert.Equal(found, Multiplier.Least(800, 5, price => price, price => price >= needed));

    [Fact]
    public void Where_no_price_holds_the_dearest_solution_is_given()
    {
        var asked = new List<long>();
        Assert.Equal(800, Multiplier.Least(800, 5, Ask, _ => false));
        Assert.Equal([0L, 800L], asked);
        long Ask(long price)
        {
            asked.Add(price);
            return price;
        }
    }

    [Fact]
    public void What_holds_at_once_is_searched_once()
    {
        var searches = 0;
        Assert.Equal(0, Multiplier.Least(800, 5, price => (searches++, price).price, _ => true));
        Assert.Equal(1, searches);
    }
}
