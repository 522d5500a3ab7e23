using System.Globalization;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Writes a tune as ABC 2.1 (December 2011), which <see cref="AbcReader"/> reads back as the same tune. What ABC cannot
/// say stands in directives that begin with <c>%%stridewright-</c>; other programs pass over them and read the rest.
/// A tune is read back in full up to the reader's limits: 2000 bars, 256 notes and rests a bar, 64 grace notes,
/// four accidentals to a letter, a chord symbol of 64 characters, 20 lines of words, verses to 99, repeats and endings to
/// 32, names of parts to 200 characters, a tempo of 5 to 1000, no syllable without text, and at least one note or chord
/// symbol.
/// </summary>
public static class AbcWriter
{
    private const int BarsPerLine = 4;
    private static readonly ScoreTime Unit = ScoreTime.Eighth;

    /// <summary>The tune as lines that each end in <c>\n</c>, without a blank one among them.</summary>
    public static string Write(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var text = new StringBuilder();
        var words = AbcWords.Of(tune);
        WriteHeader(text, tune, words);
        new Body(text, tune, words).Write();
        return text.ToString();
    }

    private static void WriteHeader(StringBuilder text, Tune tune, AbcWords words)
    {
        var first = tune.Bars[0];
        var isPlainOrder = tune.SectionOrder.All(s => s is [>= 'A' and <= 'Z'] or [>= 'a' and <= 'z']);
        Line(text, "X:1");
        Line(text, "T:" + AbcText.Escape(tune.Title));
        if (tune.Composer is { } composer)
        {
            Line(text, "C:" + AbcText.Escape(composer));
        }
        if (tune.SectionOrder.Count > 0 && isPlainOrder)
        {
            Line(text, "P:" + string.Concat(tune.SectionOrder));
        }
        Line(text, "M:" + MetreText(first.Metre));
        Line(text, "L:" + Unit);
        if (tune.QuartersPerMinute is { } tempo)
        {
            Line(text, "Q:" + Tempo(tempo, first.Metre));
        }
        foreach (var directive in Directives(tune, words, isPlainOrder))
        {
            Line(text, "%%" + directive);
        }
        Line(text, "K:" + KeyText(first.Key));
    }

    private static IEnumerable<string> Directives(Tune tune, AbcWords words, bool isPlainOrder)
    {
        var read = AbcBars.Of(tune).Build(metreIsMissing: false);
        if (!tune.Bars.Select(b => b.Number).SequenceEqual(read.Select(b => b.Number)))
        {
            yield return $"{AbcDirectives.BarNumbers} {AbcDirectives.Ranges(tune.Bars.Select(b => b.Number).ToList())}";
        }
        if (!tune.Bars.Select(b => b.Length).SequenceEqual(read.Select(b => b.Length)))
        {
            yield return AbcDirectives.ShortBars;
        }
        if (tune.Bars.Any(b => Math.Abs(b.Key.Signature) > AbcKey.MostAlterations))
        {
            yield return AbcDirectives.FarKeys;
        }
        if (!isPlainOrder)
        {
            yield return $"{AbcDirectives.PartOrder} {string.Join(' ', tune.SectionOrder.Select(AbcDirectives.Word))}";
        }
        if (words.VerseNumbers is { } verses)
        {
            yield return $"{AbcDirectives.Verses} {string.Join(' ', verses)}";
        }
    }

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');

    private static string MetreText(Metre metre) =>
        metre.Sign switch
        {
            MetreSign.Common => "C",
            MetreSign.Cut => "C|",
            _ => metre.ToString(),
        };

    // In dotted quarters where they are the beat and no digit is lost by it.
    private static string Tempo(double quarters, Metre metre)
    {
        var beats = Math.Round(quarters / 1.5, 6);
        return metre is { IsCompound: true, Unit: 8 } && beats * 1.5 == quarters
            ? "3/8=" + Number(beats)
            : "1/4=" + Number(quarters);
        static string Number(double number) => number.ToString(CultureInfo.InvariantCulture);
    }

    private static string KeyText(Key key) =>
        key.Tonic
        + key.Mode switch
        {
            Mode.Major => "",
            Mode.Minor => "m",
            var mode => mode.ToString()[..3].ToLowerInvariant(),
        };

    /// <summary>The music: lines of four bars, each part from a line of its own.</summary>
    private sealed class Body(StringBuilder text, Tune tune, AbcWords words)
    {
        private readonly AbcBarText _bars = new(Unit);
        private readonly AbcBarLines _lines = new();
        private readonly StringBuilder _line = new();
        private readonly List<TuneNote> _notes = []; // of the line
        private int _barsInLine;

        public void Write()
        {
            for (var i = 0; i < tune.Bars.Count; i++)
            {
                var next = i + 1 < tune.Bars.Count ? tune.Bars[i + 1] : null;
                Begin(tune.Bars[i], i > 0 ? tune.Bars[i - 1] : null);
                foreach (var sign in _bars.Of(tune.Bars[i], TiedInto(i)))
                {
                    Add(sign);
                }
                var ends = next is null or { Section: not null } || ++_barsInLine == BarsPerLine;
                Put(_lines.Between(tune.Bars[i].Marks, ends ? null : next!.Marks));
                if (ends)
                {
                    EndLine();
                }
            }
        }

        private Pitch? TiedInto(int bar) =>
            bar > 0
            && tune.Bars[bar - 1] is { Notes: [.., { TiedToNext: true } last] } before
            && last.At + last.Length == before.Length
                ? last.Pitch
                : null;

        private void Begin(TuneBar bar, TuneBar? before)
        {
            if (bar.Section is { } section)
            {
                Line(text, "P:" + AbcText.Escape(section));
                _lines.BeginPart();
            }
            if (_line.Length == 0)
            {
                Put(_lines.AtLineStart(bar.Marks));
            }
            Put(_lines.Ending(bar.Marks));
            if (before is not null && bar.Metre != before.Metre)
            {
                Put($"[M:{MetreText(bar.Metre)}]");
            }
            if (before is not null && bar.Key != before.Key)
            {
                Put($"[K:{KeyText(bar.Key)}]");
            }
            Put(" ");
        }

        private void Add(AbcBarText.Sign sign)
        {
            if (sign.Note is { } note)
            {
                if (_notes.Count > 0 && AbcWords.MustPart(_notes[^1], note))
                {
                    EndLine();
                }
                _notes.Add(note);
            }
            if (sign.BeginsBeat)
            {
                Put(" ");
            }
            _line.Append(sign.Text);
        }

        // With one space before it.
        private void Put(string sign)
        {
            if (sign.Length > 0 && _line.Length > 0 && _line[^1] != ' ')
            {
                _line.Append(' ');
            }
            _line.Append(sign.Trim());
        }

        private void EndLine()
        {
            Line(text, _line.ToString());
            foreach (var verse in words.Under(_notes))
            {
                Line(text, verse);
            }
            _line.Clear();
            _notes.Clear();
            _barsInLine = 0;
        }
    }
}
