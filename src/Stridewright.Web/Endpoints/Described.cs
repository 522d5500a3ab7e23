using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Stridewright.Web.Endpoints;

/// <summary>What the contract says of an endpoint.</summary>
internal static class Described
{
    /// <summary>Its name, what it does, and what it answers to a few words in JSON.</summary>
    public static RouteHandlerBuilder Answers<T>(this RouteHandlerBuilder endpoint, string name, string summary) =>
        endpoint.WithName(name).WithSummary(summary).Produces<T>().WithMetadata(new Limits(Limits.Words));

    /// <summary>The statuses of its faults.</summary>
    public static RouteHandlerBuilder MayFail(this RouteHandlerBuilder endpoint, params ReadOnlySpan<int> statuses)
    {
        foreach (var status in statuses)
        {
            endpoint.Produces<Fault>(status, Faults.ContentType);
        }
        return endpoint;
    }
}
