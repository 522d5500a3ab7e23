using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;

namespace Stridewright.Web;

/// <summary>
/// Lets in only who opened the page from the address that the program printed: other pages of the browser and other
/// accounts of the machine reach the same port.
/// </summary>
/// <param name="token">Of this start of the host.</param>
internal sealed class Guard(string token)
{
    /// <summary>Where the token becomes a cookie.</summary>
    public const string Opening = "/open/";

    public async Task Check(HttpContext context, RequestDelegate next)
    {
        var (request, response) = (context.Request, context.Response);
        var port = context.Connection.LocalPort;
        // No answer of this host is to be read as another kind of thing, or framed.
        response.Headers.XContentTypeOptions = "nosniff";
        response.Headers["Referrer-Policy"] = "no-referrer";
        response.Headers["Cross-Origin-Resource-Policy"] = "same-origin";
        response.Headers.ContentSecurityPolicy = "default-src 'none'; frame-ancestors 'none'";
        if (request.Host.Host is not ("127.0.0.1" or "localhost") || (request.Host.Port ?? 80) != port)
        {
            await Faults.Write(context, StatusCodes.Status421MisdirectedRequest, WebMessages.ForeignHost);
            return;
        }
        if (request.Path.StartsWithSegments("/api"))
        {
            response.Headers.CacheControl = "no-store";
            if (!HttpMethods.IsGet(request.Method) && request.Headers.Origin != "http://" + request.Host)
            {
                await Faults.Write(context, StatusCodes.Status403Forbidden, WebMessages.ForeignOrigin);
                return;
            }
            if (!IsToken(request.Cookies[Cookie(port)] ?? ""))
            {
                await Faults.Write(context, StatusCodes.Status401Unauthorized, WebMessages.NoToken);
                return;
            }
        }
        await next(context);
    }

    /// <summary>The page, and the cookie where the token is right.</summary>
    public IResult Open(HttpContext context, string given)
    {
        if (IsToken(given))
        {
            var cookie = new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                Path = "/",
            };
            context.Response.Cookies.Append(Cookie(context.Connection.LocalPort), token, cookie);
        }
        return Results.Redirect("/");
    }

    // Cookies do not tell ports apart.
    private static string Cookie(int port) => FormattableString.Invariant($"stridewright-{port}");

    private bool IsToken(string given) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(token));
}
