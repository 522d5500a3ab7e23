namespace Stridewright.Hands;

/// <summary>A player by name.</summary>
/// <param name="Name">One line, not empty, at most <see cref="LongestName"/> characters, no control characters.</param>
/// <param name="Hands">What is measured and wished.</param>
public sealed record Player(string Name, PlayerHands Hands)
{
    /// <summary>Characters of a name.</summary>
    public const int LongestName = 80;

    /// <summary>Whatever else is worth knowing; lines end in <c>\n</c>, the last one in nothing.</summary>
    public string Notes { get; init; } = "";

    /// <summary>True for what can be a name.</summary>
    public static bool IsName(string? text) =>
        text is { Length: > 0 and <= LongestName } && text.Trim() == text && !text.Any(char.IsControl);
}
