using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Shelf;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Workbench;

/// <summary>What is said of a player, in the words of a player file.</summary>
/// <param name="Said">Of the hands, in any order.</param>
public sealed record PlayerSaid(string Name, IReadOnlyList<HandsSaid> Said, string Notes = "");

/// <summary>A player of the shelf.</summary>
/// <param name="Item">Null: not kept yet.</param>
/// <param name="Right">What the right hand reaches and does.</param>
public sealed record PlayerTold(ShelfItem? Item, PlayerSaid Player, OneHandReport Right, OneHandReport Left);

/// <summary>What came of a leap test.</summary>
/// <param name="Hand"><c>right</c> or <c>left</c>.</param>
/// <param name="Said">For the player, in the words of a player file.</param>
public sealed record LeapTestTold(string Hand, ValueList<string> Sentences, ValueList<HandsSaid> Said);

/// <summary>A part of the leap test.</summary>
/// <param name="About">What is played, in a few words.</param>
/// <param name="Click">Quarters a minute.</param>
/// <param name="Strokes">How many keys are struck in it.</param>
public sealed record LeapTestPartTold(string About, double Click, int Strokes);

/// <summary>The leap test of a hand, part by part.</summary>
public sealed record LeapTestParts(ValueList<LeapTestPartTold> Parts);

/// <summary>Players on the shelf. Calls fail with <see cref="ShelfRefusedException"/>.</summary>
public sealed class PlayerDesk(ShelfDesk shelf, SheetDesk desk)
{
    /// <summary>Of a standard keyboard, in millimetres.</summary>
    public const double UsualOctaveMm = 165.1;

    private const int LongestNotes = 10_000;

    /// <summary>A player as it would be; null, with the faults by their words, where that cannot be.</summary>
    public static PlayerTold? Try(PlayerSaid said, out ValueList<Problem> faults) =>
        Read(said, out faults) is { } player ? Told(null, player) : null;

    public async Task<PlayerTold> Player(string id, CancellationToken cancellation)
    {
        var (item, player) = await Kept(id, cancellation);
        return Told(item, player);
    }

    /// <summary>Keeps a player: a new one, or a new version.</summary>
    /// <param name="id">Null: a new one.</param>
    /// <param name="from">The version that it was made from; of a new one it does not matter.</param>
    /// <returns>Null, with the faults, where something said of it cannot be.</returns>
    public async Task<ShelfSaved?> Keep(
        PlayerSaid said,
        string? id,
        int from,
        Action<ValueList<Problem>> refuse,
        CancellationToken cancellation
    )
    {
        ArgumentNullException.ThrowIfNull(refuse);
        if (Read(said, out var faults) is not { } player)
        {
            refuse(faults);
            return null;
        }
        var content = new Content(player.Name, PlayerText.Write(player));
        return id is null
            ? new ShelfSaved(await shelf.Add(DocumentKind.Player, content, cancellation), null)
            : await shelf.Save(id, from, DocumentKind.Player, content, cancellation);
    }

    /// <summary>The text of a player, for a brief.</summary>
    public async Task<string> Text(string id, CancellationToken cancellation) =>
        PlayerText.Write((await Kept(id, cancellation)).Player);

    /// <summary>Whose hands a brief was kept with, in its words: where a player of the shelf has the same ones, that one.
    /// </summary>
    public async Task<(Wishes Wishes, string? Player)> Known(ShelfOpened opened, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(opened);
        var hands = opened.Source.Stored?.Brief.Hands;
        var all = await shelf.Find(new ShelfWish { Kind = "player" }, cancellation);
        foreach (var item in all.Items)
        {
            var text = (await shelf.Get(item.Id, null, cancellation)).Text;
            if (PlayerText.Read(text).Value is { } player && player.Hands == hands)
            {
                return (opened.Wishes with { Span = null, NoOctaves = false }, item.Id);
            }
        }
        return (opened.Wishes, null);
    }

    /// <summary>Measures a hand from a take of the leap test; null, with the reason, where that cannot be.</summary>
    /// <param name="octaveMm">Width of an octave on the player's keyboard.</param>
    public LeapTestTold? Measure(byte[] midi, double octaveMm, out string problem) =>
        LeapTestTake.Measure(desk.Tools, midi, octaveMm, out problem) is { } measured
            ? new(
                Arranging.Words.Of(measured.Hand),
                measured.Sentences.ToValueList(),
                LeapTestTake.Said(measured).ToValueList()
            )
            : null;

    /// <summary>The parts of the leap test of a hand, <c>right</c> or <c>left</c>; null: it is neither.</summary>
    public static LeapTestParts? Parts(string hand) =>
        hand is "right" or "left"
            ? new(
                LeapTest
                    .Parts(hand == "left" ? Hand.Left : Hand.Right)
                    .Select(p => new LeapTestPartTold(
                        WorkbenchMessages.PartOfTest(p.IsLeaps),
                        p.QuartersPerMinute,
                        p.Keys.Count
                    ))
                    .ToValueList()
            )
            : null;

    /// <summary>The leap test of a hand: <c>midi</c>, or <c>svg</c>, in one picture. Null: there is no such thing.</summary>
    public async Task<Taken?> LeapTestFile(string hand, string format, CancellationToken cancellation)
    {
        if (hand is not ("right" or "left") || format is not ("midi" or "svg"))
        {
            return null;
        }
        var score = LeapTest.Write(hand == "left" ? Hand.Left : Hand.Right);
        var name = $"leap-test-{hand}";
        if (format == "midi")
        {
            return new(name + ".mid", "audio/midi", desk.Tools.ToMidi(score));
        }
        var engraving = await desk.Engraver(
            stop => desk.Tools.Engrave(desk.Tools.ToMusicXml(score), new PageWish(Paper.A4) { Cut = true }, stop),
            cancellation
        );
        return engraving.Value is { Svg: [var picture, ..] } ? new(name + ".svg", "image/svg+xml", picture) : null;
    }

    private async Task<(ShelfItem Item, Player Player)> Kept(string id, CancellationToken cancellation)
    {
        var document = await shelf.Get(id, null, cancellation);
        if (document.Head.Kind != DocumentKind.Player)
        {
            throw new ShelfRefusedException(WorkbenchMessages.NotAPlayer);
        }
        var reading = PlayerText.Read(document.Text);
        return reading.Value is { } player
            ? (ItemOf.Document(document.Head), player)
            : throw new ShelfRefusedException(WorkbenchMessages.ShelvedUnreadable(reading.Diagnostics[0].ToString()));
    }

    private static PlayerTold Told(ShelfItem? item, Player player)
    {
        var said = HandsText
            .Words.Select(w => (w.Word, Value: w.Value(player.Hands)))
            .Where(w => w.Value is not null)
            .Select(w => new HandsSaid(w.Word, w.Value!));
        return new(
            item,
            new PlayerSaid(player.Name, said.ToValueList(), player.Notes),
            ReportOf.OneHand(player.Hands, Hand.Right),
            ReportOf.OneHand(player.Hands, Hand.Left)
        );
    }

    private static Player? Read(PlayerSaid said, out ValueList<Problem> faults)
    {
        ArgumentNullException.ThrowIfNull(said);
        var found = new List<Problem>();
        var name = said.Name.Trim();
        if (!Hands.Player.IsName(name))
        {
            found.Add(new Problem("name", null, "", WorkbenchMessages.PlayerName(Hands.Player.LongestName)));
        }
        if (said.Notes.Length > LongestNotes)
        {
            found.Add(new Problem("notes", null, "", WorkbenchMessages.TooManyWords(LongestNotes)));
        }
        var hands = HandsSaying.Read(new PlayerHands(), said.Said, found);
        faults = found.ToValueList();
        return found.Count > 0 ? null : new Player(name, hands) { Notes = said.Notes };
    }
}
