using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench.Listening;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web.Endpoints;

/// <summary>Takes of settings: played in, brought as files, heard, looked at again.</summary>
internal sealed class TakeEndpoints(TakeDesk takes, Memory<Sheet> made)
{
    private const string OfSetting = "/settings/{id}/takes",
        One = OfSetting + "/{take}";

    public void Map(IEndpointRouteBuilder api)
    {
        ShelfEndpoints.OfShelf<TakeBegun>(
            api.MapPost(OfSetting, Begin),
            "beginTake",
            "Begins a take of a setting; from now on it stands on the shelf."
        );
        ShelfEndpoints.OfShelf<TakeTold>(
            api.MapPost("/takes/{take}/events", Add),
            "playOn",
            "Takes down what was played next, and keeps it."
        );
        ShelfEndpoints.OfShelf<TakeSeen>(
            api.MapPost(One + "/done", Finish),
            "finishTake",
            "Ends a take and hears it against its setting."
        );
        ShelfEndpoints
            .OfShelf<TakeSeen>(
                api.MapPost(OfSetting + "/file", Bring),
                "bringTake",
                "Keeps a take that is a MIDI file, and hears it against a setting."
            )
            .Accepts<byte[]>("application/octet-stream")
            .MayFail(StatusCodes.Status413PayloadTooLarge)
            .WithMetadata(new Limits(Limits.Take));
        ShelfEndpoints.OfShelf<TakeSeen>(api.MapGet(One, Look), "take", "A kept take, heard against a setting.");
        ShelfEndpoints.OfShelf<Heard>(
            api.MapGet(One + "/heard", Sounding),
            "takeHeard",
            "A kept take as it sounds, alone or with the score softly under it."
        );
        ShelfEndpoints.OfShelf<DrillFound>(
            api.MapGet(One + "/drill", Drill),
            "takeDrill",
            "The drill that answers a remark on a take."
        );
        ShelfEndpoints.OfShelf<ValueList<TakeItem>>(
            api.MapGet("/takes", List),
            "takes",
            "The takes of a piece, the last begun first."
        );
        ShelfEndpoints.OfShelf<TakeBegun>(
            api.MapDelete("/takes/{take}", Delete),
            "putTakeAway",
            "Puts a take aside, from where it can be taken back."
        );
    }

    private async Task<IResult> Begin(string id, TakeWish wish, CancellationToken cancellation) =>
        made.Find(id) is { } sheet
            ? Results.Json(new TakeBegun(await takes.Begin(sheet, wish, cancellation)), WebJson.Default.TakeBegun)
            : NoSheet();

    private async Task<IResult> Add(string take, TakePlayed played, CancellationToken cancellation) =>
        Results.Json(
            new TakeTold(await takes.Add(take, played.From, played.Events, cancellation)),
            WebJson.Default.TakeTold
        );

    private Task<IResult> Finish(string id, string take, CancellationToken cancellation) =>
        Seen(id, sheet => takes.Finish(take, sheet, cancellation));

    private async Task<IResult> Bring(
        string id,
        string? from,
        string? to,
        string? hand,
        string? player,
        string? piece,
        HttpRequest request,
        CancellationToken cancellation
    )
    {
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancellation);
        var wish = new TakeWish(from, to, hand, Player: player, Piece: piece);
        return await Seen(id, sheet => takes.Bring(sheet, wish, body.ToArray(), cancellation));
    }

    private Task<IResult> Look(string id, string take, CancellationToken cancellation) =>
        Seen(id, sheet => takes.Look(take, sheet, cancellation));

    private async Task<IResult> Sounding(string id, string take, bool? against, CancellationToken cancellation) =>
        made.Find(id) is { } sheet
            ? Results.Json(await takes.Sounding(take, sheet, against ?? false, cancellation), WebJson.Default.Heard)
            : NoSheet();

    private async Task<IResult> Drill(
        string id,
        string take,
        string kind,
        string bar,
        CancellationToken cancellation
    ) =>
        made.Find(id) is { } sheet
            ? Results.Json(await takes.Drill(take, sheet, kind, bar, cancellation), WebJson.Default.DrillFound)
            : NoSheet();

    private async Task<IResult> List(string? piece, CancellationToken cancellation) =>
        Results.Json(await takes.List(piece, cancellation), WebJson.Default.ValueListTakeItem);

    private async Task<IResult> Delete(string take, CancellationToken cancellation)
    {
        await takes.Delete(take, cancellation);
        return Results.Json(new TakeBegun(take), WebJson.Default.TakeBegun);
    }

    private async Task<IResult> Seen(string id, Func<Sheet, Task<TakeSeen>> see) =>
        made.Find(id) is { } sheet ? Results.Json(await see(sheet), WebJson.Default.TakeSeen) : NoSheet();

    private static IResult NoSheet() => Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);
}
