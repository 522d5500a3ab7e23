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
        var start = new ProcessStartInfo("python3") { RedirectStandardOutput = true };
        string[] options =
        [
            Corpus.PathOf("tools/audit.py"),
            "--json",
            "--span",
            spanMm.ToString(CultureInfo.InvariantCulture),
        ];
        foreach (var word in options.Concat(scores.Select(s => s.Score)))
        {
            start.ArgumentList.Add(word);
        }
        foreach (var melody in scores.Select(s => s.Melody).OfType<string>())
        {
            start.ArgumentList.Add("--melody");
            start.ArgumentList.Add(melody);
        }
        using var process = Run(start);
        using var report = JsonDocument.Parse(process.StandardOutput.BaseStream);
        process.WaitForExit();
        var reports = report.RootElement.GetProperty("scores").EnumerateArray().ToList();
        Assert.Equal(scores.Count, reports.Count);
        return [.. reports.SelectMany(FailuresOf)];
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
