using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>How a syllable is spoken.</summary>
internal enum Stress
{
    /// <summary>The note carries no syllable.</summary>
    None,
    Weak,
    Strong,
}

/// <summary>
/// Guesses which syllables of a plain tune are stressed (common practice of English verse; the first verse counts):
/// <list type="number">
/// <item>a word of one syllable: an article, pronoun, preposition, conjunction or auxiliary is weak, any other word is
/// strong on a beat of the metre and weak off it;</item>
/// <item>a longer word: the first syllable is strong, or the second behind an unstressed prefix, the others weak,
/// wherever they stand.</item>
/// </list>
/// </summary>
internal static class Stresses
{
    private static readonly HashSet<string> Small = Words(
        """
        a an the and or but nor so if as than that then when while till though
        of to in on at by for from with up out off o'er into round down
        i i'm i'd i'll i've you you'd you'll you've he he's she she's it it's its we we're we've we'd we'll they they're
        me him her us them my your his our their this these those who whose what which there there's
        is am are was were be been do does did has have had can could will would shall should may might must
        not no
        """
    );

    private static readonly HashSet<string> Prefixes = Words("a be de re to con dis ex per pre pro sur");

    /// <summary>One stress for every note, bar by bar in written order.</summary>
    /// <param name="tune">Back on the beat.</param>
    public static Stress[] Of(Tune tune)
    {
        var notes = tune.Bars.SelectMany((bar, i) => bar.Notes.Select(n => (Bar: i, Note: n))).ToList();
        var stresses = new Stress[notes.Count];
        var word = new List<(int Note, string Text)>();
        for (var i = 0; i < notes.Count; i++)
        {
            var (bar, note) = notes[i];
            if (note.Lyrics.FirstOrDefault(l => l.Verse == 1) is not { } lyric)
            {
                continue;
            }
            word.Add((i, Bare(lyric.Text)));
            if (lyric.HyphenAfter)
            {
                continue;
            }
            var onBeat = (note.At + BarSeams.Lead(tune, bar)).IsMultipleOf(tune.Bars[bar].Metre.Beat);
            var strong = StrongIn(word, onBeat);
            for (var s = 0; s < word.Count; s++)
            {
                stresses[word[s].Note] = s == strong ? Stress.Strong : Stress.Weak;
            }
            word.Clear();
        }
        return stresses;
    }

    // Index of a word's stressed syllable; −1: none.
    private static int StrongIn(List<(int Note, string Text)> word, bool onBeat) =>
        word.Count == 1 ? (onBeat && !Small.Contains(word[0].Text) ? 0 : -1)
        : Prefixes.Contains(word[0].Text) ? 1
        : 0;

    private static string Bare(string syllable) =>
        string.Concat(syllable.ToLowerInvariant().Replace('’', '\'').Where(c => char.IsLetter(c) || c == '\''))
            .Trim('\'');

    private static HashSet<string> Words(string list) =>
        [.. list.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)];
}
