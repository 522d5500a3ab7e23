namespace Stridewright.Sound.Tests;

public sealed class PlaceholderTests
{
    [Fact]
    public void Placeholder() => Assert.True(true);
}
