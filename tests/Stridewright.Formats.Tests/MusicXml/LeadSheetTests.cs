using System.Xml.Linq;
using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>A tune written as a lead sheet. Source: the schema of MusicXML 4.0, and our own reader for the round trip.</summary>
public sealed class LeadSheetTests
{
    [Fact]
    public void Every_tune_of_the_corpus_is_written_valid_and_read_back_the_same()
    {
        Corpus.PathOf("standards/musicxml.xsd");
        var count = 0;
        foreach (var (name, tune) in CorpusTunes())
        {
            AssertRoundTrip(name, tune);
            count++;
        }
        Assert.True(count >= 150);
    }

    [Fact]
    public void Every_sample_is_written_valid_and_read_back_the_same() =>
        Assert.All(
            Directory.EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*.abc"),
            file => Assert.All(Abc(File.ReadAllText(file)), tune => AssertRoundTrip(file, tune))
        );

    [Fact]
    public void A_lead_sheet_has_one_staff_with_symbols_words_sections_and_repeats()
    {
        var tune = Abc(
            """
            X:1
            T:Quay Song
            C:Anon.
            M:4/4
            L:1/8
            Q:1/4=96
            K:G
            P:A
            d2|:"G"g4 f2(3efg|"D/F#"d6 z2:|
            w:The lan-terns sway_ on sea
            P:B
            "Em7"{f}e8-|"Cadd9"e4 c4|]
            """
        )[0];
        var sheet = XDocument.Load(new MemoryStream(Bytes(tune)));
        Assert.Equal("1", sheet.Descendants("staves").Single().Value);
        Assert.Equal(["A", "B"], sheet.Descendants("rehearsal").Select(r => r.Value));
        Assert.Equal(["The", "lan", "terns", "sway", "on", "sea"], sheet.Descendants("text").Select(t => t.Value));
        Assert.Equal(
            ["single", "begin", "end", "single", "single", "single"],
            sheet.Descendants("syllabic").Select(t => t.Value)
        );
        Assert.Single(sheet.Descendants("extend"));
        Assert.Equal(4, sheet.Descendants("harmony").Count());
        Assert.Equal(["forward", "backward"], sheet.Descendants("repeat").Select(r => r.Attribute("direction")!.Value));
        Assert.Equal("96", sheet.Descendants("per-minute").Single().Value);
        Assert.DoesNotContain(sheet.Descendants("backup"), _ => true);
        AssertRoundTrip("Quay Song", tune);
    }

    private static void AssertRoundTrip(string name, Tune tune)
    {
        var bytes = Bytes(tune);
        var faults = MusicXmlSchema.Faults(new MemoryStream(bytes));
        Assert.True(faults.Count == 0, name + ": " + string.Join('\n', faults));
        var reading = MusicXmlReader.ReadTune(new MemoryStream(bytes));
        Assert.True(reading.Value is not null, name);
        Assert.Equal(Text(tune with { SectionOrder = [] }), Text(reading.Value));
    }

    // Everything of a tune, ties that split one length in several values joined.
    private static string Text(Tune tune)
    {
        var lines = new List<string> { $"{tune.Title} / {tune.Composer} / {tune.QuartersPerMinute:0.##}" };
        foreach (var bar in tune.Bars)
        {
            var notes = new List<TuneNote>();
            foreach (var note in bar.Notes)
            {
                if (
                    notes.Count > 0
                    && notes[^1] is { TiedToNext: true } last
                    && last.At + last.Length == note.At
                    && last.Pitch == note.Pitch
                    && note is { Graces.Count: 0, Lyrics.Count: 0 }
                )
                {
                    notes[^1] = last with { Length = last.Length + note.Length, TiedToNext = note.TiedToNext };
                }
                else
                {
                    notes.Add(note);
                }
            }
            lines.Add(
                $"{bar.Number} {bar.Metre} {bar.Metre.Sign} {bar.Key} {bar.Length} {bar.Section} {Marks(bar.Marks)}"
                    + $" {bar.Chords} {string.Join(' ', notes.Select(n => n.ToString()))}"
            );
        }
        return string.Join('\n', lines);
    }

    // One sign stands at a bar line: a repeat's, else a final, else a double one.
    private static BarMarks Marks(BarMarks marks) =>
        marks with
        {
            RepeatEnd = marks.RepeatEnd < 2 ? 0 : marks.RepeatEnd,
            FinalBarAfter = marks.FinalBarAfter && marks.RepeatEnd < 2,
            DoubleBarAfter = marks.DoubleBarAfter && !marks.FinalBarAfter && marks.RepeatEnd < 2,
        };

    private static byte[] Bytes(Tune tune)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(tune, stream);
        return stream.ToArray();
    }

    private static ValueList<Tune> Abc(string text) => AbcReader.Read(new StringReader(text)).Value ?? [];

    private static IEnumerable<(string Name, Tune Tune)> CorpusTunes()
    {
        foreach (var path in Corpus.Files("corpus/abc", ".abc"))
        {
            foreach (var tune in Abc(File.ReadAllText(path)))
            {
                yield return (path, tune);
            }
        }
        foreach (var path in Corpus.Files("corpus/musicxml/valid", ".mxl", ".musicxml"))
        {
            using var file = File.OpenRead(path);
            if (MusicXmlReader.ReadTune(file).Value is { } tune)
            {
                yield return (path, tune);
            }
        }
    }
}
