using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web.Endpoints;

/// <summary>Hand-outs of settings: made, looked at, taken away.</summary>
internal sealed class HandoutEndpoints(HandoutDesk desk, Memory<Sheet> made)
{
    private const int MostHandouts = 20;

    private readonly Memory<HandoutPage> _handouts = new(MostHandouts);

    public void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/settings/{id}/handouts", Make)
            .Answers<HandoutMade>("handOut", "Makes a hand-out of a setting: bars and items on one page.")
            .MayFail(
                StatusCodes.Status400BadRequest,
                StatusCodes.Status404NotFound,
                StatusCodes.Status422UnprocessableEntity,
                StatusCodes.Status503ServiceUnavailable
            );
        api.MapGet("/handouts/{id}/{format}", File)
            .WithName("handoutFile")
            .WithSummary("A hand-out as a file: pdf, svg or png.")
            .Produces<byte[]>(StatusCodes.Status200OK, "application/octet-stream")
            .MayFail(StatusCodes.Status404NotFound);
    }

    private async Task<IResult> Make(string id, HandoutWanted wanted, CancellationToken cancellation)
    {
        if (made.Find(id) is not { } sheet)
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);
        }
        if (SettingEndpoints.PaperOf(wanted.Paper) is not { } paper)
        {
            return Faults.Of(StatusCodes.Status400BadRequest, WebMessages.NotPaper);
        }
        var wish = new HandoutWish
        {
            Bars = wanted.Bars,
            Items = (wanted.Items ?? []).ToValueList(),
            Levels = (wanted.Levels ?? []).ToValueList(),
            Keyboard = (wanted.Keyboard ?? []).ToValueList(),
            Staves = wanted.Staves,
            Text = wanted.Text,
            Pupil = wanted.Pupil,
            Credit = wanted.Credit,
            Free = wanted.Free,
            Fingering = wanted.Fingering,
            OneSystem = wanted.OneSystem,
        };
        var result = await desk.Make(sheet, wish, paper, cancellation);
        return result.Page is { } page
            ? Results.Json(
                new HandoutMade(_handouts.Keep(page), System.Text.Encoding.UTF8.GetString(page.Svg)),
                WebJson.Default.HandoutMade
            )
            : SettingEndpoints.Refused(result.Problems, result.IsBadWish);
    }

    private async Task<IResult> File(string id, string format, CancellationToken cancellation) =>
        _handouts.Find(id) is not { } page ? Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoHandout)
        : await desk.File(page, format, cancellation) is { } file ? Results.File(file.Bytes, file.MediaType, file.Name)
        : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NotAHandoutFormat);
}
