using System.Diagnostics;
using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Hands;

namespace Stridewright.Trials;

/// <summary>
/// Damages files, reads them and sets some of their tunes, and keeps each case that throws, takes more than five seconds of
/// processor time or more than 500 MB. Settings of more than 500 bars, as damage makes them by doubling, may
/// take ten milliseconds a bar. The same seed gives the same cases in the same order.
/// </summary>
internal sealed class FuzzRun(FuzzFormat format, IReadOnlyList<byte[]> files, string folder, int seed)
{
    private const int MostHangs = 4;
    private const long MostBytes = 500L * 1024 * 1024;

    // Setting a tune takes a hundred times as long as reading it.
    private const int SetEvery = 4;
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);
    private readonly HashSet<string> _kinds = [];
    private int _runs,
        _read,
        _set,
        _refused,
        _hangs;

    /// <summary><c>fuzz SHARED [--minutes N] [--seed N] [--format NAME] [--out FOLDER]</c></summary>
    public static int Run(string[] args)
    {
        string Option(string name, string otherwise) =>
            Array.IndexOf(args, name) is >= 0 and var i && i + 1 < args.Length ? args[i + 1] : otherwise;
        var minutes = double.Parse(Option("--minutes", "1"), CultureInfo.InvariantCulture);
        var seed = int.Parse(Option("--seed", "1"), CultureInfo.InvariantCulture);
        var only = Option("--format", "");
        var formats = FuzzFormat.All.Where(f => only.Length == 0 || f.Name == only).ToList();
        if (formats.Count == 0)
        {
            Console.Error.WriteLine(
                $"no reader for '{only}'; there are {string.Join(", ", FuzzFormat.All.Select(f => f.Name))}"
            );
            return 2;
        }
        var findings = 0;
        foreach (var format in formats)
        {
            var folder = Path.Combine(Option("--out", "artifacts/fuzz"), format.Name);
            var run = new FuzzRun(format, Files(format, args[1]), folder, seed);
            findings += run.For(TimeSpan.FromMinutes(minutes / formats.Count));
        }
        return findings == 0 ? 0 : 1;
    }

    private static List<byte[]> Files(FuzzFormat format, string shared) =>
        [
            .. format
                .Folders.Select(f => Path.Combine(shared, f))
                .Append("samples")
                .Append("samples/musicxml")
                .Where(Directory.Exists)
                .SelectMany(Directory.EnumerateFiles)
                .Where(f => format.Endings.Contains(Path.GetExtension(f)))
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes)
                .Where(bytes => bytes.Length is > 0 and < 1 << 20),
        ];

    private int For(TimeSpan time)
    {
        var clock = Stopwatch.StartNew();
        while (clock.Elapsed < time && _hangs < MostHangs)
        {
            One(_runs++);
        }
        Console.WriteLine(
            FormattableString.Invariant(
                $"{format.Name}: {files.Count} files, seed {seed}: {_runs} runs in {clock.Elapsed.TotalMinutes:0.0} min, {_read} read, {_set} set, {_refused} refused; {_kinds.Count} kinds of findings"
            )
        );
        return _kinds.Count;
    }

    // In a thread of its own, so that a run that never ends can be left behind.
    private void One(int number)
    {
        var random = new Random(HashCode(seed, number));
        var file = format.Damage(files[random.Next(files.Count)], files[random.Next(files.Count)], random);
        var before = GC.GetTotalMemory(false);
        Exception? thrown = null;
        var doing = "reading";
        var limit = Limit;
        var thread = new Thread(() =>
        {
            try
            {
                Work(
                    file,
                    number,
                    random,
                    bars => (doing, limit) = ($"setting {bars} bars", Limit * Math.Max(1, bars / 500.0))
                );
            }
            catch (Exception e)
            {
                thrown = e;
            }
        })
        {
            IsBackground = true,
        };
        var (clock, used) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        thread.Start();
        long most = 0;
        while (!thread.Join(20) && clock.Elapsed < 4 * limit)
        {
            most = Math.Max(most, GC.GetTotalMemory(false) - before);
        }
        used = Environment.CpuUsage.TotalTime - used;
        if (thread.IsAlive)
        {
            _hangs++;
            Keep(file, number, $"hang while {doing}", $"{doing} had not ended after {clock.Elapsed}");
        }
        else if (thrown is not null)
        {
            var place = thrown
                .StackTrace?.Split('\n')
                .FirstOrDefault(l => l.Contains("Stridewright", StringComparison.Ordinal));
            Keep(file, number, $"{thrown.GetType().Name} {place?.Trim()}", $"{doing}: {thrown}");
        }
        else if (used > limit)
        {
            Keep(file, number, $"slow {doing}", $"{doing} took {used}");
        }
        else if (most > MostBytes)
        {
            Keep(file, number, $"memory {doing}", $"{doing} took {most >> 20} MB");
        }
    }

    private void Work(byte[] file, int number, Random random, Action<int> setting)
    {
        var tunes = format.Read(file);
        if (tunes.Count == 0)
        {
            return;
        }
        _read++;
        if (number % SetEvery != 0)
        {
            return;
        }
        var tune = tunes[random.Next(tunes.Count)];
        // A quarter of a quick tune becomes a bar of the setting at most.
        setting((int)Math.Max(tune.Bars.Count, tune.Bars.Sum(b => b.Length.ToQuarters())));
        var brief = new Brief
        {
            LeftLevel = random.Next(Brief.LowestLevel, Brief.HighestLevel + 1),
            RightLevel = random.Next(Brief.LowestLevel, Brief.HighestLevel + 1),
            Raggedness = random.NextDouble(),
            Hands = new PlayerHands { SpanMm = 170 + 10 * random.Next(8) },
        };
        var result = Arranger.Arrange(tune, brief);
        _ = result.Arrangement is null ? _refused++ : _set++;
        if ((result.Arrangement is null) == (result.Refusal is null))
        {
            throw new InvalidOperationException("neither an arrangement nor a refusal");
        }
    }

    private void Keep(byte[] file, int number, string kind, string what)
    {
        Console.WriteLine($"{format.Name} run {number}: {kind}");
        if (_kinds.Add(kind))
        {
            Directory.CreateDirectory(folder);
            var name = Path.Combine(folder, $"{seed}-{number}");
            File.WriteAllBytes(name + format.Endings[0], file);
            File.WriteAllText(name + ".txt", what);
        }
    }

    private static int HashCode(int seed, int number) => unchecked((seed * 7919 + number) * 1_000_003);
}
