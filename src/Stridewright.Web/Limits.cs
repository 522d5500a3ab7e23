using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Metadata;

namespace Stridewright.Web;

/// <summary>The largest body that an endpoint takes.</summary>
internal sealed record Limits(long? MaxRequestBodySize) : IRequestSizeLimitMetadata
{
    /// <summary>No tune book comes near this, in bytes; as for files of the command line.</summary>
    public const long Upload = 32 * 1024 * 1024;

    /// <summary>A take as a MIDI file, in bytes: what fits into a document of the shelf.</summary>
    public const long Take = 700 * 1024;

    /// <summary>A backup of the shelf, in bytes.</summary>
    public const long Backup = 128 * 1024 * 1024;

    /// <summary>Typed text and wishes, in bytes.</summary>
    public const long Words = 256 * 1024;

    /// <summary>For one answer, from first to last.</summary>
    public static readonly TimeSpan Time = TimeSpan.FromSeconds(60);

    /// <summary>That of the endpoint that was asked.</summary>
    public static long Of(HttpContext context) =>
        context.GetEndpoint()?.Metadata.GetMetadata<Limits>()?.MaxRequestBodySize ?? Words;
}
