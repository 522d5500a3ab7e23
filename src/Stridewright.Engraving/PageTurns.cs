using System.Globalization;
using System.Text.RegularExpressions;
using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>A bar of a system laid out.</summary>
/// <param name="Width">Of its staves, in the engraver's units.</param>
internal readonly record struct LaidBar(string Id, int Width);

/// <summary>A system of a page laid out.</summary>
/// <param name="Height">Room it takes on its page, to the next system or the page's end, in the engraver's units.</param>
internal sealed record LaidSystem(IReadOnlyList<LaidBar> Bars, int Height)
{
    public int Width => Bars.Sum(b => b.Width);
}

/// <summary>
/// Moves page ends to where a hand is free to turn, on as many pages: bars are cast into systems and systems into pages anew,
/// so that every page but the last ends at such a bar if one is near, the systems are about evenly full, and the pages too.
/// Exact search over where systems and pages begin.
/// </summary>
internal static partial class PageTurns
{
    /// <summary>So many pages lie side by side on a desk, and none is turned.</summary>
    public const int SideBySide = 2;

    /// <summary>Share of the systems of a full page that a page has at least.</summary>
    private const double LeastOfPage = 0.5;

    // A bad turn is worth any unevenness that the bounds below allow.
    private const double BadTurn = 1000;

    // A last bar alone on its line is worth a line that is half a bar too loose.
    private const double LoneBar = 5;

    /// <summary>How full a system may be made, as a share of the width that the engraver filled with its bars. It stretched
    /// them by up to a bar's width, some of which can be taken back; and they are not to lie far apart.</summary>
    private const double LeastFull = 0.62,
        MostFull = 1.05;

    /// <summary>The systems of every page.</summary>
    public static List<List<LaidSystem>> Systems(IEnumerable<string> pages) => [.. pages.Select(Of)];

    /// <summary>Ids of the bars after which a page is turned.</summary>
    public static ValueList<string> EndsOf(IReadOnlyCollection<string> pages) =>
        pages.Count > SideBySide
            ? pages.SkipLast(1).Select(p => Measure().Matches(p)[^1].Groups[1].Value).ToValueList()
            : [];

    /// <summary>The bars that begin the systems of each page; null where the pages are as good as they are. One page more is
    /// taken where that leaves fewer turns without a free hand.</summary>
    /// <param name="free">Whether a hand is free after a bar.</param>
    /// <param name="most">So many pages at most.</param>
    public static List<List<string>>? Better(IReadOnlyList<List<LaidSystem>> pages, Func<string, bool> free, int most)
    {
        var bad = pages.SkipLast(1).Count(p => !free(p[^1].Bars[^1].Id));
        List<List<string>>? best = null;
        for (var count = pages.Count; bad > 0 && count <= Math.Min(most, pages.Count + 1); count++)
        {
            var cast = new Casting(pages, count, free);
            if (cast.BadTurns < bad)
            {
                (bad, best) = (cast.BadTurns, cast.Pages);
            }
        }
        return best;
    }

    private static List<LaidSystem> Of(string page)
    {
        var systems = page.Split("class=\"system\"").Skip(1).ToList();
        var tops = systems
            .Select(s => StaffLine().Matches(s).Select(m => Number(m.Groups[2])))
            .Select(lines => (First: lines.DefaultIfEmpty(0).Min(), Last: lines.DefaultIfEmpty(0).Max()))
            .ToList();
        var found = new List<LaidSystem>();
        for (var i = 0; i < systems.Count; i++)
        {
            var bars = Measure().Split(systems[i]);
            // Between the ids stands what is drawn of each bar.
            var laid = Enumerable
                .Range(0, bars.Length / 2)
                .Select(b => new LaidBar(bars[2 * b + 1], Width(bars[2 * b + 2])));
            var height = i + 1 < systems.Count ? tops[i + 1].First - tops[i].First : tops[i].Last - tops[i].First;
            found.Add(new LaidSystem([.. laid], height));
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

    private static int Width(string bar) =>
        StaffLine().Match(bar) is { Success: true } line ? Number(line.Groups[3]) - Number(line.Groups[1]) : 0;

    private static int Number(Group digits) => int.Parse(digits.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("id=\"([^\"]+)\" class=\"measure\"")]
    private static partial Regex Measure();

    [GeneratedRegex("<path d=\"M([0-9]+) ([0-9]+) L([0-9]+) \\2\"")]
    private static partial Regex StaffLine();

    /// <summary>The search: by page, where it may end, each with the best systems that fill it.</summary>
    private sealed class Casting
    {
        private readonly List<LaidBar> _bars;
        private readonly int[] _heights; // by bar, of the system in which it stood
        private readonly double[] _widths; // sums
        private readonly double _full;
        private readonly double _signs;
        private readonly Func<string, bool> _free;

        public Casting(IReadOnlyList<List<LaidSystem>> pages, int count, Func<string, bool> free)
        {
            _free = free;
            var systems = pages.SelectMany(p => p).ToList();
            _bars = [.. systems.SelectMany(s => s.Bars)];
            // Systems of a page that is not full are spread over it: they need no more than those of the fullest.
            var mean = pages.Min(p => p.Average(s => s.Height));
            _heights =
            [
                .. pages.SelectMany(p =>
                {
                    var spread = p.Average(s => s.Height) / mean;
                    return p.SelectMany(s => s.Bars.Select(_ => (int)(s.Height / spread)));
                }),
            ];
            _full = systems.Max(s => s.Width);
            // Clefs and key signature stand in the first bar of every system.
            var signs = systems.Where(s => s.Bars.Count > 1).Select(Signs).Order().ToList();
            _signs = signs.Count == 0 ? 0 : signs[signs.Count / 2];
            double[] widths =
            [
                .. systems.SelectMany(s => s.Bars.Select((b, i) => i == 0 ? Math.Max(b.Width - _signs, 0) : b.Width)),
            ];
            _widths = new double[_bars.Count + 1];
            for (var i = 0; i < _bars.Count; i++)
            {
                _widths[i + 1] = _widths[i] + widths[i];
            }
            // The first page has a header; a last one need not be full.
            var heights = pages.Select(p => p.Sum(s => s.Height)).ToArray();
            var rooms = Enumerable.Range(0, count).Select(p => p == 0 ? heights[0] : heights.Max()).ToArray();
            var most = pages.Max(p => p.Count);
            var counts = Enumerable.Range(0, count).Select(p => p < pages.Count - 1 ? pages[p].Count : most).ToArray();
            Dictionary<int, Way> ways = new() { [0] = new(0, 0, [], null) };
            for (var page = 0; page < count; page++)
            {
                var next = new Dictionary<int, Way>();
                var isLast = page == count - 1;
                foreach (var (start, way) in ways)
                {
                    Fill(
                        start,
                        way,
                        next,
                        rooms[page],
                        isLast ? 1 : (int)Math.Ceiling(counts[page] * LeastOfPage),
                        isLast ? most : counts[page],
                        isLast
                    );
                }
                ways = next;
            }
            if (ways.TryGetValue(_bars.Count, out var found))
            {
                BadTurns = found.BadTurns;
                for (var way = found; way is { Before: not null }; way = way.Before)
                {
                    Pages.Insert(0, [.. way.Starts.Select(s => _bars[s].Id)]);
                }
            }
        }

        /// <summary>Page turns without a free hand.</summary>
        public int BadTurns { get; } = int.MaxValue;

        public List<List<string>> Pages { get; } = [];

        private static double Signs(LaidSystem system) =>
            Math.Max(0, system.Bars[0].Width - system.Bars.Skip(1).Average(b => b.Width));

        // All ways of filling one page from a bar on, each end with its best.
        private void Fill(int start, Way way, Dictionary<int, Way> ends, int room, int least, int most, bool isLast)
        {
            // By number of systems, then by the bar that follows.
            var layer = new Dictionary<int, Row> { [start] = new(0, 0, start, null) };
            for (var systems = 1; systems <= most && layer.Count > 0; systems++)
            {
                var next = new Dictionary<int, Row>();
                foreach (var (from, row) in layer)
                {
                    var height = 0;
                    for (var to = from + 1; to <= _bars.Count; to++)
                    {
                        var full = (_signs + _widths[to] - _widths[from]) / _full;
                        height = Math.Max(height, _heights[to - 1]);
                        if (full > MostFull && to > from + 1 || row.Height + height > room)
                        {
                            break;
                        }
                        var closes = to == _bars.Count;
                        if (full < LeastFull && !closes)
                        {
                            continue;
                        }
                        var uneven =
                            !closes ? (1 - full) * (1 - full) * 100
                            : to == from + 1 ? LoneBar
                            : 0;
                        var cost = row.Cost + uneven;
                        if (!next.TryGetValue(to, out var known) || cost < known.Cost)
                        {
                            next[to] = new(cost, row.Height + height, from, row);
                        }
                    }
                }
                layer = next;
                if (systems < least)
                {
                    continue;
                }
                foreach (var (end, row) in layer.Where(l => isLast == (l.Key == _bars.Count)))
                {
                    var isBad = !isLast && !_free(_bars[end - 1].Id);
                    var missing = isLast ? 0 : most - systems;
                    var cost = way.Cost + row.Cost + missing * missing * 2 + (isBad ? BadTurn : 0);
                    if (!ends.TryGetValue(end, out var known) || cost < known.Cost)
                    {
                        ends[end] = new(cost, way.BadTurns + (isBad ? 1 : 0), StartsOf(row), way);
                    }
                }
            }
        }

        private static List<int> StartsOf(Row row)
        {
            var starts = new List<int>();
            for (var at = row; at.Before is not null; at = at.Before)
            {
                starts.Insert(0, at.From);
            }
            return starts;
        }

        private sealed record Row(double Cost, int Height, int From, Row? Before);

        private sealed record Way(double Cost, int BadTurns, List<int> Starts, Way? Before);
    }
}
