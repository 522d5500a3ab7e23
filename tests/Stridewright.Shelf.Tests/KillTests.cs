using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using static Stridewright.Shelf.Tests.Place;

namespace Stridewright.Shelf.Tests;

/// <summary>A program that saves without end is killed again and again; what it was answered must stand.</summary>
public sealed class KillTests : IDisposable
{
    private const int Kills = 20,
        Seed = 1126;

    private readonly Place _place = new();

    public void Dispose() => _place.Dispose();

    [Fact]
    public async Task Whatever_was_answered_before_a_kill_stands_and_nothing_is_half_written()
    {
        var moments = new Random(Seed);
        var answered = new Dictionary<(string Id, int Number), string>();
        var newest = new Dictionary<string, int>();
        var (midway, restored) = (0, 0);
        // The next one starts up while this one works.
        var next = Saver.Start(_place.Folder);
        for (var kill = 0; kill < Kills; kill++)
        {
            using var saver = next;
            next = Saver.Start(_place.Folder);
            var said = await saver.WorkAndDie(TimeSpan.FromMilliseconds(moments.Next(1, 250)), Word(kill));
            midway += said.Count > 0 ? 1 : 0;
            restored += said.Count(s => s == "restored");
            foreach (var words in said.Select(s => s.Split(' ')).Where(w => w.Length == 4))
            {
                var number = int.Parse(words[2], CultureInfo.InvariantCulture);
                newest[words[1]] = number;
                if (words[0] == "stays")
                {
                    answered[(words[1], number)] = words[3];
                }
            }
            await Check(answered, newest);
        }
        using (next)
        {
            await next.WorkAndDie(TimeSpan.Zero, after: null);
        }
        Assert.True(midway >= 16, $"only {midway} of {Kills} were killed while they saved");
        Assert.True(restored >= 4, $"only {restored} backups were put back");
        Assert.True(answered.Count > 20, $"only {answered.Count} saves were answered");
    }

    private async Task Check(Dictionary<(string Id, int Number), string> answered, Dictionary<string, int> newest)
    {
        using var shelf = _place.Take();
        foreach (var document in (await shelf.Find(new(), None)).Documents)
        {
            var history = await shelf.History(document.Id, None);
            Assert.Contains(document.Current.Number, history.Select(v => v.Number));
            Assert.True(document.Current.Number >= newest.GetValueOrDefault(document.Id));
            foreach (var version in history)
            {
                var text = (await shelf.Get(document.Id, version.Number, None)).Text;
                Assert.Equal(text[^64..], Sum(text[..^64]));
                if (answered.GetValueOrDefault((document.Id, version.Number)) is { } sum)
                {
                    Assert.Equal(sum, text[^64..]);
                }
            }
            var numbers = history.Select(v => v.Number).ToHashSet();
            Assert.All(answered.Keys.Where(k => k.Id == document.Id), k => Assert.Contains(k.Number, numbers));
        }
        var ids = (await shelf.Find(new(), None)).Documents.Select(d => d.Id).ToHashSet();
        Assert.All(newest.Keys, id => Assert.Contains(id, ids));
        Assert.DoesNotContain(_place.Files(), f => f.StartsWith("unfinished-", StringComparison.Ordinal));
    }

    // Some go while they open the shelf, some after they have put a backup back, most while they save.
    private static string? Word(int kill) =>
        (kill % 5) switch
        {
            0 => null,
            1 => "restored",
            _ => "stays",
        };

    private static string Sum(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>The other program: saves in a data folder until it is killed, and says what was answered.</summary>
    internal static class Loop
    {
        public const string Asked = "STRIDEWRIGHT_SAVE_LOOP";

        public static async Task Run(string folder)
        {
            Console.WriteLine("ready");
            Console.ReadLine();
            // Nobody is left alone with it.
            _ = Task.Run(() =>
            {
                Console.In.ReadToEnd();
                Environment.Exit(0);
            });
            using var shelf = Shelf.Take(folder, TimeProvider.System);
            var sitting = Guid.NewGuid().ToString("N");
            var random = new Random(Seed);
            var one = await Add(shelf, Text(random));
            var thinned = await shelf.Add(DocumentKind.Tune, Text(random), [], sitting, None);
            for (var round = 1; ; round++)
            {
                var content = Text(random);
                one = (await shelf.Save(one.Id, one.Current.Number, content, null, None)).Document;
                Say($"stays {one.Id} {one.Current.Number} {content.Text[^64..]}");
                content = Text(random);
                thinned = (await shelf.Save(thinned.Id, thinned.Current.Number, content, sitting, None)).Document;
                Say($"passes {thinned.Id} {thinned.Current.Number} {content.Text[^64..]}");
                await shelf.Tag(one.Id, [$"round {round}"], None);
                if (round % 3 == 1)
                {
                    await shelf.Restore(new MemoryStream(await BackUp(shelf)), None);
                    Say("restored");
                }
            }
        }

        private static Content Text(Random random)
        {
            var text = new string((char)random.Next('a', 'z'), random.Next(10, 30_000));
            return Setting(text + Sum(text));
        }

        private static void Say(string line)
        {
            Console.WriteLine(line);
            Console.Out.Flush();
        }
    }

    private sealed class Saver(Process process) : IDisposable
    {
        public static Saver Start(string folder)
        {
            var start = new ProcessStartInfo(Environment.ProcessPath!)
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                Environment = { [Loop.Asked] = folder, ["DOTNET_TieredPGO"] = "0" },
            };
            return new(Process.Start(start)!);
        }

        /// <summary>Lets it take the folder, and kills it so long after that, or after it said a word. All that it said.</summary>
        public async Task<List<string>> WorkAndDie(TimeSpan time, string? after)
        {
            var said = new List<string>();
            Assert.Equal("ready", await process.StandardOutput.ReadLineAsync());
            await process.StandardInput.WriteLineAsync();
            await process.StandardInput.FlushAsync();
            while (after is not null && !said.Any(s => s.StartsWith(after, StringComparison.Ordinal)))
            {
                said.Add((await process.StandardOutput.ReadLineAsync())!);
            }
            await Task.Delay(time);
            process.Kill(); // SIGKILL
            while (await process.StandardOutput.ReadLineAsync() is { } line)
            {
                said.Add(line);
            }
            await process.WaitForExitAsync();
            return said;
        }

        public void Dispose()
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
            process.Dispose();
        }
    }
}
