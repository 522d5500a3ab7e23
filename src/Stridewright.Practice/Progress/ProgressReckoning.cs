using Stridewright.Music;

namespace Stridewright.Practice.Progress;

/// <summary>Reads progress off the takes of one player: nothing is guessed that no take showed.</summary>
public static class ProgressReckoning
{
    /// <summary>Each piece, the one that was played last first.</summary>
    /// <param name="takes">Of one player, in any order.</param>
    /// <param name="today">The day for which it is asked what is due.</param>
    public static ValueList<PieceProgress> Of(IEnumerable<PastTake> takes, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(takes);
        return takes
            .GroupBy(t => t.Item.Piece, StringComparer.Ordinal)
            .Select(piece => Piece([.. piece.OrderBy(t => t.At)], today))
            .OrderByDescending(p => p.Last)
            .ThenBy(p => p.Title, StringComparer.Ordinal)
            .ThenBy(p => p.Piece, StringComparer.Ordinal)
            .ToValueList();
    }

    /// <summary>The day on which something is due again: after a day, then after twice as many with each clean day in a row,
    /// up to four weeks.</summary>
    /// <param name="cleanDays">Days in a row that had a clean take, the last one counted.</param>
    public static DateOnly Due(DateOnly last, int cleanDays)
    {
        var wait =
            ProgressLimits.FirstReturn.Value * Math.Pow(ProgressLimits.Wider.Value, Math.Clamp(cleanDays - 1, 0, 30));
        return last.AddDays((int)Math.Min(wait, ProgressLimits.LastReturn.Value));
    }

    private static PieceProgress Piece(List<PastTake> takes, DateOnly today)
    {
        var whole = takes.Where(t => t.Item.IsWhole).ToList();
        return new(
            takes[0].Item.Piece,
            takes[^1].Item.Title,
            takes[0].Day,
            takes[^1].Day,
            takes.Count,
            TempoReached(whole),
            takes.FindLast(t => t.AskedTempo is not null)?.AskedTempo,
            takes.GroupBy(t => Monday(t.Day)).Select(week => Week(week.Key, [.. week])).ToValueList(),
            takes
                // A title that was changed meanwhile is no other thing to practise.
                .GroupBy(t => t.Item with { Title = "" })
                .Select(item => Item([.. item], today))
                .OrderByDescending(i => i.Item.IsWhole)
                .ThenBy(i => i.Due)
                .ThenBy(i => i.Item.ToString(), StringComparer.Ordinal)
                .ToValueList()
        );
    }

    private static WeekProgress Week(DateOnly monday, List<PastTake> takes) =>
        new(
            monday,
            takes.Count,
            takes.Select(t => t.Day).Distinct().Count(),
            Median(takes.Select(t => t.Cleanness))!.Value,
            TempoReached(takes.Where(t => t.Item.IsWhole)),
            Median(takes.Select(t => t.Unevenness).OfType<double>())
        );

    private static ItemProgress Item(List<PastTake> takes, DateOnly today)
    {
        var last = takes[^1];
        var cleanDays = takes.GroupBy(t => t.Day).Reverse().TakeWhile(day => day.Any(t => t.IsClean)).Count();
        var due = Due(last.Day, cleanDays);
        return new(
            last.Item,
            takes.Count,
            last.Day,
            cleanDays,
            TempoReached(takes),
            last.Cleanness,
            due,
            due <= today && today.DayNumber - last.Day.DayNumber <= ProgressLimits.LeftAside.Value
        );
    }

    private static double? TempoReached(IEnumerable<PastTake> takes) => takes.Where(t => t.IsClean).Max(t => t.Tempo);

    // Weeks begin on Monday (ISO 8601).
    private static DateOnly Monday(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    private static double? Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count == 0 ? null : (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
    }
}
