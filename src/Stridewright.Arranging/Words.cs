namespace Stridewright.Arranging;

/// <summary>Names as a person types and reads them.</summary>
public static class Words
{
    /// <summary>Such as <c>circle-of-fifths</c>.</summary>
    public static string Of<T>(T value)
        where T : struct, Enum => Of(value.ToString());

    /// <summary>What a reason is about, such as <c>left-manner</c>.</summary>
    public static string OfKind(Reason reason) => Of(reason.GetType().Name[..^nameof(Reason).Length]);

    private static string Of(string name) =>
        string.Concat(
            name.Select(
                (c, i) => char.IsAsciiLetterUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()
            )
        );
}
