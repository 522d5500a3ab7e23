using System.Globalization;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A brief as lines, each a word of the command line's options and its value. What has the usual value has no line.
/// </summary>
internal static class BriefText
{
    private const double LongestSeconds = 3600;

    private const NumberStyles Plain = NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>The brief with a value set; null, with the fault where it is not the usual one, when that cannot be.</summary>
    private delegate Brief? Reader(Brief brief, string value, out string? fault);

    /// <param name="Expected">What its value is, in a few words; empty for a word that stands alone.</param>
    /// <param name="Value">What is written behind the word; null: nothing is.</param>
    private sealed record Setting(string Word, string Expected, Func<Brief, string?> Value, Reader Read);

    // In the order in which they are written; the width of an octave before the span, which may be an interval.
    private static readonly Setting[] Settings =
    [
        Choice("feel", BriefWords.Feels, b => b.Feel, (b, feel) => b with { Feel = feel }),
        Level(
            "level",
            b => b.LeftLevel == b.RightLevel ? b.LeftLevel : null,
            (b, n) => b with { LeftLevel = n, RightLevel = n }
        ),
        Level("left", b => b.LeftLevel != b.RightLevel ? b.LeftLevel : null, (b, n) => b with { LeftLevel = n }),
        Level("right", b => b.LeftLevel != b.RightLevel ? b.RightLevel : null, (b, n) => b with { RightLevel = n }),
        Number(
            "effort",
            "1 to 100",
            (Brief.LeastEffort, Brief.GreatestEffort),
            b => b.MostEffort,
            (b, n) => b with { MostEffort = n }
        ),
        Number("raggedness", "0 to 1", (0, 1), b => b.Raggedness, (b, n) => b with { Raggedness = n }),
        Text("key", "a tonic such as F or Bb", b => b.Tonic?.ToString(), WithTonic),
        Number(
            "bpm",
            FormattableString.Invariant($"{Brief.SlowestBeats} to {Brief.FastestBeats} beats a minute"),
            (Brief.SlowestBeats, Brief.FastestBeats),
            b => b.BeatsPerMinute,
            (b, n) => b with { BeatsPerMinute = n }
        ),
        .. HandsText.Words.Select(OfHands),
        Flag("left-hand-only", b => b.LeftHandOnly, b => b with { LeftHandOnly = true }),
        Flag("lyrics", b => b.Lyrics, b => b with { Lyrics = true }),
        Flag("show-plain", b => b.ShowPlain, b => b with { ShowPlain = true }),
        Flag("accompany", b => b.Singer is not null, b => b with { Singer = new Singer() }),
        new("range", "two notes such as A3-D5", b => b.Singer?.Range?.ToString(), WithRange),
        new("play", OneOf(Playing), Played, WithManners),
        Choice(
            "harmony",
            BriefWords.Richnesses,
            b => b.Harmony.Richness,
            (b, r) => b with { Harmony = b.Harmony with { Richness = r } }
        ),
        new(
            "without",
            OneOf(BriefWords.HarmonyChanges.Keys),
            b =>
                Listed(
                    b.Harmony.Without.Select(BriefWords.HarmonyChanges.WordOf)
                        .Concat(b.Harmony.WithoutAt.Select(w => w.ToString()))
                ),
            WithoutChanges
        ),
        Text("minutes", "a time such as 1:45", b => b.Seconds is { } s ? Minutes(s) : null, WithMinutes),
        Text(
            "most-bars",
            "a number of bars",
            b => b.MostBars?.ToString(CultureInfo.InvariantCulture),
            (b, text) => KeptText.Number(text, KeptText.MostBars) is { } n ? b with { MostBars = n } : null
        ),
        Flag("sketch", b => b.Sketch, b => b with { Sketch = true }),
        new("form", "such as intro A B A end", b => b.Form?.ToString(), WithForm),
        new(
            "seed",
            "a whole number",
            b => b.Seed.ToString(CultureInfo.InvariantCulture),
            Plainly((b, text) => Whole(text) is { } seed ? b with { Seed = seed } : null)
        ),
    ];

    /// <summary>The lines of what differs from the usual.</summary>
    public static IEnumerable<string> Write(Brief brief)
    {
        var usual = new Brief();
        return Settings
            .Select(s => (s.Word, Value: s.Value(brief), Usual: s.Value(usual)))
            .Where(s => s.Value is not null && s.Value != s.Usual)
            .Select(s => s.Value!.Length > 0 ? $"{s.Word} {s.Value}" : s.Word);
    }

    public static Brief Read(IEnumerable<TextLine> lines, TextFaults faults)
    {
        var given = new Dictionary<string, (TextLine Line, TextLine Value)>(StringComparer.Ordinal);
        foreach (var line in lines)
        {
            var (word, value) = line.Split();
            if (!Array.Exists(Settings, s => s.Word == word))
            {
                faults.Add(
                    line,
                    ArrangementTextMessages.NoSetting(word, string.Join(", ", Settings.Select(s => s.Word)))
                );
            }
            else if (!given.TryAdd(word, (line, value)))
            {
                faults.Add(line, ArrangementTextMessages.SettingTwice(word));
            }
        }
        if (given.TryGetValue("level", out var both) && (given.ContainsKey("left") || given.ContainsKey("right")))
        {
            faults.Add(both.Line, ArrangementTextMessages.BothLevels);
        }
        var brief = new Brief();
        foreach (var setting in Settings)
        {
            if (!given.TryGetValue(setting.Word, out var found))
            {
                continue;
            }
            var (line, value) = found;
            if (setting.Read(brief, value.Text, out var fault) is { } read)
            {
                brief = read;
                continue;
            }
            var at = value.Text.Length > 0 ? value : line;
            faults.Add(at, fault ?? ArrangementTextMessages.BadValue(setting.Word, value.Text, setting.Expected));
        }
        return brief;
    }

    private static Setting OfHands(HandsWord word) =>
        new(
            word.Word,
            word.Expected,
            b => word.Value(b.Hands),
            (Brief brief, string value, out string? fault) =>
            {
                (var hands, fault) = word.Read(brief.Hands, value);
                return hands is null ? null : brief with { Hands = hands };
            }
        );

    private static Setting Choice<T>(
        string word,
        IReadOnlyDictionary<string, T> words,
        Func<Brief, T?> value,
        Func<Brief, T, Brief> with
    )
        where T : struct, Enum =>
        Text(
            word,
            OneOf(words.Keys),
            b => value(b) is { } chosen ? words.WordOf(chosen) : null,
            (b, text) => words.Find(text) is { } found ? with(b, found) : null
        );

    private static Setting Level(string word, Func<Brief, int?> value, Func<Brief, int, Brief> with) =>
        Text(
            word,
            FormattableString.Invariant($"{Brief.LowestLevel} to {Brief.HighestLevel}"),
            b => value(b)?.ToString(CultureInfo.InvariantCulture),
            (b, text) => Whole(text) is { } n and >= Brief.LowestLevel and <= Brief.HighestLevel ? with(b, n) : null
        );

    private static Setting Number(
        string word,
        string expected,
        (double Least, double Most) range,
        Func<Brief, double?> value,
        Func<Brief, double, Brief> with
    ) =>
        Text(
            word,
            expected,
            b => value(b) is { } number ? Written(number) : null,
            (b, text) =>
                double.TryParse(text, Plain, CultureInfo.InvariantCulture, out var number)
                && number >= range.Least
                && number <= range.Most
                    ? with(b, number)
                    : null
        );

    private static Setting Flag(string word, Func<Brief, bool> value, Func<Brief, Brief> with) =>
        Text(word, "", b => value(b) ? "" : null, (b, text) => text.Length == 0 ? with(b) : null);

    private static Setting Text(
        string word,
        string expected,
        Func<Brief, string?> value,
        Func<Brief, string, Brief?> read
    ) => new(word, expected, value, Plainly(read));

    private static Reader Plainly(Func<Brief, string, Brief?> read) =>
        (Brief brief, string value, out string? fault) =>
        {
            fault = null;
            return read(brief, value);
        };

    private static Brief? WithTonic(Brief brief, string text) =>
        Tone.TryParse(text, out var tonic) && Math.Abs(tonic.Fifths) <= Brief.FurthestTonic
            ? brief with
            {
                Tonic = tonic,
            }
            : null;

    private static Brief? WithRange(Brief brief, string text, out string? fault)
    {
        var read = VocalRange.TryRead(text, out var range, out fault);
        return read ? brief with { Singer = new Singer(range) } : null;
    }

    // Minutes and seconds, so that no digit of the seconds is lost.
    private static string Minutes(double seconds)
    {
        var whole = Math.Floor(seconds / 60);
        var rest = seconds - 60 * whole;
        return Written(whole) + (rest < 10 ? ":0" : ":") + Written(rest);
    }

    private static Brief? WithMinutes(Brief brief, string text)
    {
        var parts = text.Split(':');
        var seconds = 0.0;
        var fine =
            double.TryParse(parts[0], Plain, CultureInfo.InvariantCulture, out var minutes)
            && (
                parts.Length == 1
                || (parts.Length == 2 && double.TryParse(parts[1], Plain, CultureInfo.InvariantCulture, out seconds))
            );
        var time = 60 * minutes + seconds;
        return fine && seconds < 60 && time > 0 && time <= LongestSeconds ? brief with { Seconds = time } : null;
    }

    private static Brief? WithForm(Brief brief, string text, out string? fault) =>
        FormLine.Read(text, out fault) is { } form ? brief with { Form = form } : null;

    private static string? Played(Brief brief) =>
        Listed(brief.LeftManners.Select(Manners.Left.WordOf).Concat(brief.RightManners.Select(Manners.Right.WordOf)));

    private static Brief? WithManners(Brief brief, string text, out string? fault)
    {
        var words = Words(text);
        var unknown = Array.Find(words, w => Manners.Left.Find(w) is null && Manners.Right.Find(w) is null);
        fault = unknown is null ? null : ArrangementTextMessages.BadValue("play", unknown, OneOf(Playing));
        return unknown is null
            ? brief with
            {
                LeftManners = words.Select(w => Manners.Left.Find(w)).OfType<LeftManner>().ToValueList(),
                RightManners = words.Select(w => Manners.Right.Find(w)).OfType<RightManner>().ToValueList(),
            }
            : null;
    }

    private static Brief? WithoutChanges(Brief brief, string text, out string? fault)
    {
        var words = Words(text);
        var unknown = Array.Find(
            words,
            w => BriefWords.HarmonyChanges.Find(w) is null && UnwantedChange.Read(w) is null
        );
        var known = OneOf(BriefWords.HarmonyChanges.Keys);
        fault = unknown is null ? null : ArrangementTextMessages.BadValue("without", unknown, known);
        var kinds = words.Select(w => BriefWords.HarmonyChanges.Find(w)).OfType<HarmonyChangeKind>().ToValueList();
        var single = words.Select(UnwantedChange.Read).OfType<UnwantedChange>().ToValueList();
        var harmony = brief.Harmony with { Without = kinds, WithoutAt = single };
        return unknown is null ? brief with { Harmony = harmony } : null;
    }

    private static IEnumerable<string> Playing => Manners.Left.Keys.Concat(Manners.Right.Keys);

    private static string[] Words(string text) => text.Split(',', StringSplitOptions.TrimEntries);

    private static string Written(double number) => number.ToString(CultureInfo.InvariantCulture);

    private static int? Whole(string text) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static string OneOf(IEnumerable<string> words) => "choose among " + string.Join(", ", words);

    private static string? Listed(IEnumerable<string> words) =>
        string.Join(", ", words) is { Length: > 0 } list ? list : null;
}
