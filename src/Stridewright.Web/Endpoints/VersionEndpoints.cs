using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web.Endpoints;

/// <summary>Whole settings beside each other.</summary>
internal sealed class VersionEndpoints(VersionDesk desk, Memory<TuneSource> brought, Memory<Sheet> made)
{
    private const int Others = 2;

    public void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/settings/{id}/others", Make)
            .Answers<ValueList<OtherMade>>("otherSettings", "Two other whole settings, unlike this one and each other.")
            .MayFail(StatusCodes.Status404NotFound, StatusCodes.Status503ServiceUnavailable);
        api.MapPost("/settings/compare", Compare)
            .Answers<VersionsCompared>("compare", "Where two settings differ, bar by bar.")
            .MayFail(StatusCodes.Status404NotFound);
    }

    private async Task<IResult> Make(string id, CancellationToken cancellation)
    {
        if (made.Find(id) is not { } sheet)
        {
            return NoSheet();
        }
        var others = await desk.Others(sheet, Others, cancellation);
        return Results.Json(
            others.Select(o => new OtherMade(Told(o.Done), o.Motif, o.Bass)).ToValueList(),
            WebJson.Default.ValueListOtherMade
        );
    }

    private IResult Compare(PairWanted pair) =>
        made.Find(pair.First) is { } first && made.Find(pair.Second) is { } second
            ? Results.Json(VersionDesk.Compare(first, second), WebJson.Default.VersionsCompared)
            : NoSheet();

    private SpotMade Told(SpotDone done)
    {
        var sheet = done.Result.Sheet!;
        return new(
            new SettingMade(made.Keep(sheet), sheet.Pages.Count, sheet.Tune),
            brought.Keep(done.Source!),
            done.Changed
        );
    }

    private static IResult NoSheet() => Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);
}
