using System.Globalization;
using System.Text.RegularExpressions;

namespace Stridewright.Engraving;

/// <summary>A system of a page laid out.</summary>
/// <param name="First">Id of its first bar.</param>
/// <param name="Last">Id of its last bar.</param>
/// <param name="Height">Room it takes on its page, to the next system or the page's end, in the engraver's units.</param>
internal sealed record LaidSystem(string First, string Last, int Height);

/// <summary>
/// Moves page ends to where a hand is free to turn: the same systems on as many pages, each page ending some systems
/// earlier where that makes a better turn.
/// </summary>
internal static partial class PageTurns
{
    /// <summary>A page ends at most so many systems before it is full.</summary>
    private const int MostEarlier = 3;
    private const int BadTurn = 100;

    /// <summary>The systems of every page.</summary>
    public static List<List<LaidSystem>> Systems(IEnumerable<string> pages) => [.. pages.Select(Of)];

    /// <summary>How many systems each page is to have; null where the pages are as good as they are.</summary>
    /// <param name="free">Whether a hand is free after a bar.</param>
    public static int[]? Better(IReadOnlyList<List<LaidSystem>> pages, Func<string, bool> free)
    {
        var systems = pages.SelectMany(p => p).ToList();
        var ends = pages.Select((_, p) => pages.Take(p + 1).Sum(x => x.Count)).ToArray();
        // The first page has a header; a last one need not be full.
        var heights = pages.Select(p => p.Sum(s => s.Height)).ToArray();
        var rooms = heights.Select((h, p) => p == 0 ? h : heights.Max()).ToArray();
        int Cost(int page, int end) =>
            (page == pages.Count - 1 || free(systems[end - 1].Last) ? 0 : BadTurn)
            + (ends[page] - end) * (ends[page] - end);
        var now = pages.Select((_, p) => Cost(p, ends[p])).Sum();
        // By page, what ends are possible, at what cost so far and from which end before.
        var best = new Dictionary<int, (int Cost, int From)>[pages.Count];
        for (var page = 0; page < pages.Count; page++)
        {
            best[page] = [];
            var starts = page == 0 ? new Dictionary<int, (int Cost, int From)> { [0] = (0, 0) } : best[page - 1];
            var earliest = page == pages.Count - 1 ? systems.Count : ends[page] - MostEarlier;
            for (var end = earliest; end <= ends[page]; end++)
            {
                foreach (var (start, sofar) in starts)
                {
                    var cost = sofar.Cost + Cost(page, end);
                    if (
                        start < end
                        && systems.Skip(start).Take(end - start).Sum(s => s.Height) <= rooms[page]
                        && (!best[page].TryGetValue(end, out var there) || cost < there.Cost)
                    )
                    {
                        best[page][end] = (cost, start);
                    }
                }
            }
        }
        if (!best[^1].TryGetValue(systems.Count, out var found) || found.Cost >= now)
        {
            return null;
        }
        var counts = new int[pages.Count];
        for (int page = pages.Count - 1, end = systems.Count; page >= 0; end -= counts[page--])
        {
            counts[page] = end - best[page][end].From;
        }
        return counts;
    }

    private static List<LaidSystem> Of(string page)
    {
        var systems = page.Split("class=\"system\"").Skip(1).ToList();
        var tops = systems
            .Select(s => StaffLine().Matches(s).Select(m => int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)))
            .Select(lines => (First: lines.DefaultIfEmpty(0).Min(), Last: lines.DefaultIfEmpty(0).Max()))
            .ToList();
        var found = new List<LaidSystem>();
        for (var i = 0; i < systems.Count; i++)
        {
            var bars = Measure().Matches(systems[i]);
            var height = i + 1 < systems.Count ? tops[i + 1].First - tops[i].First : tops[i].Last - tops[i].First;
            found.Add(new LaidSystem(bars[0].Groups[1].Value, bars[^1].Groups[1].Value, height));
        }
        if (found.Count > 1)
        {
            // Under the last system nothing shows how much room it takes: as much as the largest.
            found[^1] = found[^1] with
            {
                Height = Math.Max(found[^1].Height, found.SkipLast(1).Max(s => s.Height)),
            };
        }
        return found;
    }

    [GeneratedRegex("id=\"([^\"]+)\" class=\"measure\"")]
    private static partial Regex Measure();

    [GeneratedRegex("<path d=\"M[0-9]+ ([0-9]+) L[0-9]+ \\1\"")]
    private static partial Regex StaffLine();
}
