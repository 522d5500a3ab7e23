using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Sheets;

/// <summary>Work on single bars of settings in memory: what is known of them, other ways, keeping, writing, figures.</summary>
public sealed class SpotDesk(SheetDesk desk)
{
    private const int MostStrokes = 64;

    // Weights of hard bars by their place among all: the hardest twentieth, tenth and fifth, where they stand out.
    private static readonly (double Share, int Hard)[] HardShares = [(0.05, 3), (0.1, 2), (0.2, 1)];
    private const double StandsOut = 1.1;

    private static readonly Hand[] BothHands = [Hand.Right, Hand.Left];

    /// <summary>All bars with their effort, and what is kept.</summary>
    public static SheetBars Bars(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var efforts = sheet.Verdict!.Effort.Bars.ToDictionary(b => b.Bar, b => b.Value);
        var kept = sheet.Arrangement!.Brief.Kept.ToLookup(k => k.Bar, k => Words.Of(k.Hand));
        var ranked = efforts.Values.OrderDescending().ToList();
        var middle = ranked.Count == 0 ? 0 : ranked[ranked.Count / 2];
        return new(
            sheet
                .Score!.Bars.Select(
                    (bar, i) =>
                    {
                        var effort = efforts.GetValueOrDefault(i);
                        var place = ranked.IndexOf(effort);
                        var hard =
                            effort < middle * StandsOut
                                ? 0
                                : HardShares.FirstOrDefault(h => place < Math.Max(1, h.Share * ranked.Count)).Hard;
                        return new SheetBar(bar.Id, bar.Number, effort, hard, kept[i].ToValueList());
                    }
                )
                .ToValueList(),
            sheet.Piece!.Figures.Select(f => new SheetFigure(f.Name, SpotCraft.KindOf(f))).ToValueList()
        );
    }

    /// <summary>What is known of a bar; null: there is none of this id.</summary>
    public static SpotNotes? Notes(Sheet sheet, string id)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (IndexOf(sheet, id) is not (>= 0 and var bar))
        {
            return null;
        }
        var arrangement = sheet.Arrangement!;
        var effort = sheet.Verdict!.Effort.Bars.FirstOrDefault(b => b.Bar == bar);
        var reasons = sheet.Reasons.FirstOrDefault(b => b.Bar == bar);
        return new(
            Bars(sheet).Bars[bar],
            effort?.Right ?? 0,
            effort?.Left ?? 0,
            reasons?.Reasons.Select(ReportOf.Why).ToValueList() ?? [],
            Strokes(arrangement, bar, Hand.Right),
            Strokes(arrangement, bar, Hand.Left),
            Reworking.Step(arrangement).ToString(),
            arrangement.Score.Bars[bar].Length.ToString()
        );
    }

    /// <summary>Other ways for a bar; null: there is none of this id.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public async Task<ValueList<WayFound>?> Ways(Sheet sheet, string id, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (IndexOf(sheet, id) is not (>= 0 and var bar))
        {
            return null;
        }
        var ways = await Found(sheet, bar, cancellation);
        return ways.Select(w => SpotCraft.Found(w.Name, w.Way)).ToValueList();
    }

    /// <summary>Another way for a bar, as it would be; null: there is no such bar or way.</summary>
    public async Task<SpotSeen?> Way(Sheet sheet, string id, string name, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        if (IndexOf(sheet, id) is not (>= 0 and var bar))
        {
            return null;
        }
        var way = (await Found(sheet, bar, cancellation)).FirstOrDefault(w => w.Name == name).Way;
        return way is null ? null : await Seen(way.Result, bar, way.EffortAfter, way.OtherBars, cancellation);
    }

    /// <summary>A bar as somebody writes it, judged; null: there is none of this id.</summary>
    public async Task<SpotSeen?> Try(Sheet sheet, SpotWish wish, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(wish);
        if (IndexOf(sheet, wish.Bar ?? "") is not (>= 0 and var bar))
        {
            return null;
        }
        if (Written(sheet, bar, wish, out var fault) is not { } kept)
        {
            return new(null, null, null, [], fault);
        }
        var result = await desk.InTurn(() => Reworking.Rework(sheet.Arrangement!, kept, cancellation), cancellation);
        if (Passed.Of(desk.Tools, result, out var place, out var reason) is not var (after, verdict))
        {
            return new(null, null, null, [], place.Length > 0 ? $"{place}: {reason}" : reason);
        }
        var others = Reworking
            .Differing(sheet.Arrangement!, after)
            .Where(b => b != bar)
            .Select(b => after.Score.Bars[b].Number)
            .ToValueList();
        var effort = verdict.Effort.Bars.FirstOrDefault(b => b.Bar == bar)?.Value;
        return await Seen(after, bar, effort, others, cancellation);
    }

    /// <summary>Does what is wished with a bar.</summary>
    /// <exception cref="BusyException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public async Task<SpotDone> Do(Sheet sheet, SpotWish wish, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(wish);
        var bar = wish.Bar is null ? -1 : IndexOf(sheet, wish.Bar);
        if (bar < 0 && (wish.Bar is not null || wish.Action is not ("release" or "use")))
        {
            return Refused(WorkbenchMessages.NoSuchSpot);
        }
        var (before, piece) = (sheet.Arrangement!, sheet.Piece!);
        if (wish.Action == "figure")
        {
            return WithFigure(sheet, wish, bar);
        }
        var (kept, fault) = await Kept(sheet, wish, bar, cancellation);
        if (kept is null)
        {
            return Refused(fault);
        }
        var result = await desk.Engraved(
            sheet.About!,
            () =>
            {
                var worked = Reworking.Rework(before, kept, cancellation);
                var brief = worked.Arrangement is { } after ? SpotCraft.Keeping(piece.Brief, kept, after) : piece.Brief;
                return desk.Drafted(sheet.About!, piece with { Brief = brief }, worked, cancellation);
            },
            cancellation
        );
        if (result.Sheet is not { } made)
        {
            return new(result, null, []);
        }
        var changed = Reworking.Differing(before, made.Arrangement!).Select(b => made.Score!.Bars[b].Number);
        return new(result, desk.Source(made), changed.ToValueList());
    }

    private async Task<(ValueList<KeptBar>? Kept, string Fault)> Kept(
        Sheet sheet,
        SpotWish wish,
        int bar,
        CancellationToken cancellation
    )
    {
        var before = sheet.Arrangement!;
        var kept = before.Brief.Kept;
        var hands = BothHands.Where(h => wish.Hand is null || Words.Of(h) == wish.Hand).ToList();
        switch (wish.Action)
        {
            case "keep":
                return (Reworking.With(kept, hands.Select(h => Reworking.Spot(before, bar, h))), "");
            case "release":
                return (kept.Where(k => (bar >= 0 && k.Bar != bar) || !hands.Contains(k.Hand)).ToValueList(), "");
            case "choose":
                var ways = await Found(sheet, bar, cancellation);
                return ways.FirstOrDefault(w => w.Name == wish.Way).Way is { } way
                    ? (Reworking.With(kept, [way.Spot]), "")
                    : (null, WorkbenchMessages.NoSuchWay(wish.Way ?? "", ways.Select(w => w.Name)));
            case "write":
                return (Written(sheet, bar, wish, out var fault), fault);
            case "use":
                return await desk.InTurn(
                    () =>
                    {
                        var figures = sheet.Piece!.Figures;
                        var put = SpotCraft.Using(before, figures, wish.Figure, bar, out var unfit, cancellation);
                        return (put, Sentence(unfit));
                    },
                    cancellation
                );
            default:
                return (null, WorkbenchMessages.NoSuchAction(wish.Action));
        }
    }

    private SpotDone WithFigure(Sheet sheet, SpotWish wish, int bar)
    {
        var figures = SpotCraft.WithFigure(
            sheet.Arrangement!,
            sheet.Piece!.Figures,
            wish.Figure,
            bar,
            wish.Bars,
            wish.Hand,
            wish.Kind,
            out var fault
        );
        if (figures is null)
        {
            return Refused(Sentence(fault));
        }
        var made = sheet with { Piece = sheet.Piece with { Figures = figures } };
        return new(new SheetResult(made, []), desk.Source(made), []);
    }

    // The strokes of one hand as they were sent, as a bar that is kept; null, with the reason, where they are none.
    private static ValueList<KeptBar>? Written(Sheet sheet, int bar, SpotWish wish, out string fault)
    {
        fault = "";
        var strokes = new List<WrittenStroke>();
        if (wish.Hand is not ("right" or "left") || wish.Strokes is not { Count: <= MostStrokes } sent)
        {
            fault = WorkbenchMessages.NoStrokes(MostStrokes);
            return null;
        }
        var length = sheet.Score!.Bars[bar].Length;
        foreach (var stroke in sent)
        {
            var read = WrittenStroke.Read(stroke.At, stroke.Length, stroke.Pitches, stroke.Rolled);
            if (read is null || read.At >= length)
            {
                fault = WorkbenchMessages.NoStroke(stroke.At, stroke.Length, stroke.Pitches);
                return null;
            }
            strokes.Add(read);
        }
        var hand = wish.Hand == "right" ? Hand.Right : Hand.Left;
        var arrangement = sheet.Arrangement!;
        return Reworking.With(arrangement.Brief.Kept, [Reworking.Written(arrangement, bar, hand, strokes)]);
    }

    private async Task<SpotSeen> Seen(
        Arrangement after,
        int bar,
        double? effort,
        ValueList<string> others,
        CancellationToken cancellation
    )
    {
        var alone = after.Score with
        {
            Title = "",
            Subtitle = null,
            Composer = null,
            Footnotes = [],
            Bars = [after.Score.Bars[bar] with { Marks = BarMarks.None }],
        };
        var picture = await desk.Picture(alone, cancellation);
        // At the tempo of the piece, which is printed over its first bar.
        var tempo = after.Score.Bars[0].Directions.Where(d => d.BeatsPerMinute is not null).Take(1);
        var timed = alone with { Bars = [alone.Bars[0] with { Directions = [.. tempo, .. alone.Bars[0].Directions] }] };
        var heard = Heard.Of(timed, desk.Tools.Perform(timed));
        return new(System.Text.Encoding.UTF8.GetString(picture), heard, effort, others);
    }

    private Task<List<(string Name, OtherWay Way)>> Found(Sheet sheet, int bar, CancellationToken cancellation) =>
        desk.InTurn(() => sheet.Ways.Of(sheet.Arrangement!, bar, cancellation), cancellation);

    private static ValueList<SheetStroke> Strokes(Arrangement arrangement, int bar, Hand hand) =>
        hand == Hand.Right && arrangement.Score.LeftHandOnly
            ? []
            : Reworking
                .Spot(arrangement, bar, hand)
                .Strokes.Select(s => new SheetStroke(
                    s.At.ToString(),
                    s.Length.ToString(),
                    s.Pitches.Select(p => p.ToString()).ToValueList(),
                    s.Rolled,
                    s.Role
                ))
                .ToValueList();

    private static int IndexOf(Sheet sheet, string id)
    {
        var bars = sheet.Score!.Bars;
        for (var i = 0; i < bars.Count; i++)
        {
            if (bars[i].Id == id)
            {
                return i;
            }
        }
        return -1;
    }

    private static SpotDone Refused(string why) =>
        new(new SheetResult(null, [new Problem("spot", null, "", why)]), null, []);

    private static string Sentence(Diagnostic? fault) =>
        fault is null ? ""
        : fault.Place.ToString() is { Length: > 0 } place ? $"{place}: {fault.Message}"
        : fault.Message;
}
