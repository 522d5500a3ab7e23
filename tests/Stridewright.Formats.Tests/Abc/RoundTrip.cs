using Stridewright.Formats.Abc;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Writes a tune, reads it back, and tells in a line where the two differ.</summary>
internal static class RoundTrip
{
    public static string? Difference(Tune tune)
    {
        var text = AbcWriter.Write(tune);
        var reading = Abc.Read(text);
        if (reading.Value is not [var back])
        {
            return "not one tune: " + string.Join("; ", reading.Diagnostics);
        }
        if (back == tune)
        {
            return reading.Diagnostics.FirstOrDefault(d => d.Severity != Severity.Note && !IsUsual(d))?.ToString();
        }
        var bar = tune.Bars.Zip(back.Bars).Index().FirstOrDefault(b => b.Item.First != b.Item.Second);
        return back.Bars.Count != tune.Bars.Count ? $"{tune.Bars.Count} bars became {back.Bars.Count}"
            : bar.Item.First is null ? Head(tune) + " became " + Head(back)
            : $"bar {bar.Index}: {Show(bar.Item.First)} became {Show(bar.Item.Second)}\n{text}";
    }

    // What is said of the tune itself, as it was said when it was first read.
    private static bool IsUsual(Diagnostic finding) =>
        finding.Message.Contains("the bar holds", StringComparison.Ordinal)
        || finding.Message.Contains("chord symbols but no notes", StringComparison.Ordinal)
        || finding.Message.Contains("no part has that name", StringComparison.Ordinal);

    private static string Head(Tune tune) => (tune with { Bars = [] }).ToString();

    private static string Show(TuneBar bar) =>
        bar
        + string.Concat(bar.Notes.Select(n => $"\n  {n.At}+{n.Length} {n.Pitch} {n.TiedToNext} {n.Graces} {n.Lyrics}"));
}
