using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Workbench.Practising;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web.Endpoints;

/// <summary>How players have come on, by the takes on the shelf.</summary>
internal sealed class ProgressEndpoints(ShelfDesk shelf)
{
    private const string FileName = "progress.csv",
        MediaType = "text/csv; charset=utf-8";

    // Zones that there are: UTC-12 to UTC+14, in minutes.
    private const int FurthestWest = -12 * 60,
        FurthestEast = 14 * 60;

    public void Map(IEndpointRouteBuilder api)
    {
        ShelfEndpoints.OfShelf<ProgressReport>(
            api.MapGet("/progress", Progress),
            "progress",
            "How players have come on: one of them, or all. zone: minutes east of Greenwich, where the days are counted."
        );
        api.MapGet("/progress.csv", Table)
            .WithName("progressTable")
            .WithSummary("The same as a table: a line for each player, piece and week.")
            .Produces<byte[]>(contentType: MediaType)
            .WithMetadata(new Limits(Limits.Words))
            .MayFail(
                StatusCodes.Status400BadRequest,
                StatusCodes.Status404NotFound,
                StatusCodes.Status422UnprocessableEntity,
                StatusCodes.Status503ServiceUnavailable
            );
        ShelfEndpoints.OfShelf<PlayerForgotten>(
            api.MapDelete("/players/{id}", Forget),
            "forgetPlayer",
            "Throws a player away with all of theirs, for good."
        );
    }

    private async Task<IResult> Progress(string? player, int? zone, CancellationToken cancellation) =>
        Results.Json(await shelf.Progress.Of(player, Now(zone), cancellation), WebJson.Default.ProgressReport);

    private async Task<IResult> Table(string? player, int? zone, CancellationToken cancellation) =>
        Results.Bytes(ProgressCsv.Of(await shelf.Progress.Of(player, Now(zone), cancellation)), MediaType, FileName);

    private async Task<IResult> Forget(string id, CancellationToken cancellation) =>
        Results.Json(await shelf.Progress.Forget(id, cancellation), WebJson.Default.PlayerForgotten);

    private static DateTimeOffset Now(int? zone) =>
        TimeProvider
            .System.GetUtcNow()
            .ToOffset(TimeSpan.FromMinutes(Math.Clamp(zone ?? 0, FurthestWest, FurthestEast)));
}
