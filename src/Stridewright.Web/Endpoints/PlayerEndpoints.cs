using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web.Endpoints;

/// <summary>Players on the shelf, and what their hands do.</summary>
internal sealed class PlayerEndpoints(PlayerDesk players)
{
    public void Map(IEndpointRouteBuilder api)
    {
        ShelfEndpoints.OfShelf<PlayerTold>(
            api.MapGet("/players/{id}", Player),
            "player",
            "A player of the shelf, and what each hand reaches."
        );
        ShelfEndpoints.OfShelf<PlayerTold>(
            api.MapPost("/players/try", Try),
            "tryPlayer",
            "What the hands of a player reach who is not kept yet."
        );
        ShelfEndpoints.OfShelf<ShelfItem>(api.MapPost("/players", Add), "keepPlayer", "Keeps a player on the shelf.");
        ShelfEndpoints
            .OfShelf<ShelfSaved>(
                api.MapPut("/players/{id}", Save),
                "savePlayer",
                "Keeps a new version of a player; where another save came first, beside it."
            )
            .Produces<ShelfSaved>(StatusCodes.Status409Conflict);
        api.MapPost("/players/leap-test", Measure)
            .Answers<LeapTestTold>("measureLeaps", "Measures a hand from a take of the leap test, a MIDI file.")
            .Accepts<byte[]>("application/octet-stream")
            .MayFail(StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/players/leap-test/{hand}", Parts)
            .Answers<LeapTestParts>("leapTestParts", "The parts of the leap test of a hand, right or left.")
            .MayFail(StatusCodes.Status404NotFound);
        api.MapGet("/players/leap-test/{hand}/{format}", LeapTest)
            .WithName("leapTest")
            .WithSummary("The leap test of a hand, right or left: midi or svg.")
            .Produces<byte[]>(StatusCodes.Status200OK, "application/octet-stream")
            .MayFail(StatusCodes.Status404NotFound);
    }

    private async Task<IResult> Player(string id, CancellationToken cancellation) =>
        Results.Json(await players.Player(id, cancellation), WebJson.Default.PlayerTold);

    private IResult Try(PlayerSaid said) =>
        PlayerDesk.Try(said, out var faults) is { } told
            ? Results.Json(told, WebJson.Default.PlayerTold)
            : SettingEndpoints.Refused(faults, isBadWish: true);

    private async Task<IResult> Add(PlayerWanted wanted, CancellationToken cancellation)
    {
        var (saved, faults) = await Keep(wanted, null, cancellation);
        return saved is null ? faults! : Results.Json(saved.Item, WebJson.Default.ShelfItem);
    }

    private async Task<IResult> Save(string id, PlayerWanted wanted, CancellationToken cancellation)
    {
        var (saved, faults) = await Keep(wanted, id, cancellation);
        return saved is null ? faults! : ShelfEndpoints.Answer(saved);
    }

    private async Task<(ShelfSaved? Saved, IResult? Faults)> Keep(
        PlayerWanted wanted,
        string? id,
        CancellationToken cancellation
    )
    {
        ValueList<Problem> found = [];
        var saved = await players.Keep(wanted.Player, id, wanted.From, f => found = f, cancellation);
        return (saved, saved is null ? SettingEndpoints.Refused(found, isBadWish: true) : null);
    }

    private async Task<IResult> Measure(HttpRequest request, double? octave, CancellationToken cancellation)
    {
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancellation);
        return
            players.Measure(
                body.ToArray(),
                octave is > 100 and < 200 ? octave.Value : PlayerDesk.UsualOctaveMm,
                out var problem
            )
                is { } told
            ? Results.Json(told, WebJson.Default.LeapTestTold)
            : Faults.Of(StatusCodes.Status422UnprocessableEntity, problem);
    }

    private static IResult Parts(string hand) =>
        PlayerDesk.Parts(hand) is { } parts
            ? Results.Json(parts, WebJson.Default.LeapTestParts)
            : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoLeapTest);

    private async Task<IResult> LeapTest(string hand, string format, CancellationToken cancellation) =>
        await players.LeapTestFile(hand, format, cancellation) is { } file
            ? Results.File(file.Bytes, file.MediaType, file.Name)
            : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoLeapTest);
}
