using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Xunit;

namespace Stridewright.Testing;

/// <summary>
/// The independent audit beside the checkout (a Python program that shares no code with the project): structure, reach,
/// strain, leaps, both hands together and, with the plain tune as MIDI, the melody.
/// </summary>
public static class Audit
{
    /// <summary>Required checks that scores fail, a line each; empty when all pass.</summary>
    /// <param name="spanMm">Span of the hands.</param>
    /// <param name="scores">MusicXML files; for all of them or none the MIDI file of the tune as played.</param>
    public static IReadOnlyList<string> Failures(int spanMm, IReadOnlyList<(string Score, string? Melody)> scores)
    {
        var melodies = scores.Select(s => s.Melody).OfType<string>().SelectMany(m => new[] { "--melody", m });
        using var report = Report(spanMm, [.. scores.Select(s => s.Score), .. melodies]);
        var reports = report.RootElement.GetProperty("scores").EnumerateArray().ToList();
        Assert.Equal(scores.Count, reports.Count);
        return [.. reports.SelectMany(FailuresOf)];
    }

    /// <summary>The figures of one check of a score, as the audit counts them (<c>audit.py --keys</c>); null: the check has
    /// none for it.</summary>
    public static IReadOnlyList<JsonElement?> Figures(string check, IReadOnlyList<string> scores)
    {
        using var report = Report(205, [.. scores]);
        return
        [
            .. report
                .RootElement.GetProperty("scores")
                .EnumerateArray()
                .Select(s =>
                    s.GetProperty("checks").TryGetProperty(check, out var found)
                        ? found.GetProperty("figures").Clone()
                        : (JsonElement?)null
                ),
        ];
    }

    /// <summary>For each step up, what share of the easier level's right-hand onsets and off-beat chords stands again in
    /// the next; 1 where there are none.</summary>
    /// <param name="levels">MusicXML files of one tune, easiest first.</param>
    public static IReadOnlyList<(double Right, double Left)> Nesting(int spanMm, IReadOnlyList<string> levels)
    {
        var nested = levels.SkipLast(1).SelectMany(l => new[] { "--nested", l });
        using var report = Report(spanMm, [.. levels.Skip(1), .. nested]);
        return
        [
            .. report
                .RootElement.GetProperty("scores")
                .EnumerateArray()
                .Select(s => s.GetProperty("checks").GetProperty("nested").GetProperty("figures"))
                .Select(f => (Share(f, "right_recur_share"), Share(f, "left_recur_share"))),
        ];
    }

    private static double Share(JsonElement figures, string name) =>
        figures.GetProperty(name) is { ValueKind: JsonValueKind.Number } share ? share.GetDouble() : 1;

    private static JsonDocument Report(int spanMm, string[] words)
    {
        var start = new ProcessStartInfo("python3") { RedirectStandardOutput = true };
        string[] options =
        [
            Corpus.PathOf("tools/audit.py"),
            "--json",
            "--span",
            spanMm.ToString(CultureInfo.InvariantCulture),
        ];
        foreach (var word in options.Concat(words))
        {
            start.ArgumentList.Add(word);
        }
        using var process = Run(start);
        var report = JsonDocument.Parse(process.StandardOutput.BaseStream);
        process.WaitForExit();
        return report;
    }

    private static IEnumerable<string> FailuresOf(JsonElement score)
    {
        foreach (var check in score.GetProperty("checks").EnumerateObject())
        {
            if (
                check.Value.GetProperty("required").GetBoolean()
                && check.Value.GetProperty("pass").ValueKind == JsonValueKind.False
            )
            {
                var places = check.Value.GetProperty("places").EnumerateArray().Take(3).Select(p => p.GetString());
                yield return $"{score.GetProperty("score").GetString()} {check.Name}: {string.Join(" | ", places)}";
            }
        }
    }

    private static Process Run(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("python3, which runs the independent audit, is not on this machine");
            throw;
        }
    }
}
