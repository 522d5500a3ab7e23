using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web.Endpoints;

/// <summary>The whole shelf as one zip, and back.</summary>
internal sealed class BackupEndpoints(ShelfDesk shelf)
{
    private const string Name = "stridewright-shelf.zip";

    public void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/shelf/backup", BackUp)
            .WithName("backUp")
            .WithSummary("The whole shelf as one zip.")
            .Produces<byte[]>(StatusCodes.Status200OK, "application/zip")
            .MayFail(StatusCodes.Status503ServiceUnavailable);
        ShelfEndpoints
            .OfShelf<Restored>(
                api.MapPost("/shelf/backup", Restore),
                "restore",
                "Puts a backup in the place of the shelf, which is kept beside it as it was."
            )
            .Accepts<byte[]>("application/zip")
            .MayFail(StatusCodes.Status413PayloadTooLarge)
            .WithMetadata(new Limits(Limits.Backup));
    }

    private async Task<IResult> BackUp(CancellationToken cancellation) =>
        Results.Stream(await shelf.BackUp(cancellation), "application/zip", Name);

    private async Task<IResult> Restore(HttpRequest request, CancellationToken cancellation) =>
        Results.Json(new Restored(await shelf.Restore(request.Body, cancellation)), WebJson.Default.Restored);
}
