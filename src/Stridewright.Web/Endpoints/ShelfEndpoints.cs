using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web.Endpoints;

/// <summary>What stands on the shelf: found, renamed, tagged, put aside and taken back.</summary>
internal sealed class ShelfEndpoints(ShelfDesk shelf)
{
    private const string Document = "/shelf/documents/{id}",
        Version = Document + "/versions/{number:int}";

    public void Map(IEndpointRouteBuilder api)
    {
        OfShelf<ShelfList>(
            api.MapGet("/shelf/documents", Find),
            "findOnShelf",
            "What fits on the shelf, the last saved first; at most 200 at once."
        );
        OfShelf<ShelfHistory>(
            api.MapGet(Document + "/versions", History),
            "history",
            "The versions of a document, the last first."
        );
        OfShelf<ShelfHistory>(
            api.MapPut(Version + "/name", Name),
            "nameVersion",
            "Names a version, which then always stays."
        );
        OfShelf<ShelfSaved>(
                api.MapPost(Version + "/again", Again),
                "takeVersionAgain",
                "Makes an old version hold again, as a new one."
            )
            .Produces<ShelfSaved>(StatusCodes.Status409Conflict);
        OfShelf<ShelfItem>(
            api.MapPost(Version + "/copy", Copy),
            "copyVersion",
            "Makes a document of its own of a version."
        );
        OfShelf<ShelfItem>(api.MapPut(Document + "/title", Rename), "rename", "Gives a document another title.");
        OfShelf<ShelfItem>(api.MapPut(Document + "/tags", Tag), "tag", "Puts these tags on a document.");
        OfShelf<ShelfItem>(
            api.MapDelete(Document, Delete),
            "putAway",
            "Puts a document aside, from where it can be taken back."
        );
        OfShelf<ShelfItem>(
            api.MapPost(Document + "/back", TakeBack),
            "takeBack",
            "Takes a document back that was put aside."
        );
        OfShelf<Purged>(
            api.MapPost(Document + "/purge", Purge),
            "purge",
            "Throws away for good a document that was put aside."
        );
        OfShelf<Purged>(
            api.MapPost("/shelf/purge", PurgeAll),
            "purgeAll",
            "Throws away for good all that was put aside."
        );
    }

    /// <summary>What every endpoint of the shelf says of itself.</summary>
    public static RouteHandlerBuilder OfShelf<T>(RouteHandlerBuilder endpoint, string name, string summary) =>
        endpoint
            .Answers<T>(name, summary)
            .MayFail(
                StatusCodes.Status400BadRequest,
                StatusCodes.Status404NotFound,
                StatusCodes.Status422UnprocessableEntity,
                StatusCodes.Status503ServiceUnavailable
            );

    /// <summary>A save as an answer: a conflict where another one came first.</summary>
    public static IResult Answer(ShelfSaved saved) =>
        Results.Json(
            saved,
            WebJson.Default.ShelfSaved,
            statusCode: saved.Beside is null ? StatusCodes.Status200OK : StatusCodes.Status409Conflict
        );

    public static IResult Answer(ShelfItem item) => Results.Json(item, WebJson.Default.ShelfItem);

    private async Task<IResult> Find(
        string? kind,
        string? words,
        string? key,
        string? metre,
        double? easiest,
        double? hardest,
        string? tag,
        bool? deleted,
        int? skip,
        int? most,
        CancellationToken cancellation
    )
    {
        var wish = new ShelfWish
        {
            Kind = kind,
            Words = words,
            Key = key,
            Metre = metre,
            Easiest = easiest,
            Hardest = hardest,
            Tag = tag,
            Deleted = deleted ?? false,
            Skip = skip,
            Most = most,
        };
        return Results.Json(await shelf.Find(wish, cancellation), WebJson.Default.ShelfList);
    }

    private async Task<IResult> History(string id, CancellationToken cancellation) =>
        Results.Json(await shelf.History(id, cancellation), WebJson.Default.ShelfHistory);

    private async Task<IResult> Name(string id, int number, NameWanted wanted, CancellationToken cancellation) =>
        Results.Json(await shelf.Name(id, number, wanted.Name, cancellation), WebJson.Default.ShelfHistory);

    private async Task<IResult> Again(string id, int number, AgainWanted wanted, CancellationToken cancellation) =>
        Answer(await shelf.Again(id, number, wanted.From, cancellation));

    private async Task<IResult> Copy(string id, int number, CancellationToken cancellation) =>
        Answer(await shelf.Copy(id, number, cancellation));

    private async Task<IResult> Rename(string id, TitleWanted wanted, CancellationToken cancellation) =>
        Answer(await shelf.Rename(id, wanted.Title, cancellation));

    private async Task<IResult> Tag(string id, TagsWanted wanted, CancellationToken cancellation) =>
        Answer(await shelf.Tag(id, wanted.Tags.ToValueList(), cancellation));

    private async Task<IResult> Delete(string id, CancellationToken cancellation) =>
        Answer(await shelf.Delete(id, cancellation));

    private async Task<IResult> TakeBack(string id, CancellationToken cancellation) =>
        Answer(await shelf.TakeBack(id, cancellation));

    private async Task<IResult> Purge(string id, CancellationToken cancellation) =>
        Results.Json(new Purged(await shelf.Purge(id, cancellation)), WebJson.Default.Purged);

    private async Task<IResult> PurgeAll(CancellationToken cancellation) =>
        Results.Json(new Purged(await shelf.Purge(null, cancellation)), WebJson.Default.Purged);
}
