using Stridewright.Music;

namespace Stridewright.Workbench.Tunes;

/// <summary>The chord symbols of one bar in a line of words.</summary>
internal static class BarChords
{
    private const int MostChords = 16;

    public static string Written(TuneBar bar)
    {
        var plain = string.Join(' ', bar.Chords.Select(c => c.Chord.ToString()));
        var read = Read(plain, bar, out _);
        return read is not null && read.SequenceEqual(bar.Chords)
            ? plain
            : string.Join(' ', bar.Chords.Select(c => $"{c.Chord}@{c.At}"));
    }

    /// <summary>Null, with the word that is none, where it cannot be read.</summary>
    public static ValueList<PlacedChord>? Read(string text, TuneBar bar, out string fault)
    {
        fault = "";
        var words = text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var chords = new List<PlacedChord>();
        for (var i = 0; i < words.Length; i++)
        {
            fault = words[i];
            if (words.Length > MostChords)
            {
                return null;
            }
            if (words[i] == ".")
            {
                continue;
            }
            var parts = words[i].Split('@');
            ScoreTime? at =
                parts.Length == 1 ? Share(i, words.Length, bar)
                : parts.Length == 2 ? Times.Read(parts[1])
                : null;
            if (at is not { } place || place >= bar.Length || !ChordText.TryParse(parts[0], out var chord))
            {
                return null;
            }
            chords.Add(new(place, chord));
        }
        fault = "";
        return chords.OrderBy(c => c.At).DistinctBy(c => c.At).ToValueList();
    }

    // Two take half each, of three the first takes half (in three beats a beat each), more share alike.
    private static ScoreTime Share(int place, int count, TuneBar bar) =>
        count == 3 && bar.Metre.BarLength.Per(bar.Metre.Beat) != new ScoreTime(3, 1)
            ? place == 0
                ? ScoreTime.Zero
                : bar.Length * (place + 1) / 4
            : bar.Length * place / count;
}

/// <summary>Parts of a whole note in words.</summary>
internal static class Times
{
    private const int Finest = 1024;

    /// <summary>Such as <c>3/16</c> or <c>0</c>; null where it is none.</summary>
    public static ScoreTime? Read(string text)
    {
        var parts = text.Split('/');
        return
            parts.Length is 1 or 2
            && int.TryParse(parts[0], System.Globalization.NumberStyles.None, null, out var above)
            && (parts.Length == 1 ? 1 : Below(parts[1])) is > 0 and var below
            && above <= 64 * below
            ? new ScoreTime(above, below)
            : null;

        static int Below(string text) =>
            int.TryParse(text, System.Globalization.NumberStyles.None, null, out var below) && below <= Finest
                ? below
                : 0;
    }
}
