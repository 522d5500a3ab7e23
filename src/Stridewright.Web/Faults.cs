using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Stridewright.Music;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web;

/// <summary>Every error as problem+json (RFC 9457).</summary>
internal static class Faults
{
    public const string ContentType = "application/problem+json";

    public static IResult Of(int status, string detail, params IEnumerable<FaultPlace> problems) =>
        Results.Json(Body(status, detail, problems), WebJson.Default.Fault, ContentType, status);

    /// <summary>Turns what endpoints throw, and statuses without a word, into faults.</summary>
    public static async Task Guarded(HttpContext context, RequestDelegate next)
    {
        try
        {
            await next(context);
        }
        catch (BadHttpRequestException fault) when (!context.Response.HasStarted)
        {
            await Write(context, fault.StatusCode, OfRequest(context, fault));
        }
        catch (BusyException busy) when (!context.Response.HasStarted)
        {
            context.Response.Headers.RetryAfter = "1";
            await Write(context, StatusCodes.Status503ServiceUnavailable, busy.Message);
        }
        catch (ShelfRefusedException refused) when (!context.Response.HasStarted)
        {
            var status =
                refused.IsMissing ? StatusCodes.Status404NotFound
                : refused.IsUnusable ? StatusCodes.Status503ServiceUnavailable
                : StatusCodes.Status422UnprocessableEntity;
            await Write(context, status, refused.Message);
        }
        catch (OperationCanceledException) when (!context.Response.HasStarted)
        {
            // Nobody reads this where the page has gone; where time ran out somebody does.
            await Write(context, StatusCodes.Status503ServiceUnavailable, WebMessages.TooLong);
        }
#pragma warning disable CA1031 // The person gets a sentence, the host goes on.
        catch (Exception fault) when (!context.Response.HasStarted)
#pragma warning restore CA1031
        {
            await Write(context, StatusCodes.Status500InternalServerError, WebMessages.Internal(fault.GetType().Name));
        }
        if (context.Response is { HasStarted: false, StatusCode: >= 400, ContentType: null } silent)
        {
            var isTooLarge = silent.StatusCode == StatusCodes.Status413PayloadTooLarge;
            var detail = isTooLarge ? WebMessages.TooLarge(Limits.Of(context)) : WebMessages.NotThere;
            await Write(context, silent.StatusCode, detail);
        }
    }

    public static Task Write(HttpContext context, int status, string detail)
    {
        context.Response.StatusCode = status;
        return context.Response.WriteAsJsonAsync(Body(status, detail, []), WebJson.Default.Fault, ContentType);
    }

    private static Fault Body(int status, string detail, IEnumerable<FaultPlace> problems) =>
        new("about:blank", ReasonPhrases.GetReasonPhrase(status), status, detail, problems.ToValueList());

    private static string OfRequest(HttpContext context, BadHttpRequestException fault) =>
        fault switch
        {
            { StatusCode: StatusCodes.Status413PayloadTooLarge } => WebMessages.TooLarge(Limits.Of(context)),
            { InnerException: JsonException json } => WebMessages.NotJson(json.Path ?? "$", (json.LineNumber ?? 0) + 1),
            _ => WebMessages.BadRequest,
        };
}
