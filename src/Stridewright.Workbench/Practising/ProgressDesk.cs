using Stridewright.Music;
using Stridewright.Practice.Progress;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench.Practising;

/// <summary>What the takes of a shelf show of its players. Calls fail with <see cref="ShelfRefusedException"/>.</summary>
public sealed class ProgressDesk
{
    private const int DaysOfWeek = 7;

    private readonly PlayerShelf _players;
    private readonly TakeShelf _takes;

    internal ProgressDesk(PlayerShelf players, TakeShelf takes) => (_players, _takes) = (players, takes);

    /// <summary>One player, or all of them.</summary>
    /// <param name="playerId">Null: all.</param>
    /// <param name="now">Its day is today, its zone that of the days on which takes were played.</param>
    public async Task<ProgressReport> Of(string? playerId, DateTimeOffset now, CancellationToken cancellation)
    {
        var players = (await _players.List(cancellation)).Where(p => playerId is null || p.Id == playerId).ToList();
        if (playerId is not null && players.Count == 0)
        {
            throw new ShelfRefusedException(WorkbenchMessages.NoPlayer) { IsMissing = true };
        }
        var takes = await _takes.List(playerId, null, cancellation);
        var known = players.Select(p => p.Id).ToHashSet();
        var byPlayer = takes.ToLookup(t => t.Take.PlayerId is { } id && known.Contains(id) ? id : "");
        var today = DateOnly.FromDateTime(now.DateTime);
        var nobodys = byPlayer[""].ToList();
        return new()
        {
            Today = today,
            Players =
            [
                .. players.Select(p => Player(p.Id, p.Name, byPlayer[p.Id], today, now.Offset)),
                .. nobodys.Count > 0 ? [Player(null, "", nobodys, today, now.Offset)] : Array.Empty<PlayerProgress>(),
            ],
        };
    }

    /// <summary>Throws a player away with all of theirs.</summary>
    public async Task<PlayerForgotten> Forget(string playerId, CancellationToken cancellation)
    {
        var name = (await _players.List(cancellation)).FirstOrDefault(p => p.Id == playerId)?.Name;
        var takes = await _players.Forget(playerId, cancellation);
        return new(name ?? "", takes, WorkbenchMessages.Forgotten(name ?? "", takes));
    }

    private static PlayerProgress Player(
        string? id,
        string name,
        IEnumerable<ShelvedTake> takes,
        DateOnly today,
        TimeSpan zone
    )
    {
        var past = takes.Select(t => Past(t.Take, zone)).OfType<PastTake>().ToList();
        var pieces = ProgressReckoning.Of(past, today);
        return new(
            id,
            name,
            past.Count(t => t.Day <= today && t.Day > today.AddDays(-DaysOfWeek)),
            pieces
                .SelectMany(p =>
                    p.Items.Where(i => i.IsDue).Select(i => WorkbenchMessages.DueOf(p.Title, What(i.Item)))
                )
                .ToValueList(),
            pieces.Select(Piece).ToValueList()
        );
    }

    // A take in which nothing could be heard says nothing of anybody.
    private static PastTake? Past(KeptTake take, TimeSpan zone) =>
        take.Heard is not { } heard
            ? null
            : new PastTake
            {
                At = take.At.ToOffset(zone),
                Item = new PracticeItem(
                    take.PieceId ?? "title " + take.Title,
                    take.Title,
                    take.Step,
                    take.Range,
                    take.Hand switch
                    {
                        "left" => Hand.Left,
                        "right" => Hand.Right,
                        _ => null,
                    }
                ),
                Asked = heard.Asked,
                Right = heard.Right,
                Extra = heard.Extra,
                Bars = heard.Bars,
                BarsNotPlayed = heard.BarsNotPlayed,
                Tempo = heard.QuartersPerMinute,
                AskedTempo = heard.AskedQuartersPerMinute,
                Unevenness = heard.LeftUnevenness,
            };

    private static PieceReport Piece(PieceProgress piece) =>
        new(
            piece.Title,
            piece.First,
            piece.Last,
            piece.Takes,
            Rounded(piece.TempoReached, 1),
            Rounded(piece.AskedTempo, 1),
            piece
                .Weeks.Select(w => new WeekReport(
                    w.Monday,
                    w.Takes,
                    w.Days,
                    Math.Round(w.Cleanness, 3),
                    Rounded(w.TempoReached, 1),
                    Rounded(w.Unevenness, 3)
                ))
                .ToValueList(),
            piece
                .Items.Select(i => new ItemReport(
                    What(i.Item),
                    i.Takes,
                    i.Last,
                    i.CleanDays,
                    Rounded(i.TempoReached, 1),
                    Math.Round(i.Cleanness, 3),
                    i.Due,
                    i.IsDue
                ))
                .ToValueList()
        );

    private static string What(PracticeItem item) =>
        WorkbenchMessages.Practised(item.Step, item.Range, item.Hand is { } hand ? Arranging.Words.Of(hand) : null);

    private static double? Rounded(double? value, int decimals) =>
        value is { } known ? Math.Round(known, decimals) : null;
}
