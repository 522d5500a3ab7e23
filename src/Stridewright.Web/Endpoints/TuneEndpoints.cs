using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Stridewright.Music;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Web.Endpoints;

/// <summary>Tunes that are brought: as a file, or typed.</summary>
internal sealed class TuneEndpoints(SheetDesk desk, Memory<TuneSource> brought)
{
    private const int LongestName = 200;

    public void Map(IEndpointRouteBuilder api)
    {
        api.MapPost("/tunes", File)
            .WithName("bringFile")
            .WithSummary(
                "Reads the tunes of a file: ABC, MusicXML (plain or compressed), MIDI, or an arrangement file."
            )
            .Accepts<byte[]>("application/octet-stream")
            .Produces<Brought>()
            .MayFail(StatusCodes.Status413PayloadTooLarge)
            .WithMetadata(new Limits(Limits.Upload));
        api.MapPost("/tunes/text", Text)
            .WithName("bringText")
            .WithSummary("Reads typed text: a tune in ABC, or chords alone.")
            .Produces<Brought>()
            .MayFail(StatusCodes.Status400BadRequest, StatusCodes.Status413PayloadTooLarge)
            .WithMetadata(new Limits(Limits.Words));
    }

    // The name tells the kind where the bytes do not; nothing is opened by it.
    private async Task<IResult> File(string? name, HttpRequest request, CancellationToken cancellation)
    {
        using var body = new MemoryStream();
        await request.Body.CopyToAsync(body, cancellation);
        var clean = Quoted.Short(Path.GetFileName(name is { Length: > 0 and <= LongestName } ? name : "tune"));
        return Answer(desk.Read(clean, body.ToArray()));
    }

    private IResult Text(TypedText typed) =>
        string.IsNullOrWhiteSpace(typed.Text)
            ? Faults.Of(
                StatusCodes.Status400BadRequest,
                WebMessages.NoText,
                new FaultPlace("text", "", WebMessages.NoText)
            )
            : Answer(desk.ReadText(typed.Text));

    private IResult Answer(TuneSource source)
    {
        var id = brought.Keep(source with { Findings = [] });
        return Results.Json(Told(id, source), WebJson.Default.Brought);
    }

    /// <summary>What was understood of a source.</summary>
    public static Brought Told(string id, TuneSource source)
    {
        var tunes = source.Tunes.Select((tune, i) => Of(tune, i + 1)).ToValueList();
        return new(id, source.Name, tunes, source.Findings.Select(Of).ToValueList());
    }

    private static BroughtTune Of(Tune tune, int number)
    {
        var first = tune.Bars.FirstOrDefault(b => b.Length == b.Metre.BarLength) ?? tune.Bars[0];
        return new(
            number,
            tune.Title,
            tune.Composer,
            first.Key.ToString(),
            first.Metre.ToString(),
            tune.Bars.Count,
            tune.Bars.All(b => b.Notes.Count == 0)
        );
    }

    private static Finding Of(Diagnostic found) =>
        new(
            found.Severity switch
            {
                Severity.Error => "error",
                Severity.Warning => "warning",
                _ => "note",
            },
            found.Place.Line,
            found.Place.Column,
            found.Place.Bar,
            found.Place.ToString(),
            found.Message
        );
}
