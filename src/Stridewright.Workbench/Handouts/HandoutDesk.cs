using Stridewright.Music;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Handouts;

/// <summary>A hand-out in memory, to be looked at and taken away.</summary>
/// <param name="Name">For files made of it, without ending.</param>
/// <param name="Svg">Its page, in UTF-8.</param>
public sealed record HandoutPage(string Name, byte[] Svg)
{
    internal EngravedPages? Engraved { get; init; }
}

/// <summary>A hand-out, or why there is none.</summary>
/// <param name="IsBadWish">A wish cannot be; its problem names it.</param>
public sealed record HandoutResult(HandoutPage? Page, ValueList<Problem> Problems, bool IsBadWish = false);

/// <summary>Hand-outs of settings in memory.</summary>
public sealed class HandoutDesk(SheetDesk desk)
{
    /// <exception cref="BusyException">Too many wait already.</exception>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public async Task<HandoutResult> Make(Sheet sheet, HandoutWish wish, Paper paper, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var contents = new HandoutContents(desk.Tools, sheet.Piece!, sheet.Arrangement!, wish);
        if (await desk.InTurn(() => contents.Gather(cancellation), cancellation) is not { } gathered)
        {
            return new(null, contents.Faults, IsBadWish: true);
        }
        var drawn = await desk.Engraver(
            stop => HandoutDrawing.Of(desk.Tools, gathered, wish, paper, stop),
            cancellation
        );
        return drawn.Pages is { } pages
            ? new(new HandoutPage(sheet.Name + "-hand-out", pages.Svg[0]) { Engraved = pages }, [])
            : new(null, [new Problem("items", null, "", drawn.Fault)]);
    }

    /// <summary>A hand-out as a file; null: there is no such format.</summary>
    /// <param name="format"><c>pdf</c>, <c>svg</c> or <c>png</c>.</param>
    public async Task<Taken?> File(HandoutPage page, string format, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(page);
        return format switch
        {
            "svg" => new(page.Name + ".svg", "image/svg+xml", page.Svg),
            "pdf" => new(
                page.Name + ".pdf",
                "application/pdf",
                await desk.Engraver(_ => page.Engraved!.Pdf(), cancellation)
            ),
            "png" => new(
                page.Name + ".png",
                "image/png",
                await desk.Engraver(_ => page.Engraved!.Png(0), cancellation)
            ),
            _ => null,
        };
    }
}
