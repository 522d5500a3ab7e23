using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web.Endpoints;

/// <summary>Settings of tunes: made, shown, taken away.</summary>
internal sealed class SettingEndpoints(
    SheetDesk desk,
    PlayerDesk players,
    Memory<TuneSource> brought,
    Memory<Sheet> made
)
{
    private readonly TakeAway _takeAway = new(desk);

    public void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/settings", Arrange)
            .WithName("arrange")
            .WithSummary("Arranges a tune that was brought, and engraves it.")
            .Produces<SettingMade>()
            .MayFail(
                StatusCodes.Status400BadRequest,
                StatusCodes.Status404NotFound,
                StatusCodes.Status422UnprocessableEntity,
                StatusCodes.Status503ServiceUnavailable
            )
            .WithMetadata(new Limits(Limits.Words));
        api.MapGet("/settings/{id}/pages/{number:int}", Page)
            .WithName("page")
            .WithSummary("A page of a setting as SVG, counted from 1.")
            .Produces<string>(StatusCodes.Status200OK, "image/svg+xml")
            .MayFail(StatusCodes.Status404NotFound);
        api.MapGet("/settings/{id}/print", Print)
            .WithName("print")
            .WithSummary("The pages of a setting as it is printed, with turns where a hand is free.")
            .Produces<TunePages>()
            .MayFail(StatusCodes.Status404NotFound, StatusCodes.Status503ServiceUnavailable);
        api.MapGet("/settings/{id}/files/{format}", File)
            .WithName("file")
            .WithSummary(WebMessages.TakeAwaySummary)
            .Produces<byte[]>(StatusCodes.Status200OK, "application/octet-stream")
            .MayFail(StatusCodes.Status404NotFound, StatusCodes.Status422UnprocessableEntity);
        api.MapGet("/settings/{id}/heard", Heard)
            .WithName("heard")
            .WithSummary("A setting as it is heard, note by note: what its MIDI file says, in seconds.")
            .Produces<Heard>()
            .MayFail(StatusCodes.Status404NotFound);
    }

    private IResult Heard(string id) =>
        made.Find(id) is { } sheet
            ? Results.Json(desk.Heard(sheet), WebJson.Default.Heard)
            : Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);

    private async Task<IResult> Arrange(SettingWanted wanted, CancellationToken cancellation)
    {
        if (brought.Find(wanted.Tunes) is not { } source)
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoTunes);
        }
        if (wanted.Number < 1 || wanted.Number > source.Tunes.Count)
        {
            return Bad("number", WebMessages.NoSuchTune(wanted.Number, source.Tunes.Count));
        }
        if (PaperOf(wanted.Paper) is not { } paper)
        {
            return Bad("paper", WebMessages.NotPaper);
        }
        var look = new SheetLook(paper)
        {
            NoChords = wanted.Wishes.NoChords,
            Fingers = wanted.Wishes.Fingers,
            Notes = wanted.Wishes.Notes,
            LargePrint = wanted.Wishes.LargePrint,
        };
        var wishes = Wishes(wanted.Wishes);
        if (wanted.Wishes.Player is { } player)
        {
            wishes = wishes with { PlayerText = await players.Text(player, cancellation) };
        }
        var result = await desk.Arrange(source, wanted.Number, wishes, look, cancellation);
        if (result.Sheet is not { } sheet)
        {
            return Refused(result);
        }
        var answer = new SettingMade(made.Keep(sheet), sheet.Pages.Count, sheet.Tune);
        return Results.Json(answer, WebJson.Default.SettingMade);
    }

    /// <summary>Null: there is no such paper.</summary>
    public static Paper? PaperOf(string? word) =>
        word switch
        {
            null or "a4" => Paper.A4,
            "letter" => Paper.Letter,
            _ => null,
        };

    private IResult Page(string id, int number) =>
        made.Find(id) is not { } sheet ? Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet)
        : number < 1 || number > sheet.Pages.Count
            ? Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSuchPage(number, sheet.Pages.Count))
        : Results.Bytes(sheet.Pages[number - 1], "image/svg+xml");

    private async Task<IResult> Print(string id, CancellationToken cancellation)
    {
        if (made.Find(id) is not { } sheet)
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);
        }
        var pages = await desk.PrintedPages(sheet, cancellation);
        var told = new TunePages(pages.Select(System.Text.Encoding.UTF8.GetString).ToValueList());
        return Results.Json(told, WebJson.Default.TunePages);
    }

    private async Task<IResult> File(
        HttpContext context,
        string id,
        string format,
        int? page,
        CancellationToken cancellation
    )
    {
        if (made.Find(id) is not { } sheet)
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NoSheet);
        }
        if (format == "wav")
        {
            return Results.Stream(s => desk.WriteWav(sheet, s, cancellation), "audio/wav", sheet.Name + ".wav");
        }
        if (format == "zip")
        {
            // The writer of zip files has no other way.
            context.Features.Get<IHttpBodyControlFeature>()?.AllowSynchronousIO = true;
            return Results.Stream(
                s => _takeAway.WriteZip(sheet, s, cancellation),
                "application/zip",
                sheet.Name + ".zip"
            );
        }
        return await _takeAway.File(sheet, format, page ?? 1, cancellation) switch
        {
            null => Faults.Of(StatusCodes.Status404NotFound, WebMessages.NotAFormat),
            { Fault: { Length: > 0 } why } => Faults.Of(StatusCodes.Status422UnprocessableEntity, why),
            var file => Results.File(file.Bytes, file.MediaType, file.Name),
        };
    }

    private static Wishes Wishes(BriefWishes said) =>
        new()
        {
            Feel = said.Feel,
            Level = said.Level,
            LeftLevel = said.LeftLevel,
            RightLevel = said.RightLevel,
            Raggedness = said.Raggedness,
            Key = said.Key,
            BeatsPerMinute = said.BeatsPerMinute,
            Span = said.Span,
            NoOctaves = said.NoOctaves,
            LeftHandOnly = said.LeftHandOnly,
            Lyrics = said.Lyrics,
            ShowPlain = said.ShowPlain,
            Harmony = said.Harmony,
            Form = said.Form,
            Minutes = said.Minutes,
            Seed = said.Seed,
        };

    /// <summary>Why there is no setting.</summary>
    public static IResult Refused(SheetResult result) => Refused(result.Problems, result.IsBadWish);

    /// <summary>Why something was not made.</summary>
    public static IResult Refused(ValueList<Problem> found, bool isBadWish)
    {
        var status = isBadWish ? StatusCodes.Status400BadRequest : StatusCodes.Status422UnprocessableEntity;
        var problems = found.Select(p => new FaultPlace(p.File, p.Place, p.Message));
        return Faults.Of(status, Sentence(found[0]), problems);
    }

    /// <summary>Wishes in the words of the contract.</summary>
    public static BriefWishes Told(Wishes wishes, SheetLook look) =>
        new()
        {
            NoChords = look.NoChords,
            Fingers = look.Fingers,
            Notes = look.Notes,
            LargePrint = look.LargePrint,
            Feel = wishes.Feel,
            Level = wishes.Level,
            LeftLevel = wishes.LeftLevel,
            RightLevel = wishes.RightLevel,
            Raggedness = wishes.Raggedness,
            Key = wishes.Key,
            BeatsPerMinute = wishes.BeatsPerMinute,
            Span = wishes.Span,
            NoOctaves = wishes.NoOctaves,
            LeftHandOnly = wishes.LeftHandOnly,
            Lyrics = wishes.Lyrics,
            ShowPlain = wishes.ShowPlain,
            Harmony = wishes.Harmony,
            Form = wishes.Form,
            Minutes = wishes.Minutes,
            Seed = wishes.Seed,
        };

    private static IResult Bad(string subject, string message) =>
        Faults.Of(StatusCodes.Status400BadRequest, message, new FaultPlace(subject, "", message));

    private static string Sentence(Problem problem) =>
        problem.Place.Length > 0 ? $"{problem.Place}: {problem.Message}" : problem.Message;
}
