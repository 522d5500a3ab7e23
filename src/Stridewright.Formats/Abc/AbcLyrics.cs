using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Puts a line of words under the notes of the music line before it (ABC 2.1, 5.1): spaces and <c>-</c> divide
/// syllables, <c>_</c> holds one over a note, <c>*</c> skips a note, <c>~</c> is a space and <c>\-</c> a hyphen within a
/// syllable, <c>|</c> goes on to the next bar. Rests and graces take no syllable.
/// </summary>
internal static class AbcLyrics
{
    /// <summary>False when there are more syllables than notes.</summary>
    public static bool Place(string words, int verse, List<(AbcNote Note, AbcBar Bar)> notes)
    {
        var at = 0;
        AbcNote? last = null;
        var syllable = new StringBuilder();
        var fits = true;

        void Put(bool hyphen)
        {
            if (syllable.Length > 0)
            {
                fits &= at < notes.Count;
                last = at < notes.Count ? notes[at].Note : null;
                last?.Lyrics.Add(new Lyric(verse, syllable.ToString(), hyphen));
                at++;
                syllable.Clear();
            }
            else if (hyphen)
            {
                // A hyphen on its own goes on in the same word for one more note.
                at++;
            }
        }

        for (var i = 0; i < words.Length; i++)
        {
            switch (words[i])
            {
                case ' ' or '\t':
                    Put(false);
                    break;
                case '-':
                    Put(true);
                    break;
                case '_':
                    Put(false);
                    if (last is not null)
                    {
                        last.Lyrics[^1] = last.Lyrics[^1] with { Extends = true };
                    }
                    at++;
                    break;
                case '*':
                    Put(false);
                    at++;
                    break;
                case '|':
                    Put(false);
                    at = NextBar(notes, at);
                    break;
                case '~':
                    syllable.Append(' ');
                    break;
                case '\\' when AbcText.Unicode(words, i) is { } c:
                    syllable.Append(c);
                    i += 5;
                    break;
                case '\\' when i + 1 < words.Length:
                    syllable.Append(words[++i]);
                    break;
                case '\\':
                    break;
                default:
                    syllable.Append(words[i]);
                    break;
            }
        }
        Put(false);
        return fits;
    }

    // First note of the bar after the one that the last syllable stands in.
    private static int NextBar(List<(AbcNote Note, AbcBar Bar)> notes, int at)
    {
        if (at == 0 || at >= notes.Count)
        {
            return at;
        }
        var bar = notes[at - 1].Bar;
        while (at < notes.Count && ReferenceEquals(notes[at].Bar, bar))
        {
            at++;
        }
        return at;
    }
}
