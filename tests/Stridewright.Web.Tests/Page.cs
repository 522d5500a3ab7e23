using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;

namespace Stridewright.Web.Tests;

/// <summary>A host on a free port, and a client that opened the page as its owner does.</summary>
public sealed class Page : IAsyncLifetime
{
    private readonly string _data = Path.Combine(Path.GetTempPath(), "stridewright-" + Guid.NewGuid().ToString("N"));
    private PageHost? _host;

    internal PageHost Host => _host!;

    public HttpClient Owner { get; private set; } = new();

    public async ValueTask InitializeAsync()
    {
        _host = await PageHost.Start(0, _data, CancellationToken.None);
        Owner = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer() })
        {
            BaseAddress = _host.Root,
        };
        Owner.DefaultRequestHeaders.Add("Origin", _host.Root.GetLeftPart(UriPartial.Authority));
        await Owner.GetStringAsync(_host.Address);
    }

    public async ValueTask DisposeAsync()
    {
        Owner.Dispose();
        await _host!.DisposeAsync();
        Directory.Delete(_data, recursive: true);
    }

    public Task<HttpResponseMessage> PostJson(string path, string json) =>
        Owner.PostAsync(path, new StringContent(json, Encoding.UTF8, "application/json"));

    public Task<HttpResponseMessage> PostFile(string name, byte[] bytes)
    {
        var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        return Owner.PostAsync("/api/tunes?name=" + Uri.EscapeDataString(name), content);
    }

    public static async Task<JsonNode> Json(HttpResponseMessage answer) =>
        JsonNode.Parse(await answer.Content.ReadAsStringAsync())!;
}
