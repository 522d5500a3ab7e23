using System.IO.Compression;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;

namespace Stridewright.Web.Tests;

/// <summary>What comes from elsewhere, or means harm: refused or survived, with nothing lost.</summary>
public sealed class HostileTests(Page page) : IClassFixture<Page>
{
    private const string Ghost = "0123456789abcdef0123456789abcdef";

    [Theory]
    [InlineData("PUT", "/api/shelf/arrangements/" + Ghost, "http://evil.example")]
    [InlineData("PUT", "/api/shelf/documents/" + Ghost + "/title", "null")]
    [InlineData("DELETE", "/api/shelf/documents/" + Ghost, "https://127.0.0.1")]
    [InlineData("DELETE", "/api/shelf/documents/" + Ghost, null)]
    [InlineData("POST", "/api/shelf/backup", "http://localhost.evil.example")]
    [InlineData("POST", "/api/shelf/purge", null)]
    public async Task Another_page_changes_nothing(string method, string path, string? origin)
    {
        using var stranger = new HttpClient(new SocketsHttpHandler { CookieContainer = new CookieContainer() })
        {
            BaseAddress = page.Host.Root,
        };
        // It even has the cookie, as a page of the same browser would.
        await stranger.GetStringAsync(page.Host.Address);
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        if (origin is not null)
        {
            request.Headers.Add("Origin", origin);
        }
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.SendAsync(request)).StatusCode);
    }

    [Theory]
    [InlineData("..%2F..%2F..%2Fetc%2Fpasswd")]
    [InlineData("..%5C..%5Cshelf.db")]
    [InlineData("';DROP%20TABLE%20Documents;--")]
    [InlineData("<script>")]
    public async Task A_name_that_climbs_is_only_a_name_that_is_not_there(string name)
    {
        foreach (var place in new[] { "/open", "/versions/1/copy", "/back", "/purge" })
        {
            var answer = await page.PostJson($"/api/shelf/documents/{name}{place}", "");
            Assert.Contains(answer.StatusCode, new[] { HttpStatusCode.NotFound, HttpStatusCode.BadRequest });
            Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        }
        Assert.Equal(HttpStatusCode.OK, (await page.Owner.GetAsync("/api/shelf/documents")).StatusCode);
    }

    [Fact]
    public async Task Script_in_a_title_is_text_in_every_answer()
    {
        const string Title = "<script>alert(1)</script><img src=x onerror=alert(2)>";
        var abc = $"X:1\nT:{Title}\nM:2/4\nL:1/8\nK:F\n\"F\"FGAc|\"C7\"cBAG|\"F\"F4|]\n";
        var brought = await Page.Json(await page.PostFile("x.abc", Encoding.UTF8.GetBytes(abc)));
        var id = (string)(await Page.Json(await page.PostJson("/api/settings", Wanted(brought))))["id"]!;
        var picture = await page.Owner.GetAsync($"/api/settings/{id}/pages/1");
        var svg = await picture.Content.ReadAsStringAsync();
        Assert.Equal("image/svg+xml", picture.Content.Headers.ContentType?.MediaType);
        Assert.Contains("default-src 'none'", picture.Headers.GetValues("Content-Security-Policy").Single());
        Assert.DoesNotContain("<script", svg, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", svg, StringComparison.OrdinalIgnoreCase);
        await page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{id}}"}""");
        var list = await page.Owner.GetAsync("/api/shelf/documents?words=onerror");
        Assert.Equal("application/json", list.Content.Headers.ContentType?.MediaType);
        Assert.Equal("nosniff", list.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal(Title, (string?)(await Page.Json(list))["items"]![0]!["title"]);
    }

    public static TheoryData<string> Bombs => ["entities", "mxl", "backup", "long backup"];

    [Theory]
    [MemberData(nameof(Bombs))]
    public async Task A_bomb_is_refused_and_the_host_goes_on(string kind)
    {
        var before = await Count();
        switch (kind)
        {
            case "entities":
                var laughs = string.Concat(
                    Enumerable.Range(1, 20).Select(i => $"<!ENTITY e{i} \"&e{i - 1};&e{i - 1};&e{i - 1};&e{i - 1};\">")
                );
                await IsNoTune(
                    "x.musicxml",
                    Encoding.UTF8.GetBytes($"<!DOCTYPE a [<!ENTITY e0 \"ha\">{laughs}]><a>&e20;</a>")
                );
                break;
            case "mxl":
                await IsNoTune("x.mxl", Zip("score.xml", 300));
                break;
            case "backup":
                await IsRefused(Zip("shelf.db", 40));
                break;
            default:
                using (var request = new HttpRequestMessage(HttpMethod.Post, "/api/shelf/backup"))
                {
                    request.Content = new StreamContent(new Zeros(129L * 1024 * 1024));
                    Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await Status(request));
                }
                break;
        }
        Assert.Equal(before, await Count());
    }

    [Fact]
    public async Task An_upload_that_never_ends_is_cut_off()
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, page.Host.Root.Port);
        await using var stream = socket.GetStream();
        var authority = page.Host.Root.Authority;
        await stream.WriteAsync(
            Encoding.ASCII.GetBytes(
                $"POST /api/shelf/backup HTTP/1.1\r\nHost: {authority}\r\nOrigin: http://{authority}\r\n"
                    + $"Cookie: stridewright-{page.Host.Root.Port}={page.Host.Token}\r\nTransfer-Encoding: chunked\r\n\r\n"
            )
        );
        var answer = stream.ReadAsync(new byte[4096]).AsTask();
        // A byte a second: under the least rate that the server waits for.
        var cutOff = false;
        for (var second = 0; second < 300 && !cutOff; second++)
        {
            try
            {
                await stream.WriteAsync("1\r\nx\r\n"u8.ToArray());
            }
            catch (IOException)
            {
                cutOff = true;
            }
            await Task.WhenAny(answer, Task.Delay(1000));
            cutOff |= answer.IsCompleted;
        }
        Assert.True(cutOff);
        Assert.Equal(HttpStatusCode.OK, (await page.Owner.GetAsync("/api/shelf/documents")).StatusCode);
        Assert.DoesNotContain(
            Directory.GetFiles(page.Host.Folder),
            f => Path.GetFileName(f).StartsWith("unfinished-", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_thousand_requests_at_once_are_answered_and_nothing_is_lost()
    {
        var brought = await Page.Json(await page.PostJson("/api/tunes/text", """{"text":"F | D7 | G7 C7 | F"}"""));
        var id = (string)(await Page.Json(await page.PostJson("/api/settings", Wanted(brought))))["id"]!;
        var before = await Count();
        var answers = await Task.WhenAll(
            Enumerable
                .Range(0, 1000)
                .Select(i =>
                    (i % 5) switch
                    {
                        0 => page.PostJson("/api/shelf/arrangements", $$"""{"setting":"{{id}}"}"""),
                        1 => page.PostJson("/api/tunes/text", """{"text":"C | G7 | C"}"""),
                        2 => page.Owner.GetAsync($"/api/settings/{id}/pages/1"),
                        3 => page.Owner.GetAsync("/"),
                        _ => page.Owner.GetAsync("/api/shelf/documents?most=5"),
                    }
                )
        );
        HttpStatusCode[] known = [HttpStatusCode.OK, HttpStatusCode.ServiceUnavailable];
        Assert.All(answers, a => Assert.Contains(a.StatusCode, known));
        var kept = answers.Where((a, i) => i % 5 == 0 && a.StatusCode == HttpStatusCode.OK).ToList();
        Assert.True(kept.Count > 0);
        Assert.Equal(before + kept.Count, await Count());
        var ids = await Task.WhenAll(kept.Select(async a => (string?)(await Page.Json(a))["id"]));
        Assert.Equal(kept.Count, ids.Distinct().Count());
    }

    private async Task IsNoTune(string name, byte[] bytes)
    {
        var answer = await page.PostFile(name, bytes);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("\"severity\":\"error\"", await answer.Content.ReadAsStringAsync());
    }

    private async Task IsRefused(byte[] zip)
    {
        var answer = await page.Owner.PostAsync("/api/shelf/backup", new ByteArrayContent(zip));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((string)(await Page.Json(answer))["detail"]!);
    }

    private async Task<HttpStatusCode> Status(HttpRequestMessage request)
    {
        try
        {
            return (await page.Owner.SendAsync(request)).StatusCode;
        }
        catch (HttpRequestException)
        {
            // The host may end the connection while it is still being written to.
            return HttpStatusCode.RequestEntityTooLarge;
        }
    }

    private async Task<int> Count() =>
        (int)(await Page.Json(await page.Owner.GetAsync("/api/shelf/documents")))["count"]!;

    private static string Wanted(JsonNode brought) => $$"""{"tunes":"{{brought["id"]}}","number":1,"wishes":{ } }""";

    // A zip of one entry of so many MiB of nothing.
    private static byte[] Zip(string name, int size)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var entry = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
            var block = new byte[1024 * 1024];
            for (var i = 0; i < size; i++)
            {
                entry.Write(block);
            }
        }
        return bytes.ToArray();
    }

    /// <summary>So many bytes of nothing.</summary>
    private sealed class Zeros(long length) : MemoryStream
    {
        private long _given;

        public override long Length => length;

        public override long Position { get; set; }

        public override int Read(Span<byte> buffer)
        {
            var count = (int)Math.Min(buffer.Length, length - _given);
            buffer[..count].Clear();
            _given += count;
            return count;
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override ValueTask<int> ReadAsync(
            System.Memory<byte> buffer,
            CancellationToken cancellationToken = default
        ) => new(Read(buffer.Span));
    }
}
