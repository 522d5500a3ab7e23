using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;
using Stridewright.Workbench.Tunes;

namespace Stridewright.Web.Endpoints;

/// <summary>Tunes and figures by themselves: looked at, corrected, kept on the shelf and taken from there.</summary>
internal sealed class CorrectionEndpoints(TuneDesk tunes, Memory<TuneSource> brought, Memory<Sheet> made)
{
    private const string Tune = "/tunes/{id}/{number:int}";

    public void Map(IEndpointRouteBuilder api)
    {
        api.MapGet(Tune, Told)
            .Answers<TuneTold>("tune", "A tune that was brought, bar by bar, to be corrected.")
            .MayFail(StatusCodes.Status404NotFound);
        api.MapGet(Tune + "/sheet", Sheet)
            .Answers<TunePages>("tuneSheet", "A tune engraved; on request back on the beat, before it is ragged.")
            .MayFail(StatusCodes.Status404NotFound, StatusCodes.Status503ServiceUnavailable);
        api.MapPost(Tune + "/corrections", Correct)
            .Answers<Brought>("correctTune", "Corrects a tune: a bar's notes or chords, its key, metre or pick-up.")
            .MayFail(StatusCodes.Status404NotFound, StatusCodes.Status422UnprocessableEntity);
        ShelfEndpoints.OfShelf<ShelfItem>(api.MapPost("/shelf/tunes", Keep), "keepTune", "Keeps a tune by itself.");
        ShelfEndpoints.OfShelf<ShelfItem>(
            api.MapPost("/shelf/figures", KeepFigure),
            "keepFigure",
            "Keeps a figure of a setting by itself."
        );
        ShelfEndpoints.OfShelf<SpotMade>(
            api.MapPost("/settings/{id}/figures/{figure}", TakeFigure),
            "takeFigure",
            "Puts a figure of the shelf beside a setting, to be used in it."
        );
    }

    private IResult Told(string id, int number) =>
        Found(id, number) is { } source ? Results.Json(tunes.Told(source, number), WebJson.Default.TuneTold) : NoTune();

    private async Task<IResult> Sheet(string id, int number, bool? plain, CancellationToken cancellation)
    {
        if (Found(id, number) is not { } source)
        {
            return NoTune();
        }
        var pages = await tunes.Pages(source, number, plain ?? false, cancellation);
        var told = new TunePages(pages.Select(System.Text.Encoding.UTF8.GetString).ToValueList());
        return Results.Json(told, WebJson.Default.TunePages);
    }

    private async Task<IResult> Correct(string id, int number, TuneChange change, CancellationToken cancellation)
    {
        if (Found(id, number) is not { } source)
        {
            return NoTune();
        }
        var (corrected, fault) = await tunes.Correct(source, number, change, cancellation);
        return corrected is null
            ? Faults.Of(StatusCodes.Status422UnprocessableEntity, fault)
            : Results.Json(TuneEndpoints.Told(brought.Keep(corrected), corrected), WebJson.Default.Brought);
    }

    private async Task<IResult> Keep(TuneWanted wanted, CancellationToken cancellation) =>
        Found(wanted.Tunes, wanted.Number) is { } source
            ? Results.Json(await tunes.Keep(source, wanted.Number, cancellation), WebJson.Default.ShelfItem)
            : NoTune();

    private async Task<IResult> KeepFigure(FigureWanted wanted, CancellationToken cancellation) =>
        made.Find(wanted.Setting) is not { } sheet ? Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet)
        : await tunes.KeepFigure(sheet, wanted.Figure, cancellation) is { } item
            ? Results.Json(item, WebJson.Default.ShelfItem)
        : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoFigure);

    private async Task<IResult> TakeFigure(string id, string figure, CancellationToken cancellation)
    {
        if (made.Find(id) is not { } sheet)
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);
        }
        var done = await tunes.TakeFigure(sheet, figure, cancellation);
        var next = done.Result.Sheet!;
        var setting = new SettingMade(made.Keep(next), next.Pages.Count, next.Tune);
        return Results.Json(new SpotMade(setting, brought.Keep(done.Source!), done.Changed), WebJson.Default.SpotMade);
    }

    private TuneSource? Found(string id, int number) =>
        brought.Find(id) is { } source && number >= 1 && number <= source.Tunes.Count ? source : null;

    private static IResult NoTune() => Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoTunes);
}
