using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench.Sheets;

/// <summary>Another whole setting of the same tune and brief.</summary>
/// <param name="Done">With what makes it other kept.</param>
/// <param name="Motif">Share of bars whose rhythm is another than in the setting that was there.</param>
/// <param name="Bass">The same of the basses.</param>
public sealed record OtherSetting(SpotDone Done, double Motif, double Bass);

/// <summary>A bar that two versions have otherwise.</summary>
/// <param name="Number">As printed.</param>
/// <param name="First">Its id in the one; null: that one has no such bar.</param>
/// <param name="Second">Its id in the other.</param>
/// <param name="Hands">Which hands differ: <c>right</c>, <c>left</c>.</param>
public sealed record BarDiffers(string Number, string? First, string? Second, ValueList<string> Hands);

/// <summary>Two versions beside each other, bar by bar by their printed numbers.</summary>
/// <param name="Same">How many bars are alike.</param>
public sealed record VersionsCompared(ValueList<BarDiffers> Bars, int Same);

/// <summary>Whole settings beside each other.</summary>
public sealed class VersionDesk(SheetDesk desk)
{
    private static readonly Hand[] BothHands = [Hand.Right, Hand.Left];

    /// <summary>Up to so many other settings, unlike the one that is there and each other.</summary>
    /// <exception cref="BusyException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public async Task<ValueList<OtherSetting>> Others(Sheet sheet, int count, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var (before, piece) = (sheet.Arrangement!, sheet.Piece!);
        var results = await desk.InTurn(
            () => desk.Tools.ArrangeSeveral(piece.Tune, piece.Brief, count + 1, cancellation),
            cancellation
        );
        var others = new List<OtherSetting>();
        foreach (var (i, result) in results.Index().Skip(1))
        {
            if (result.Arrangement is null)
            {
                break;
            }
            var seeded = piece.Brief with { Seed = piece.Brief.Seed + i };
            var made = await desk.Engraved(
                sheet.About!,
                () => Drafted(sheet.About!, piece with { Brief = seeded }, result, cancellation),
                cancellation
            );
            if (made.Sheet is { } other)
            {
                var (motif, bass) = SeveralSettings.Difference(before, other.Arrangement!);
                others.Add(new(new SpotDone(made, desk.Source(other), []), motif, bass));
            }
        }
        return others.ToValueList();
    }

    /// <summary>Where two settings differ.</summary>
    public static VersionsCompared Compare(Sheet first, Sheet second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var (ones, others) = (ByNumber(first.Score!), ByNumber(second.Score!));
        var differing = new List<BarDiffers>();
        foreach (var number in ones.Keys.Union(others.Keys))
        {
            var (one, other) = (ones.GetValueOrDefault(number), others.GetValueOrDefault(number));
            var hands = BothHands.Where(h => !Struck(one, h).SequenceEqual(Struck(other, h))).Select(Words.Of);
            if (one is null || other is null || hands.Any())
            {
                differing.Add(new(number, one?.Id, other?.Id, hands.ToValueList()));
            }
        }
        return new(differing.ToValueList(), ones.Keys.Union(others.Keys).Count() - differing.Count);
    }

    // What no seed gives is kept of a setting that was made to be unlike others, and nothing else: so it stays as it is,
    // and the rest of it can be worked on.
    private Draft Drafted(SheetAbout about, Piece piece, ArrangeResult wanted, CancellationToken cancellation)
    {
        var brief = piece.Brief with { Settled = null };
        var seeded = desk.Tools.Arrange(piece.Tune, brief, cancellation);
        var all = Bars(wanted.Arrangement!).ToList();
        if (seeded.Arrangement is { } plain && plain.Score.Bars.Count == wanted.Arrangement!.Score.Bars.Count)
        {
            var usual = Bars(plain).ToHashSet();
            var kept = Reworking.With(brief.Kept, all.Where(spot => !usual.Contains(spot)));
            var worked = Reworking.Rework(plain, kept, cancellation);
            if (worked.Arrangement is { } after)
            {
                var holding = SpotCraft.Keeping(brief, kept, after);
                var draft = desk.Drafted(about, piece with { Brief = holding }, worked, cancellation);
                if (draft.Sheet is not null)
                {
                    return draft;
                }
            }
        }
        var whole = SpotCraft.Keeping(brief, all.ToValueList(), wanted.Arrangement!);
        return desk.Drafted(about, piece with { Brief = whole }, wanted, cancellation);
    }

    private static IEnumerable<KeptBar> Bars(Arrangement arrangement) =>
        Enumerable
            .Range(0, arrangement.Score.Bars.Count)
            .SelectMany(bar => BothHands.Select(hand => Reworking.Spot(arrangement, bar, hand)));

    private static Dictionary<string, ScoreBar> ByNumber(Score score) =>
        score.Bars.DistinctBy(b => b.Number).ToDictionary(b => b.Number, StringComparer.Ordinal);

    private static IEnumerable<(ScoreTime At, ScoreTime Length, Pitch Pitch, bool Tied)> Struck(
        ScoreBar? bar,
        Hand hand
    ) =>
        bar is null
            ? []
            : bar
                .Voices.Where(v => v.Hand == hand)
                .SelectMany(v => v.Events)
                .SelectMany(e => e.Notes.Select(n => (e.At, e.Length, n.Pitch, n.TieStop)))
                .OrderBy(n => n.At)
                .ThenBy(n => n.Pitch.Midi);
}
