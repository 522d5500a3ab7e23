using Microsoft.AspNetCore.OpenApi;

namespace Stridewright.Web;

/// <summary>The contract as a document (OpenAPI).</summary>
internal static class ContractDocument
{
    public static void Configure(OpenApiOptions options) =>
        options.AddDocumentTransformer(
            (document, _, _) =>
            {
                document.Info.Title = "Stridewright";
                document.Info.Version = "1";
                // The port is another one at every start.
                document.Servers = [];
                return Task.CompletedTask;
            }
        );
}
