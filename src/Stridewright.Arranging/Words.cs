namespace Stridewright.Arranging;

/// <summary>Names as a person types and reads them.</summary>
public static class Words
{
    /// <summary>Such as <c>circle-of-fifths</c>.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum =>
        string.Concat(
            value
                .ToString()
                .Select(
                    (c, i) => char.IsAsciiLetterUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()
                )
        );
}
