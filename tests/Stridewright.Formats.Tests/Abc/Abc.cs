using Stridewright.Formats.Abc;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Reads ABC in tests and shows tunes in a short text: pitch and length in eighths, bars divided by |.</summary>
internal static class Abc
{
    public static Reading<ValueList<Tune>> Read(string text) => AbcReader.Read(new StringReader(text));

    /// <summary>The only tune of a body under a plain header in 4/4, eighths, C.</summary>
    public static Tune Body(string body, string header = "M:4/4\nL:1/8\nK:C") =>
        Whole("X:1\nT:Test\n" + header + "\n" + body);

    public static Tune Whole(string text) => Assert.Single(Read(text).Value!);

    public static string Notes(Tune tune) => string.Join(" | ", tune.Bars.Select(Notes));

    public static string Chords(Tune tune) =>
        string.Join(" | ", tune.Bars.Select(b => string.Join(' ', b.Chords.Select(c => $"{c.Chord}@{Eighths(c.At)}"))));

    public static string Findings(string text) => string.Join("\n", Read(text).Diagnostics);

    // Rests show as gaps: r with their length.
    private static string Notes(TuneBar bar)
    {
        var parts = new List<string>();
        var at = ScoreTime.Zero;
        foreach (var note in bar.Notes)
        {
            if (note.At > at)
            {
                parts.Add("r" + Eighths(note.At - at));
            }
            Assert.True(note.At >= at, "notes overlap");
            parts.Add(note.Pitch + ":" + Eighths(note.Length) + (note.TiedToNext ? "-" : ""));
            at = note.At + note.Length;
        }
        if (bar.Length > at)
        {
            parts.Add("r" + Eighths(bar.Length - at));
        }
        return string.Join(' ', parts);
    }

    private static string Eighths(ScoreTime time) => (time * 8).ToString();
}
