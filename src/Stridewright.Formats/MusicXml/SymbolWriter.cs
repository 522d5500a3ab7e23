using System.Globalization;
using System.Text.RegularExpressions;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Writes chord symbols, tempi, words and dynamics.</summary>
/// <param name="lowestStaff">The one that pedal signs and the numbers of footnotes stand under.</param>
internal sealed partial class SymbolWriter(XmlOut xml, Divisions divisions, int lowestStaff)
{
    // In points, of a staff of 7 mm.
    private const string FootnoteSize = "8";

    /// <summary>Writes what stands within an event of the first voice before it, with an offset where it is not at its
    /// start.</summary>
    public void Write(ScoreBar bar, ScoreEvent e, bool last)
    {
        bool Within(ScoreTime at) => at >= e.At && (last || at < e.At + e.Length);
        foreach (var direction in bar.Directions.Where(d => Within(d.At)))
        {
            WriteDirection(direction, direction.At - e.At);
        }
        foreach (var chord in bar.Chords.Where(c => Within(c.At)))
        {
            WriteHarmony(chord.Chord, chord.At - e.At);
        }
    }

    private void WriteOffset(ScoreTime offset)
    {
        if (!offset.IsZero)
        {
            xml.Number("offset", divisions.Of(offset));
        }
    }

    private void WriteHarmony(ChordSymbol chord, ScoreTime offset)
    {
        using (xml.Open("harmony", ("placement", "above")))
        {
            if (chord.IsNoChord)
            {
                using (xml.Open("root"))
                {
                    xml.Text("root-step", "C", ("text", ""));
                }
                xml.Text("kind", "none", ("text", "N.C."));
            }
            else
            {
                WriteTone("root", chord.Root);
                xml.Text("kind", WrittenNames.KindOf(chord.Kind), ("text", KindTextOf(chord)));
                if (chord.Bass is { } bass)
                {
                    WriteTone("bass", bass);
                }
                foreach (var degree in chord.Degrees)
                {
                    WriteDegree(degree);
                }
            }
            WriteOffset(offset);
            xml.Number("staff", 1);
        }
    }

    private void WriteTone(string name, Tone tone)
    {
        using (xml.Open(name))
        {
            xml.Text(name + "-step", tone.Step.ToString());
            if (tone.Alter != 0)
            {
                xml.Number(name + "-alter", tone.Alter);
            }
        }
    }

    private void WriteDegree(ChordDegree degree)
    {
        using (xml.Open("degree", ("print-object", "no")))
        {
            xml.Number("degree-value", degree.Value);
            xml.Number("degree-alter", degree.Alter);
            xml.Text("degree-type", degree.Change.ToString().ToLowerInvariant());
        }
    }

    /// <summary>What is printed after the root, degrees included, with flats and sharps as signs. Null lets the reader
    /// choose.</summary>
    private static string? KindTextOf(ChordSymbol chord)
    {
        var text = ChordText.Format(chord with { Root = new Tone(Step.C, 0), Bass = null });
        text = Altered().Replace(text.StartsWith('C') ? text[1..] : text, m => m.Value == "b" ? "♭" : "♯");
        return text.Length > 0 || chord.Kind == ChordKind.Major ? text : null;
    }

    [GeneratedRegex("[b#](?=[0-9])")]
    private static partial Regex Altered();

    private void WriteDirection(Direction direction, ScoreTime offset)
    {
        var tempo = direction.QuartersPerMinute is { } quarters && quarters > 0 && double.IsFinite(quarters);
        if (!string.IsNullOrWhiteSpace(direction.Words) || tempo)
        {
            using (xml.Open("direction", ("placement", "above"), ("directive", "yes")))
            {
                WriteWordsAndTempo(direction, tempo);
                WriteOffset(offset);
                xml.Number("staff", 1);
                WriteSound(direction, tempo);
            }
        }
        else if (direction.Swing is not null)
        {
            WriteSound(direction, tempo);
        }
        if (!string.IsNullOrWhiteSpace(direction.Section))
        {
            WriteSection(direction.Section, offset);
        }
        if (direction.Dynamic is { Length: > 0 } dynamic)
        {
            WriteDynamic(dynamic, offset);
        }
        if (direction.Pedal is { } down)
        {
            WritePedal(down, offset);
        }
        if (direction.Footnote is { Length: > 0 } numbers)
        {
            WriteFootnote(numbers, offset);
        }
    }

    private void WriteFootnote(string numbers, ScoreTime offset)
    {
        using (xml.Open("direction", ("placement", "below")))
        {
            using (xml.Open("direction-type"))
            {
                xml.Text("words", numbers, ("font-size", FootnoteSize));
            }
            WriteOffset(offset);
            xml.Number("staff", lowestStaff);
        }
    }

    private void WriteWordsAndTempo(Direction direction, bool tempo)
    {
        if (direction.Words is { } words && !string.IsNullOrWhiteSpace(words))
        {
            using (xml.Open("direction-type"))
            {
                // The metronome mark follows on the same line: a no-break space keeps them apart.
                xml.Text("words", tempo ? words + "\u00A0" : words, ("font-weight", "bold"));
            }
        }
        if (tempo)
        {
            using (xml.Open("direction-type"))
            using (xml.Open("metronome", ("parentheses", "no")))
            {
                xml.Text("beat-unit", WrittenNames.TypeOf(direction.BeatUnit));
                for (var i = 0; i < direction.BeatUnit.Dots; i++)
                {
                    xml.Empty("beat-unit-dot");
                }
                xml.Text("per-minute", direction.BeatsPerMinute!.Value.ToString("0.##", CultureInfo.InvariantCulture));
            }
        }
    }

    private void WriteSound(Direction direction, bool tempo)
    {
        var perMinute = tempo
            ? direction.QuartersPerMinute!.Value.ToString("0.###", CultureInfo.InvariantCulture)
            : null;
        if (perMinute is null && direction.Swing is null)
        {
            return;
        }
        using (xml.Open("sound", ("tempo", perMinute)))
        {
            if (direction.Swing is var (first, second) && first > 0 && second > 0)
            {
                using (xml.Open("swing"))
                {
                    if (first == second)
                    {
                        xml.Empty("straight");
                    }
                    else
                    {
                        xml.Number("first", first);
                        xml.Number("second", second);
                        xml.Text("swing-type", "eighth");
                    }
                }
            }
        }
    }

    private void WriteSection(string section, ScoreTime offset)
    {
        using (xml.Open("direction", ("placement", "above")))
        {
            using (xml.Open("direction-type"))
            {
                xml.Text("rehearsal", section);
            }
            WriteOffset(offset);
            xml.Number("staff", 1);
        }
    }

    private void WriteDynamic(string dynamic, ScoreTime offset)
    {
        using (xml.Open("direction", ("placement", "below")))
        {
            using (xml.Open("direction-type"))
            using (xml.Open("dynamics"))
            {
                if (WrittenNames.IsDynamic(dynamic))
                {
                    xml.Empty(dynamic);
                }
                else
                {
                    xml.Text("other-dynamics", dynamic);
                }
            }
            WriteOffset(offset);
            xml.Number("staff", 1);
        }
    }

    // Under the lower staff of two.
    private void WritePedal(bool down, ScoreTime offset)
    {
        using (xml.Open("direction", ("placement", "below")))
        {
            using (xml.Open("direction-type"))
            {
                xml.Empty("pedal", ("type", down ? "start" : "stop"), ("line", "no"), ("sign", "yes"));
            }
            WriteOffset(offset);
            xml.Number("staff", lowestStaff);
        }
    }
}
