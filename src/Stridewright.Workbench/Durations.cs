using System.Globalization;

namespace Stridewright.Workbench;

/// <summary>Playing times as a person writes them.</summary>
internal static class Durations
{
    /// <summary>In seconds: lengths that a piece may be asked for.</summary>
    public const double Shortest = 15,
        Longest = 1200;

    /// <summary>Minutes as <c>2</c>, <c>1.5</c> or <c>1:45</c> in seconds; null when the text is neither.</summary>
    public static double? Seconds(string text)
    {
        var parts = text.Trim().Split(':');
        if (parts.Length == 2)
        {
            return
                Whole(parts[0]) is { } minutes && parts[1].Length == 2 && Whole(parts[1]) is { } seconds && seconds < 60
                ? 60 * minutes + seconds
                : null;
        }
        return
            parts.Length == 1
            && double.TryParse(parts[0], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share)
            ? 60 * share
            : null;
    }

    private static int? Whole(string text) =>
        text.Length < 5 && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : null;
}
