using System.Diagnostics;
using System.Text.Json;
using Stridewright.Engraving;

namespace Stridewright.Bench.Paired;

/// <summary>The engraving library in our host against the same library, the same options and the same score in Node. Node
/// must be on the PATH; each round is a process of its own there and an engine of its own here.</summary>
internal static class Hosts
{
    private const int Rounds = 9;
    private const int Bars = 128;

    /// <summary>Seconds: until ready, until the first page, for each later page, for the whole score again.</summary>
    private sealed record Times(double Load, double First, double Later, double Warm, int Pages);

    public static void Run()
    {
        var xml = Material.Xml(Material.Score(5, Bars / Material.BarsInStrain));
        var options = EngraverOptions.For(PageSetup.Default);
        var folder = Directory.CreateTempSubdirectory("stridewright-bench-");
        try
        {
            var files = (
                Options: Path.Combine(folder.FullName, "options.json"),
                Score: Path.Combine(folder.FullName, "score.musicxml")
            );
            File.WriteAllBytes(files.Options, options);
            File.WriteAllBytes(files.Score, xml);
            var here = new List<Times>();
            var there = new List<Times>();
            for (var round = 0; round < Rounds; round++)
            {
                there.Add(InNode(files.Options, files.Score));
                here.Add(InOurHost(options, xml));
            }
            if (here[0].Pages != there[0].Pages)
            {
                throw new InvalidOperationException($"{here[0].Pages} pages here, {there[0].Pages} in Node");
            }
            void Tell(string what, Func<Times, double> of) =>
                Race.Tell(what, "each", Rounds, ["Node", "our host"], round => [of(there[round]), of(here[round])]);
            Tell("Load", t => t.Load);
            Tell(
                FormattableString.Invariant($"First page of {here[0].Pages}, a score of {Bars} bars laid out"),
                t => t.First
            );
            Tell("Each later page", t => t.Later);
            Tell("The whole score again, warm", t => t.Warm);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Times InOurHost(byte[] options, byte[] xml)
    {
        var clock = Stopwatch.StartNew();
        using var engine = Engine.Start(TimeSpan.FromMinutes(1), CancellationToken.None);
        var load = clock.Elapsed.TotalSeconds;
        void Open()
        {
            if (!engine.Load(options, xml))
            {
                throw new InvalidOperationException("the score could not be read");
            }
            engine.Page(1);
        }
        clock.Restart();
        Open();
        var first = clock.Elapsed.TotalSeconds;
        var pages = engine.PageCount();
        clock.Restart();
        Rest();
        var later = clock.Elapsed.TotalSeconds / Math.Max(1, pages - 1);
        clock.Restart();
        Open();
        Rest();
        return new(load, first, later, clock.Elapsed.TotalSeconds, pages);
        void Rest()
        {
            for (var page = 2; page <= pages; page++)
            {
                engine.Page(page);
            }
        }
    }

    private static Times InNode(string options, string score)
    {
        var root = Root();
        var start = new ProcessStartInfo("node") { RedirectStandardOutput = true };
        start.ArgumentList.Add(Path.Combine(root, "bench", "engrave.mjs"));
        start.ArgumentList.Add(Path.Combine(root, "src", "Stridewright.Engraving", "node_modules", "verovio"));
        start.ArgumentList.Add(options);
        start.ArgumentList.Add(score);
        using var node = Process.Start(start)!;
        var json = node.StandardOutput.ReadToEnd();
        node.WaitForExit();
        return JsonSerializer.Deserialize<Times>(json, JsonSerializerOptions.Web)
            ?? throw new InvalidOperationException("Node told nothing");
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Stridewright.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("run it from the repository");
        }
        return folder.FullName;
    }
}
