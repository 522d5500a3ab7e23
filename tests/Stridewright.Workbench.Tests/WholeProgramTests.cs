using NAudio.Midi;
using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Sound;
using Stridewright.Testing;
using UglyToad.PdfPig;

namespace Stridewright.Workbench.Tests;

/// <summary>
/// What the project writes, held against other programs' reading of it: the engraving library's time map of our MusicXML,
/// NAudio's reading of our MIDI, the MusicXML schema, and our own readers.
/// </summary>
public sealed class WholeProgramTests(WholeProgramTests.Desk desk) : IClassFixture<WholeProgramTests.Desk>
{
    public static TheoryData<string, int> Samples =>
        new(
            from file in Directory
                .EnumerateFiles(Root, "*.abc")
                .Concat(Directory.EnumerateFiles(Path.Combine(Root, "musicxml")))
                .Order(StringComparer.Ordinal)
            from level in (int[])[1, 4, 6]
            select new TheoryDataRow<string, int>(Path.GetRelativePath(Root, file), level)
        );

    private static string Root => Path.Combine(Corpus.CheckoutRoot, "samples");

    [Theory]
    [MemberData(nameof(Samples))]
    public void Midi_onsets_are_those_of_the_engravers_time_map_note_by_note(string sample, int level)
    {
        // The engraver starts a note after its crushed notes, we strike those before it, and each rolls chords in
        // its own time: without either here.
        var score = Plain(Arrange(sample, level));
        var engraved = desk.Engraver.Engrave(
            new MemoryStream(Xml(score)),
            PageSetup.Default with
            {
                Timed = true,
            },
            TestContext.Current.CancellationToken
        );
        Assert.Empty(engraved.Diagnostics);
        var theirs = engraved
            .Value!.TimeMap.SelectMany(
                e => e.Notes,
                (e, id) => (At: Math.Round(e.Quarters, 3), Id: id.Split("-rend")[0])
            )
            .Where(n => !IsTiedOn(score, n.Id))
            .Order()
            .ToList();
        var performance = Performer.Perform(score);
        double Quarters(long tick) => Math.Round((double)tick / performance.TicksPerQuarter, 3);
        Assert.Equal(theirs, performance.Strokes.Select(s => (Quarters(s.Tick), s.Id!)).Order());
        Assert.Equal(theirs.Select(n => n.At).Order(), Read(performance).Select(n => Quarters(n.AbsoluteTime)).Order());
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Another_midi_reader_reads_the_performance_back(string sample, int level)
    {
        var performance = Performer.Perform(Arrange(sample, level));
        var theirs = Read(performance)
            .Select(n => (n.AbsoluteTime, n.NoteNumber, (long)n.NoteLength, n.Velocity))
            .Order();
        Assert.Equal(performance.Strokes.Select(s => (s.Tick, s.Key, s.Length, s.Velocity)).Order(), theirs);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_score_is_valid_and_reads_back_as_it_was(string sample, int level)
    {
        var score = Arrange(sample, level);
        var xml = Xml(score);
        Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(xml)));
        var read = MusicXmlReader.ReadScore(new MemoryStream(xml));
        Assert.DoesNotContain(read.Diagnostics, d => d.Severity != Severity.Note);
        Assert.Equal(
            Timeline.Of(score).Select(s => (s.Hand, s.Key, s.Start, s.End)).Order(),
            Timeline.Of(read.Value!).Select(s => (s.Hand, s.Key, s.Start, s.End)).Order()
        );
        Assert.Equal(
            score.Bars.Select(b => (b.Number, b.Metre.ToString(), b.Key.Signature)),
            read.Value!.Bars.Select(b => (b.Number, b.Metre.ToString(), b.Key.Signature))
        );
        Assert.Equal(score.Bars.SelectMany(b => b.Chords), read.Value.Bars.SelectMany(b => b.Chords));
        Assert.True(Judge.Check(read.Value, new PlayerHands()).IsPlayable);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void The_pdf_has_pages_and_every_chord_name_in_reading_order(string sample, int level)
    {
        var score = Arrange(sample, level);
        var engraved = desk.Engraver.Engrave(
            new MemoryStream(Xml(score)),
            PageSetup.Default,
            TestContext.Current.CancellationToken
        );
        Assert.Empty(engraved.Diagnostics);
        using var bytes = new MemoryStream();
        PdfWriter.Write(engraved.Value!, bytes);
        using var pdf = PdfDocument.Open(bytes.ToArray());
        Assert.InRange(pdf.NumberOfPages, 1, 1 + score.Bars.Count / 16);
        var printed = string.Concat(pdf.GetPages().Select(p => p.Text));
        var at = 0;
        foreach (var placed in score.Bars.SelectMany(b => b.Chords.OrderBy(c => c.At)))
        {
            var name = ChordText.Format(placed.Chord).Replace('#', '♯').Replace('b', '♭');
            var found = printed.IndexOf(name, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"{name} is not in the PDF after place {at}");
            at = found + name.Length;
        }
        Assert.DoesNotContain("(add", printed, StringComparison.Ordinal);
    }

    // Source: the words as they stand in the sample, read back from the PDF; hyphens and spaces between are the page's.
    [Theory]
    [InlineData("lamps-along-the-quay.abc")]
    [InlineData("seven-lamps-to-home.abc")]
    [InlineData("paper-boats-by-the-steps.abc")]
    public void Words_asked_for_are_on_the_pages_of_the_setting_and_of_the_plain_tune(string sample)
    {
        var tune = TuneOf(sample);
        var setting = Arranger
            .Arrange(tune, new Brief { Lyrics = true }, TestContext.Current.CancellationToken)
            .Arrangement!.Score;
        using var plain = new MemoryStream();
        MusicXmlWriter.Write(Arranger.Plain(tune).Tune, plain);
        foreach (var xml in (byte[][])[Xml(setting), plain.ToArray()])
        {
            var engraved = desk.Engraver.Engrave(
                new MemoryStream(xml),
                PageSetup.Default,
                TestContext.Current.CancellationToken
            );
            Assert.Empty(engraved.Diagnostics);
            using var bytes = new MemoryStream();
            PdfWriter.Write(engraved.Value!, bytes);
            using var pdf = PdfDocument.Open(bytes.ToArray());
            var printed = pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text).ToHashSet();
            var syllables = tune.Bars.SelectMany(b => b.Notes).SelectMany(n => n.Lyrics).Select(l => l.Text).Distinct();
            var missing = syllables.Where(s => !printed.Any(w => w.Contains(s, StringComparison.Ordinal))).ToList();
            Assert.True(missing.Count == 0, string.Join(' ', missing));
        }
    }

    /// <summary>One engraver for all tests here; it takes a moment to start.</summary>
    public sealed class Desk : IDisposable
    {
        public Engraver Engraver { get; } = Engraver.Create();

        public void Dispose() => Engraver.Dispose();
    }

    private static Score Arrange(string sample, int level)
    {
        var brief = new Brief { LeftLevel = level, RightLevel = level };
        return Arranger.Arrange(TuneOf(sample), brief, TestContext.Current.CancellationToken).Arrangement!.Score;
    }

    private static Tune TuneOf(string sample)
    {
        using var file = File.OpenRead(Path.Combine(Root, sample));
        return sample.EndsWith(".abc", StringComparison.Ordinal)
            ? AbcReader.Read(new StreamReader(file)).Value![0]
            : MusicXmlReader.ReadTune(file).Value!;
    }

    private static Score Plain(Score score) =>
        score with
        {
            Bars = score
                .Bars.Select(b =>
                    b with
                    {
                        Voices = b
                            .Voices.Select(v =>
                                v with
                                {
                                    Events = v.Events.Select(e => e with { Graces = [], Rolled = false }).ToValueList(),
                                }
                            )
                            .ToValueList(),
                    }
                )
                .ToValueList(),
        };

    private static bool IsTiedOn(Score score, string id)
    {
        var plain = id.Split("-rend")[0];
        return score
            .Bars.SelectMany(b => b.Voices)
            .SelectMany(v => v.Events)
            .Any(e => e.Notes.Any(n => n.Id == plain && n.TieStop));
    }

    private static byte[] Xml(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }

    private static List<NoteOnEvent> Read(Performance performance)
    {
        using var stream = new MemoryStream();
        MidiWriter.Write(performance, stream);
        stream.Position = 0;
        var file = new MidiFile(stream, strictChecking: true);
        return [.. file.Events.SelectMany(t => t).OfType<NoteOnEvent>().Where(n => n.Velocity > 0)];
    }
}
