using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web.Endpoints;

/// <summary>Single bars of a setting: looked at, tried another way, kept, written.</summary>
internal sealed class SpotEndpoints(SpotDesk spots, Memory<TuneSource> brought, Memory<Sheet> made)
{
    private const string Bars = "/settings/{id}/bars",
        Bar = Bars + "/{bar}";

    public void Map(IEndpointRouteBuilder api)
    {
        Of<SheetBars>(api.MapGet(Bars, All), "bars", "The bars of a setting with their effort, and what is kept.");
        Of<SpotNotes>(api.MapGet(Bar, Notes), "bar", "Why a bar is as it is, and what is struck in it.");
        Of<ValueList<WayFound>>(api.MapGet(Bar + "/ways", Ways), "ways", "Other ways for a bar.");
        Of<SpotSeen>(api.MapGet(Bar + "/ways/{name}", Way), "way", "A bar another way, engraved and heard.");
        Of<SpotSeen>(api.MapPost(Bar + "/try", Try), "tryBar", "A bar as somebody writes it, judged and engraved.");
        Of<SpotMade>(
                api.MapPost("/settings/{id}/spots", Do),
                "workOnBar",
                "Keeps, releases, writes or chooses a bar, or makes or uses a figure; the rest is worked again."
            )
            .MayFail(StatusCodes.Status422UnprocessableEntity, StatusCodes.Status503ServiceUnavailable);

        static RouteHandlerBuilder Of<T>(RouteHandlerBuilder endpoint, string name, string summary) =>
            endpoint.Answers<T>(name, summary).MayFail(StatusCodes.Status404NotFound);
    }

    private IResult All(string id) =>
        made.Find(id) is { } sheet ? Results.Json(SpotDesk.Bars(sheet), WebJson.Default.SheetBars) : NoSheet();

    private IResult Notes(string id, string bar) =>
        made.Find(id) is not { } sheet ? NoSheet()
        : SpotDesk.Notes(sheet, bar) is { } notes ? Results.Json(notes, WebJson.Default.SpotNotes)
        : NoBar();

    private async Task<IResult> Ways(string id, string bar, CancellationToken cancellation) =>
        made.Find(id) is not { } sheet ? NoSheet()
        : await spots.Ways(sheet, bar, cancellation) is { } ways ? Results.Json(ways, WebJson.Default.ValueListWayFound)
        : NoBar();

    private async Task<IResult> Way(string id, string bar, string name, CancellationToken cancellation) =>
        made.Find(id) is not { } sheet ? NoSheet()
        : await spots.Way(sheet, bar, name, cancellation) is { } seen ? Results.Json(seen, WebJson.Default.SpotSeen)
        : NoBar();

    private async Task<IResult> Try(string id, string bar, SpotWish wish, CancellationToken cancellation) =>
        made.Find(id) is not { } sheet ? NoSheet()
        : await spots.Try(sheet, wish with { Bar = bar }, cancellation) is { } seen
            ? Results.Json(seen, WebJson.Default.SpotSeen)
        : NoBar();

    private async Task<IResult> Do(string id, SpotWish wish, CancellationToken cancellation)
    {
        if (made.Find(id) is not { } sheet)
        {
            return NoSheet();
        }
        var done = await spots.Do(sheet, wish, cancellation);
        if (done.Result.Sheet is not { } next)
        {
            return SettingEndpoints.Refused(done.Result);
        }
        var setting = new SettingMade(made.Keep(next), next.Pages.Count, next.Tune);
        var answer = new SpotMade(setting, brought.Keep(done.Source!), done.Changed);
        return Results.Json(answer, WebJson.Default.SpotMade);
    }

    private static IResult NoSheet() => Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);

    private static IResult NoBar() => Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoBar);
}
