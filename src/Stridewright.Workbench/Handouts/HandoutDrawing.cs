using Stridewright.Engraving;

namespace Stridewright.Workbench.Handouts;

/// <summary>A hand-out on its one page, or why there is none.</summary>
/// <param name="Fault">Empty where there is a page.</param>
internal sealed record HandoutDrawing(EngravedPages? Pages, string Fault)
{
    /// <summary>Work for the thread of the engraver.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static HandoutDrawing Of(
        ITools tools,
        HandoutSheet sheet,
        HandoutWish wish,
        Paper paper,
        CancellationToken cancellation
    )
    {
        if (wish.OneSystem)
        {
            return sheet.Parts.OfType<HandoutMusic>().FirstOrDefault() is not { } music
                ? new(null, WorkbenchMessages.NoMusicForSystem)
                : OneSystem(tools, music, paper, cancellation);
        }
        var drawing = tools.Draw(sheet, paper, cancellation);
        if (drawing.Value is not { } drawn)
        {
            return new(
                null,
                WorkbenchMessages.NotEngraved(drawing.Diagnostics is [var fault, ..] ? fault.Message : "")
            );
        }
        return drawn.Pages is null
            ? new(null, WorkbenchMessages.TooMuch(drawn.Over, drawn.Rooms))
            : new(drawn.Pages, "");
    }

    private static HandoutDrawing OneSystem(
        ITools tools,
        HandoutMusic music,
        Paper paper,
        CancellationToken cancellation
    )
    {
        var drawing = tools.DrawSystem(music, paper, cancellation);
        return drawing.Value is { } pages
            ? new(pages, "")
            : new(null, WorkbenchMessages.NotEngraved(drawing.Diagnostics is [var fault, ..] ? fault.Message : ""));
    }
}
