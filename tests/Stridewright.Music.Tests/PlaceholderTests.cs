namespace Stridewright.Music.Tests;

public sealed class PlaceholderTests
{
    [Fact]
    public void Placeholder() => Assert.True(true);
}
