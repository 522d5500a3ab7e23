using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Workbench;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web.Endpoints;

/// <summary>From the desk to the shelf, and back.</summary>
internal sealed class ArrangementEndpoints(
    ShelfDesk shelf,
    PlayerDesk players,
    Memory<TuneSource> brought,
    Memory<Sheet> made
)
{
    public void Map(IEndpointRouteBuilder api)
    {
        ShelfEndpoints.OfShelf<ShelfItem>(
            api.MapPost("/shelf/arrangements", Keep),
            "keepSetting",
            "Keeps a setting on the shelf, as an arrangement of its own."
        );
        ShelfEndpoints
            .OfShelf<ShelfSaved>(
                api.MapPut("/shelf/arrangements/{id}", Save),
                "saveSetting",
                "Keeps a setting as a new version of an arrangement; where another save came first, beside it."
            )
            .Produces<ShelfSaved>(StatusCodes.Status409Conflict);
        ShelfEndpoints.OfShelf<Opened>(
            api.MapPost("/shelf/documents/{id}/open", Open),
            "openFromShelf",
            "Puts an arrangement, or one of its versions, on the desk: its tune and its brief."
        );
    }

    private async Task<IResult> Keep(KeepWanted wanted, CancellationToken cancellation) =>
        made.Find(wanted.Setting) is { } sheet
            ? ShelfEndpoints.Answer(await shelf.Keep(sheet, wanted.Sitting, cancellation))
            : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);

    private async Task<IResult> Save(string id, SaveWanted wanted, CancellationToken cancellation) =>
        made.Find(wanted.Setting) is { } sheet
            ? ShelfEndpoints.Answer(await shelf.Keep(sheet, id, wanted.From, wanted.Sitting, cancellation))
            : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);

    private async Task<IResult> Open(string id, int? version, CancellationToken cancellation)
    {
        var opened = await shelf.Open(id, version, cancellation);
        var (wishes, player) = await players.Known(opened, cancellation);
        var told = TuneEndpoints.Told(brought.Keep(opened.Source), opened.Source);
        return Results.Json(
            new Opened(
                opened.Item,
                opened.Version,
                told,
                SettingEndpoints.Told(wishes, opened.Look) with
                {
                    Player = player,
                }
            ),
            WebJson.Default.Opened
        );
    }
}
