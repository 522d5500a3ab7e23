using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// Puts lyric events under the notes of a line. A hyphen ends a syllable inside a word; in files that divide words by
/// spaces a syllable without one around it goes on in the next (both common practice).
/// </summary>
internal static class MidiLyrics
{
    /// <summary>Syllables by the index of their note; a note has at most one.</summary>
    public static Dictionary<int, Lyric> Place(
        IReadOnlyList<MidiLyric> lyrics,
        IReadOnlyList<LineNote> line,
        int ticksPerQuarter
    )
    {
        var spaced = lyrics.Any(l => l.Text.StartsWith(' ') || l.Text.EndsWith(' '));
        var placed = new Dictionary<int, Lyric>();
        var at = 0;
        for (var i = 0; i < lyrics.Count; i++)
        {
            var (tick, text) = lyrics[i];
            var word = text.Trim(' ', '-', '/', '\\', '_');
            while (at + 1 < line.Count && Away(line[at + 1], tick) <= Away(line[at], tick))
            {
                at++;
            }
            if (word.Length == 0 || Away(line[at], tick) > ticksPerQuarter / 4)
            {
                continue;
            }
            var goesOn =
                text.TrimEnd().EndsWith('-')
                || (spaced && i + 1 < lyrics.Count && !text.EndsWith(' ') && !lyrics[i + 1].Text.StartsWith(' '));
            placed.TryAdd(at, new Lyric(1, word, goesOn));
        }
        return placed;
    }

    private static long Away(LineNote note, long tick) => Math.Abs(note.Stroke.Tick - tick);
}
