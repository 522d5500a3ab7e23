using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Testing;

namespace Stridewright.Practice.Tests.Lessons;

/// <summary>Lessons on every sample: on its setting, by levels, and on the bare score of that setting, by thinning.</summary>
internal static class LessonPieces
{
    private const int LongestToThin = 40; // bars: long ones take long

    private static readonly Lazy<IReadOnlyList<(string Name, Tune Tune, Arrangement Setting)>> Settings = new(() =>
        [.. Samples().Select((file, i) => Set(file, 3 + i % 4))]
    );

    private static readonly Lazy<IReadOnlyList<(string Name, Lesson Lesson)>> Made = new(() =>
        [
            .. Settings.Value.Select(s => (s.Name + " by levels", OfSetting(s.Name, new LessonWish()))),
            .. Settings
                .Value.Where(s => s.Setting.Score.Bars.Count <= LongestToThin)
                .Select(s => (s.Name + " by thinning", OfScore(s.Name, new LessonWish()))),
        ]
    );

    /// <summary>All of them, in usual hands and time.</summary>
    public static IReadOnlyList<(string Name, Lesson Lesson)> All => Made.Value;

    public static IEnumerable<string> Names => Settings.Value.Select(s => s.Name);

    public static Lesson OfSetting(string name, LessonWish wish)
    {
        var (_, tune, setting) = Settings.Value.First(s => s.Name == name);
        return LessonMaker.Of(tune, setting, wish).Lesson!;
    }

    public static Lesson OfScore(string name, LessonWish wish) =>
        LessonMaker.Of(Settings.Value.First(s => s.Name == name).Setting.Score, wish).Lesson!;

    private static IEnumerable<string> Samples() =>
        Directory.EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*.abc").Order(StringComparer.Ordinal);

    // Levels 3 to 6 in turn.
    private static (string, Tune, Arrangement) Set(string file, int level)
    {
        var tune = AbcReader.Read(new StringReader(File.ReadAllText(file))).Value![0];
        var brief = new Brief { LeftLevel = level, RightLevel = level };
        return (Path.GetFileNameWithoutExtension(file), tune, Arranger.Arrange(tune, brief).Arrangement!);
    }
}
