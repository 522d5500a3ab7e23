using System.Collections.Frozen;
using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using Stridewright.Workbench;

namespace Stridewright.Web;

/// <summary>The built page, out of the library.</summary>
internal sealed class PageFiles
{
    private const string Folder = "page/",
        First = "index.html",
        Forever = "public, max-age=31536000, immutable",
        NonceMark = "STYLE-NONCE";

    private readonly FrozenDictionary<string, byte[]> _files = Read();

    /// <summary>The page itself, with a fresh nonce for its styles.</summary>
    public IResult Index(HttpContext context)
    {
        var nonce = Convert.ToBase64String(RandomNumberGenerator.GetBytes(16));
        var headers = context.Response.Headers;
        headers.CacheControl = "no-store";
        headers.ContentSecurityPolicy =
            $"default-src 'none'; script-src 'self'; style-src 'self' 'nonce-{nonce}'; font-src 'self' data:; img-src 'self' data:; "
            + "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'";
        var html = Encoding.UTF8.GetString(_files[First]).Replace(NonceMark, nonce, StringComparison.Ordinal);
        return Results.Content(html, "text/html; charset=utf-8");
    }

    /// <summary>A script, a style or a face; its name changes with what it holds.</summary>
    public IResult Asset(HttpContext context, string name)
    {
        if (!_files.TryGetValue("assets/" + name, out var bytes))
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NotThere);
        }
        context.Response.Headers.CacheControl = Forever;
        return Results.Bytes(bytes, ContentType(name));
    }

    /// <summary>The recording of a key of the piano; the name of the set in its address changes with what it holds.</summary>
    public static IResult Piano(HttpContext context, int key)
    {
        if (PianoFiles.OfKey(key) is not { } recording)
        {
            return Faults.Of(StatusCodes.Status404NotFound, WebMessages.NotThere);
        }
        context.Response.Headers.CacheControl = Forever;
        return Results.Stream(recording, "audio/ogg");
    }

    private static string ContentType(string name) =>
        Path.GetExtension(name) switch
        {
            ".js" => "text/javascript; charset=utf-8",
            ".css" => "text/css; charset=utf-8",
            ".woff2" => "font/woff2",
            ".woff" => "font/woff",
            ".svg" => "image/svg+xml",
            _ => "application/octet-stream",
        };

    private static FrozenDictionary<string, byte[]> Read()
    {
        var library = typeof(PageFiles).Assembly;
        return library
            .GetManifestResourceNames()
            .Where(name => name.StartsWith(Folder, StringComparison.Ordinal))
            .ToFrozenDictionary(name => name[Folder.Length..], Bytes, StringComparer.Ordinal);

        byte[] Bytes(string name)
        {
            using var stream = library.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            return bytes;
        }
    }
}
