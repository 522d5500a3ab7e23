using Stridewright.Music;
using Stridewright.Practice.Listening;

namespace Stridewright.Workbench;

/// <summary>Which part of a score was to be played, in the words of a wish.</summary>
internal static class TakeScope
{
    public static Hand? HandOf(string? word) =>
        word switch
        {
            "right" => Hand.Right,
            "left" => Hand.Left,
            _ => null,
        };

    /// <summary>The bars with these printed numbers.</summary>
    /// <param name="range">Such as <c>5-12</c> or <c>5</c>; null: all.</param>
    /// <returns>Null: there are no such bars.</returns>
    public static Func<ExpectedBar, bool>? Bars(ExpectedScore score, string? range)
    {
        if (range is null)
        {
            return _ => true;
        }
        var ends = range.Split('-', 2, StringSplitOptions.TrimEntries);
        int Find(string number) => score.Bars.FirstOrDefault(b => b.Bar.Number == number)?.Written ?? -1;
        var (first, last) = (Find(ends[0]), Find(ends[^1]));
        return first < 0 || last < first ? null : b => b.Written >= first && b.Written <= last;
    }

    /// <summary>Why there are no such bars.</summary>
    public static string NoSuchRange(ExpectedScore score, string range)
    {
        var numbers = score.Bars.OrderBy(b => b.Written).Select(b => b.Bar.Number).ToList();
        return WorkbenchMessages.NoSuchRange(range, numbers[0], numbers[^1]);
    }
}
