using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using Microsoft.ClearScript;
using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>
/// Lays scores out on pages. One engraver holds one warm engine and serves one caller at a time; others wait. The first
/// page takes about a second, later ones about 0.1 s. It must be disposed before the process ends.
/// </summary>
public sealed class Engraver : IDisposable
{
    /// <summary>Longest time for one score of up to a hundred bars, unless another is given; a longer score has as much
    /// more.</summary>
    public static readonly TimeSpan DefaultLimit = TimeSpan.FromSeconds(30);

    // Starting takes half a second; a machine that is busy otherwise may need much longer.
    private static readonly TimeSpan StartLimit = TimeSpan.FromMinutes(1);

    // What the limit is for: a longer score has as much more.
    private const int BarsInLimit = 100;

    // A system of so many bars can spare one.
    private const int FullEnough = 5;
    private readonly Lock _turn = new();
    private readonly TimeSpan _limit;
    private Engine? _engine;
    private bool _disposed;

    private Engraver(TimeSpan limit) => _limit = limit;

    /// <summary>Whether this machine can engrave: Linux on x64.</summary>
    public static bool IsSupported =>
        RuntimeInformation.IsOSPlatform(OSPlatform.Linux) && RuntimeInformation.ProcessArchitecture == Architecture.X64;

    /// <summary>What to tell a user whose machine cannot engrave.</summary>
    public static string UnsupportedMessage => EngravingMessages.Unsupported;

    /// <summary>Starts an engine; takes about half a second.</summary>
    /// <param name="limit">Longest time for a score of up to a hundred bars, as much more for a longer one; <see cref="DefaultLimit"/> when null.</param>
    /// <exception cref="PlatformNotSupportedException">See <see cref="IsSupported"/>.</exception>
    /// <exception cref="IOException">The engraver's files are not beside the program.</exception>
    public static Engraver Create(TimeSpan? limit = null)
    {
        if (!IsSupported)
        {
            throw new PlatformNotSupportedException(EngravingMessages.Unsupported);
        }
        var time = limit ?? DefaultLimit;
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(time, TimeSpan.Zero, nameof(limit));
        return new Engraver(time) { _engine = Engine.Start(StartLimit, CancellationToken.None) };
    }

    /// <summary>Lays out a MusicXML score in UTF-8 or another encoding that it declares.</summary>
    public Reading<EngravedScore> Engrave(Stream musicXml, PageSetup setup, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(musicXml);
        return Engrave(ScoreXml.Read(musicXml), setup, cancellation);
    }

    /// <summary>Lays out a MusicXML score. The result has no value, and an error, when the text is no score, when the
    /// engraver fails on it, and when it takes too long; what the engraver had to say stands among the findings as
    /// warnings.</summary>
    /// <exception cref="OperationCanceledException">The caller cancelled.</exception>
    public Reading<EngravedScore> Engrave(string musicXml, PageSetup setup, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(musicXml);
        return Engrave(ScoreXml.Read(musicXml), setup, cancellation);
    }

    /// <summary>Waits for the score at hand and closes the engine.</summary>
    public void Dispose()
    {
        lock (_turn)
        {
            _disposed = true;
            DropEngine();
        }
    }

    private Reading<EngravedScore> Engrave(Reading<ScoreXml> read, PageSetup setup, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(setup);
        EngraverOptions.Check(setup);
        if (read.Value is not { } score)
        {
            return new Reading<EngravedScore>(null, read.Diagnostics);
        }
        lock (_turn)
        {
            ObjectDisposedException.ThrowIf(_disposed, this);
            cancellation.ThrowIfCancellationRequested();
            var limit = _limit * Math.Max(1, (double)score.Bars / BarsInLimit);
            try
            {
                _engine ??= Engine.Start(StartLimit, cancellation);
                using (_engine.Watch(limit, cancellation))
                {
                    return LayOut(_engine, score, setup);
                }
            }
            catch (ScriptInterruptedException)
            {
                DropEngine();
                cancellation.ThrowIfCancellationRequested();
                return Failed(EngravingMessages.TooLong(limit));
            }
            catch (ScriptEngineException problem)
            {
                DropEngine();
                return Failed(EngravingMessages.Failed(problem.Message));
            }
        }
    }

    private static Reading<EngravedScore> LayOut(Engine engine, ScoreXml score, PageSetup setup)
    {
        engine.TakeLog();
        if (!engine.Load(EngraverOptions.For(setup, score.SmallStaff), score.ToBytes(setup)))
        {
            return Failed(EngravingMessages.NotUnderstood(string.Join("; ", Lines(engine.TakeLog()))));
        }
        var laid = Pages(engine);
        if (!setup.Once)
        {
            laid = Balanced(engine, laid, setup, score.SmallStaff);
            laid = Turned(engine, score, laid, setup) ?? Accompanied(engine, score, laid, setup) ?? laid;
        }
        // A picture without a margin has no room for it.
        laid = setup.EndMargin > TempoRoom.Most ? Array.ConvertAll(laid, TempoRoom.Lifted) : laid;
        var pages = laid.Select((svg, index) => PageFrame.Complete(svg, index + 1, score, setup)).ToValueList();
        pages = [.. pages, .. NotesPages.Of(score, setup, pages.Count)];
        var timeMap = setup.Timed ? ReadTimeMap(engine.TimeMap("{}"u8)) : [];
        var findings = Lines(engine.TakeLog())
            .Select(line => new Diagnostic(Severity.Warning, Place.Whole, EngravingMessages.Warned(line)));
        return new Reading<EngravedScore>(
            new EngravedScore(setup, score.Title, pages, timeMap)
            {
                CutTo = setup.Cut ? PageFrame.SizeOf(laid[0]) : null,
                PageEnds = PageTurns.EndsOf(laid),
            },
            findings.ToValueList()
        );
    }

    private static string[] Pages(Engine engine)
    {
        var pages = new string[engine.PageCount()];
        for (var i = 0; i < pages.Length; i++)
        {
            pages[i] = Encoding.UTF8.GetString(engine.Page(i + 1));
        }
        return pages;
    }

    // The engraver fills page after page and may leave a lone system for the last one: give it company.
    private static string[] Balanced(Engine engine, string[] pages, PageSetup setup, double smallStaff)
    {
        var systems = pages.Select(page => page.AsSpan().Count("class=\"system\"")).ToArray();
        var most = systems.Max() - 1;
        if (pages.Length < 2 || systems[^1] > 1 || most < 2 || setup.ScreenWidth is not null)
        {
            return pages;
        }
        engine.LayOutAgain(EngraverOptions.For(setup, smallStaff, most));
        var balanced = Pages(engine);
        return balanced.Length == pages.Length ? balanced : pages;
    }

    // With page ends where a hand is free, on as many pages or one more; null: they are as good as they are. Two pages lie side
    // by side.
    private static string[]? Turned(Engine engine, ScoreXml score, string[] pages, PageSetup setup)
    {
        if (pages.Length <= PageTurns.SideBySide || setup.Turns.Count == 0)
        {
            return null;
        }
        var free = setup.Turns.ToHashSet(StringComparer.Ordinal);
        var systems = PageTurns.Systems(pages);
        return
            PageTurns.Better(systems, free.Contains, setup.MostPages ?? int.MaxValue) is { } better
            && Cast(engine, score, better, setup) is { } turned
            && turned.Length == better.Count
            ? turned
            : null;
    }

    // The engraver fills system after system and may leave a lone bar for the last one: give it company. Null: it has some, or
    // cannot have any.
    private static string[]? Accompanied(Engine engine, ScoreXml score, string[] pages, PageSetup setup)
    {
        var systems = PageTurns.Systems(pages);
        if (
            systems.SelectMany(p => p).TakeLast(2).ToList() is not [var before, { Bars.Count: 1 }]
            || before.Bars.Count < FullEnough
        )
        {
            return null;
        }
        var starts = systems.ConvertAll(page => page.ConvertAll(system => system.Bars[0].Id));
        starts[^1][^1] = before.Bars[^1].Id;
        return Cast(engine, score, starts, setup) is { } cast && cast.Length == pages.Length ? cast : null;
    }

    // Laid out with these bars at the beginning of the systems of each page; null where that cannot be.
    private static string[]? Cast(Engine engine, ScoreXml score, List<List<string>> starts, PageSetup setup) =>
        score.TryBreak([.. starts.SelectMany(p => p).Skip(1)], starts.Skip(1).Select(p => p[0]).ToHashSet())
        && engine.Load(EngraverOptions.For(setup, score.SmallStaff, breaks: "encoded"), score.ToBytes(setup))
            ? Pages(engine)
            : null;

    private static ValueList<TimeMapEntry> ReadTimeMap(byte[] json)
    {
        using var document = JsonDocument.Parse(json);
        return document
            .RootElement.EnumerateArray()
            .Where(entry => entry.TryGetProperty("on", out _))
            .Select(entry => new TimeMapEntry(
                entry.GetProperty("qstamp").GetDouble(),
                entry.GetProperty("tstamp").GetDouble(),
                entry.GetProperty("on").EnumerateArray().Select(id => id.GetString()!).ToValueList()
            ))
            .ToValueList();
    }

    private static IEnumerable<string> Lines(string log) =>
        log.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Distinct();

    private static Reading<EngravedScore> Failed(string message) =>
        new(null, [new Diagnostic(Severity.Error, Place.Whole, message)]);

    private void DropEngine()
    {
        _engine?.Dispose();
        _engine = null;
    }
}
