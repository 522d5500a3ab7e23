using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Writes the words under lines of music (ABC 2.1, 5.1). Each verse has its line; a tune whose notes have a verse twice
/// has two lines for it.
/// </summary>
internal sealed class AbcWords
{
    private const string Signs = "-_*|~";

    private AbcWords(List<(int Verse, int Nth)> lines) => _lines = lines;

    private readonly List<(int Verse, int Nth)> _lines;

    public static AbcWords Of(Tune tune) =>
        new(
            tune.Bars.SelectMany(b => b.Notes)
                .SelectMany(n => Numbered(n.Lyrics))
                .Select(l => l.Line)
                .Distinct()
                .Order()
                .ToList()
        );

    /// <summary>Numbers of the verses line by line; null where they count from 1.</summary>
    public IReadOnlyList<int>? VerseNumbers =>
        _lines.Index().All(l => l.Item == (l.Index + 1, 0)) ? null : _lines.ConvertAll(l => l.Verse);

    /// <summary>A syllable held over the next note leaves none for it: such notes need lines of their own.</summary>
    public static bool MustPart(TuneNote note, TuneNote next) =>
        Numbered(note.Lyrics).Any(l => l.Lyric.Extends && Numbered(next.Lyrics).Any(n => n.Line == l.Line));

    /// <summary>The w: lines under a line of music; none where it has no words.</summary>
    public IEnumerable<string> Under(IReadOnlyList<TuneNote> notes)
    {
        var texts = _lines.ConvertAll(line => Text(notes, line));
        var last = texts.FindLastIndex(t => t.Length > 0);
        return texts.Take(last + 1).Select(t => "w:" + (t.Length > 0 ? t : "*"));
    }

    private static IEnumerable<((int Verse, int Nth) Line, Lyric Lyric)> Numbered(ValueList<Lyric> lyrics) =>
        lyrics.Select((l, i) => ((l.Verse, lyrics.Take(i).Count(before => before.Verse == l.Verse)), l));

    private static string Text(IReadOnlyList<TuneNote> notes, (int Verse, int Nth) line)
    {
        var text = new StringBuilder();
        var parted = true; // what comes next is parted from what stands before
        var skipped = 0; // notes without a syllable since
        var holding = false;
        foreach (var note in notes)
        {
            var lyric = Numbered(note.Lyrics).Where(l => l.Line == line).Select(l => l.Lyric).FirstOrDefault();
            if (lyric is null)
            {
                skipped++;
                continue;
            }
            Skip();
            text.Append(parted ? "" : " ").Append(Syllable(lyric.Text)).Append(lyric.HyphenAfter ? "-" : "");
            parted = lyric.HyphenAfter;
            holding = lyric.Extends;
        }
        if (holding)
        {
            skipped = Math.Max(1, skipped);
            Skip();
        }
        return text.ToString();

        void Skip()
        {
            if (skipped > 0)
            {
                text.Append(new string(holding ? '_' : '*', skipped));
                parted = false;
            }
            skipped = 0;
        }
    }

    private static string Syllable(string text)
    {
        var written = new StringBuilder();
        foreach (var c in AbcText.Escape(text))
        {
            if (Signs.Contains(c, StringComparison.Ordinal))
            {
                written.Append('\\').Append(c);
            }
            else
            {
                written.Append(c == ' ' ? '~' : c);
            }
        }
        return written.ToString();
    }
}
