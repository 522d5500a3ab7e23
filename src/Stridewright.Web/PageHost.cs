using System.Net;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Timeouts;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Stridewright.Web.Endpoints;
using Stridewright.Workbench;
using Stridewright.Workbench.Handouts;
using Stridewright.Workbench.Listening;
using Stridewright.Workbench.Sheets;
using Stridewright.Workbench.Shelves;
using Stridewright.Workbench.Tunes;

namespace Stridewright.Web;

/// <summary>The page and its contract on a port of this machine alone.</summary>
public sealed class PageHost : IAsyncDisposable
{
    /// <summary>The port that is tried unless another is given.</summary>
    public const int UsualPort = 5177;

    private const int MostSources = 40,
        MostSheets = 16;

    private readonly WebApplication _app;
    private readonly SheetDesk _desk;
    private readonly ShelfDesk _shelf;
    private readonly TakeDesk _takes;
    private readonly Resting _resting;
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _warming;

    private PageHost(WebApplication app, SheetDesk desk, ShelfDesk shelf, TakeDesk takes, Resting resting, string token)
    {
        (_app, _desk, _shelf, _takes, _resting, Token) = (app, desk, shelf, takes, resting, token);
        var address = new Uri(
            app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First()
        );
        Root = address;
        Address = new Uri(address, Guard.Opening + token);
        _warming = _desk.WarmUp(_stop.Token);
    }

    /// <summary>What to open: the page, with the token of this start.</summary>
    public Uri Address { get; }

    /// <summary>The same without the token.</summary>
    public Uri Root { get; }

    /// <summary>The data folder.</summary>
    public string Folder => _shelf.Folder;

    internal string Token { get; }

    /// <summary>Starts to serve.</summary>
    /// <param name="port">0: any that is free.</param>
    /// <param name="data">The data folder; null: one of the user's own.</param>
    /// <exception cref="ShelfRefusedException">The data folder is in use, or cannot be used.</exception>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<PageHost> Start(int port, string? data, CancellationToken cancellation)
    {
        var shelf = ShelfDesk.Take(data);
        // Nothing is read from the folder or the environment that the program happens to be started in.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
        builder
            .WebHost.UseKestrelCore()
            .ConfigureKestrel(kestrel =>
            {
                kestrel.AddServerHeader = false;
                kestrel.Limits.MaxRequestBodySize = Limits.Words;
                kestrel.Limits.MaxConcurrentConnections = 1024;
                kestrel.Listen(IPAddress.Loopback, port);
            });
        builder.Services.AddRoutingCore();
        builder.Services.AddRequestTimeouts(o => o.DefaultPolicy = new RequestTimeoutPolicy { Timeout = Limits.Time });
        builder.Services.ConfigureHttpJsonOptions(o => WebJson.Apply(o.SerializerOptions));
        builder.Services.Configure<RouteHandlerOptions>(o => o.ThrowOnBadRequest = true);
        builder.Services.AddOpenApi(ContractDocument.Configure);
        var app = builder.Build();
        var desk = SheetDesk.Open();
        var takes = new TakeDesk(desk, shelf);
        var resting = new Resting();
        app.Use(next => context => resting.During(context, next));
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        try
        {
            Map(app, desk, shelf, takes, new Guard(token));
            await app.StartAsync(cancellation);
            return new PageHost(app, desk, shelf, takes, resting, token);
        }
        catch
        {
            await app.DisposeAsync();
            resting.Dispose();
            takes.Dispose();
            desk.Dispose();
            shelf.Dispose();
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        await _app.StopAsync(CancellationToken.None);
        await _app.DisposeAsync();
        await _warming.ContinueWith(_ => { }, TaskScheduler.Default);
        _resting.Dispose();
        _takes.Dispose();
        _desk.Dispose();
        _shelf.Dispose();
        _stop.Dispose();
    }

    private static void Map(WebApplication app, SheetDesk desk, ShelfDesk shelf, TakeDesk takes, Guard guard)
    {
        app.Use(next => context => Faults.Guarded(context, next));
        app.Use(next => context => guard.Check(context, next));
        app.UseRouting();
        app.UseRequestTimeouts();
        var page = new PageFiles();
        app.MapGet(
                "/",
                (HttpContext context) =>
                {
                    // The page answers first, the shelf opens behind it.
                    context.Response.OnCompleted(() =>
                    {
                        OpenBehind(shelf);
                        return Task.CompletedTask;
                    });
                    return page.Index(context);
                }
            )
            .ExcludeFromDescription();
        app.MapGet("/assets/{name}", page.Asset).ExcludeFromDescription();
        app.MapGet("/piano/v10/{key:int}.ogg", PageFiles.Piano).ExcludeFromDescription();
        app.MapGet(Guard.Opening + "{given}", guard.Open).ExcludeFromDescription();
        var api = app.MapGroup("/api");
        var brought = new Memory<TuneSource>(MostSources);
        new TuneEndpoints(desk, brought).Map(api);
        var made = new Memory<Sheet>(MostSheets);
        var players = new PlayerDesk(shelf, desk);
        new SettingEndpoints(desk, players, brought, made).Map(api);
        new SpotEndpoints(new SpotDesk(desk), brought, made).Map(api);
        new HandoutEndpoints(new HandoutDesk(desk), made).Map(api);
        new VersionEndpoints(new VersionDesk(desk), brought, made).Map(api);
        new PlayerEndpoints(players).Map(api);
        new CorrectionEndpoints(new TuneDesk(desk, shelf), brought, made).Map(api);
        new ShelfEndpoints(shelf).Map(api);
        new ProgressEndpoints(shelf).Map(api);
        new ArrangementEndpoints(shelf, players, brought, made).Map(api);
        new BackupEndpoints(shelf).Map(api);
        new TakeEndpoints(takes, made).Map(api);
        api.MapOpenApi("/contract.json").ExcludeFromDescription();
    }

    // What goes wrong is told to whoever asks for something on the shelf.
    private static void OpenBehind(ShelfDesk shelf) =>
        Task.Run(() => shelf.Open(CancellationToken.None))
            .ContinueWith(opened => _ = opened.Exception, TaskScheduler.Default);
}
