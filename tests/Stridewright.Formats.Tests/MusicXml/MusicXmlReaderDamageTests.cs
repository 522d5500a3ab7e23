using System.IO.Compression;
using System.Text;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Containers, encodings, and files that are broken or hostile.</summary>
public sealed class MusicXmlReaderDamageTests
{
    private const string ContainerName = "META-INF/container.xml";

    private static readonly string Good = Part(FourFour + Note("C5", 16));

    private static string Container(string path) =>
        $"<container><rootfiles><rootfile full-path='{path}'/></rootfiles></container>";

    [Fact]
    public void A_container_names_the_score()
    {
        var other = Good.Replace("<octave>5", "<octave>4", StringComparison.Ordinal);
        var tune = MusicXmlReader.ReadTune(
            Zip((ContainerName, Container("b/two.musicxml")), ("one.xml", other), ("b/two.musicxml", Good))
        );
        Assert.Equal(["C5@0+1"], Line(tune));
        Assert.Empty(tune.Diagnostics);
    }

    [Theory]
    [InlineData("<container><rootfiles><rootfile full-path='Who's there.xml'/></rootfiles></container>")]
    [InlineData("<container><rootfiles><rootfile full-path='missing.xml'/></rootfiles></container>")]
    [InlineData("<container>")]
    [InlineData(null)]
    public void A_broken_container_gives_way_to_the_first_score(string? container)
    {
        var score = ("Who's there.xml", Good);
        var tune = MusicXmlReader.ReadTune(container is null ? Zip(score) : Zip((ContainerName, container), score));
        Assert.Equal(["C5@0+1"], Line(tune));
        Assert.Contains("container.xml", Only(tune.Diagnostics, Severity.Note).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_in_a_compressed_file_name_its_entry()
    {
        var tune = MusicXmlReader.ReadTune(Zip((ContainerName, Container("a.xml")), ("a.xml", "<song/>")));
        Assert.Equal("a.xml", Only(tune.Diagnostics, Severity.Error).Place.Entry);
    }

    [Fact]
    public void Zip_archives_without_score_or_cut_short_are_refused()
    {
        Refused(Zip(("notes.txt", "hello")), "no .xml or .musicxml");
        var bytes = Zip((ContainerName, Container("a.xml")), ("a.xml", Good)).ToArray();
        Refused(new MemoryStream(bytes[..(bytes.Length / 2)]), "damaged");
    }

    [Fact]
    public void Zip_bombs_are_refused()
    {
        Refused(Zip(("a.xml", "<score-partwise>" + new string(' ', 60_000_000))), "200 times");
        var many = Enumerable.Range(0, 2000).Select(i => ($"{i}.xml", "")).ToArray();
        Refused(Zip(many), "1000 files");
    }

    [Fact]
    public void Encodings_are_recognised()
    {
        var title = "<work><work-title>Été</work-title></work>";
        var part = $"<part id='P1'><measure number='1'>{FourFour}{Note("C5", 16)}</measure></part>";
        var xml = Score(part, title);
        byte[] With(Encoding encoding, string? name) =>
            [
                .. encoding.GetPreamble(),
                .. encoding.GetBytes((name is null ? "" : $"<?xml version='1.0' encoding='{name}'?>") + xml),
            ];
        byte[][] files =
        [
            With(new UTF8Encoding(false), null),
            With(new UTF8Encoding(true), "UTF-8"),
            With(Encoding.Unicode, "UTF-16"),
            With(Encoding.BigEndianUnicode, "UTF-16"),
            With(Encoding.Latin1, "ISO-8859-1"),
        ];
        Assert.All(files, f => Assert.Equal("Été", MusicXmlReader.ReadTune(new MemoryStream(f)).Value!.Title));
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("hello", "not well-formed")]
    [InlineData("<song/>", "<song>")]
    [InlineData(
        "<score-partwise><part id='P1'><measure number='7'><note></measure></part></score-partwise>",
        "not well-formed"
    )]
    [InlineData("<score-partwise><part id='P1'><measure number='7'><note>", "cut off")]
    [InlineData("<score-partwise><part id='P1'><measure number='7'>&tune;</measure></part></score-partwise>", "&tune;")]
    [InlineData("<score-partwise/>", "neither notes nor chord symbols")]
    public void What_cannot_be_read_is_refused_with_a_reason(string xml, string reason)
    {
        Refused(Bytes(xml), reason);
        var score = MusicXmlReader.ReadScore(Bytes(xml));
        Assert.Null(score.Value);
        Only(score.Diagnostics, Severity.Error);
    }

    [Fact]
    public void A_fault_of_the_text_has_line_column_and_bar()
    {
        var tune = Tune("<score-partwise>\n<part id='P1'>\n<measure number='7'>\n  <note></rest></note></measure>");
        Assert.Equal(new Place(4, 11, "7"), Only(tune.Diagnostics, Severity.Error).Place);
    }

    [Theory]
    [InlineData("<!DOCTYPE score-partwise [<!ENTITY a 'x'><!ENTITY b '&a;&a;'>]>")]
    [InlineData("<!DOCTYPE score-partwise SYSTEM 'file:///etc/hostname' [<!ENTITY b SYSTEM 'file:///etc/hostname'>]>")]
    public void Entities_of_a_file_are_never_expanded(string type)
    {
        Refused(Bytes(type + Good.Replace("One", "&b;", StringComparison.Ordinal)), "&b;");
        Assert.NotNull(MusicXmlReader.ReadTune(Bytes(type + Good)).Value);
    }

    [Theory]
    [InlineData("elements", "<a/>")]
    [InlineData("attributes", "<a id='' number='' type='' times='' tempo=''/>")]
    public void Files_larger_than_any_score_are_refused_within_memory(string what, string piece)
    {
        var text = new StringBuilder("<score-partwise>");
        while (text.Length < 15_000_000)
        {
            text.Append(piece);
        }
        using var bytes = Bytes(text + "</score-partwise>");
        // All that passes through, garbage included, on this thread alone: other tests run beside.
        var before = GC.GetAllocatedBytesForCurrentThread();
        Refused(bytes, "larger than");
        var taken = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.True(taken < 200_000_000, $"{what}: {taken} bytes");
    }

    [Fact]
    public void Deep_nesting_and_long_files_are_refused()
    {
        Refused(Bytes("<score-partwise>" + string.Concat(Enumerable.Repeat("<a>", 100_000))), "larger than");
        Refused(new MemoryStream(new byte[17 * 1024 * 1024]), "larger than");
    }

    [Theory]
    [InlineData("<divisions>4</divisions>", "<divisions>0</divisions>")]
    [InlineData("<divisions>4</divisions>", "<divisions>1e30</divisions>")]
    [InlineData("<fifths>0</fifths>", "<fifths>99</fifths>")]
    [InlineData("<beats>4</beats>", "<beats>0</beats>")]
    [InlineData("<beat-type>4</beat-type>", "<beat-type>3</beat-type>")]
    [InlineData("<octave>6</octave>", "<octave>99</octave>")]
    [InlineData("<octave>6</octave>", "<octave>x</octave>")]
    [InlineData("<alter>1</alter>", "<alter>77</alter>")]
    [InlineData("<duration>3</duration>", "<duration>1e18</duration>")]
    [InlineData("<duration>3</duration>", "<duration>-3</duration>")]
    [InlineData("<duration>3</duration>", "")]
    [InlineData("<backup><duration>1</duration></backup>", "<backup><duration>999</duration></backup>")]
    [InlineData("<forward><duration>1</duration></forward>", "<forward><duration>1e9</duration></forward>")]
    [InlineData("<chromatic>0</chromatic>", "<chromatic>5000</chromatic>")]
    [InlineData("tempo='100'", "tempo='-1e99'")]
    [InlineData("times='2'", "times='999999'")]
    [InlineData("number='1' type='start'", "number='one' type='start'")]
    public void An_absurd_number_costs_a_warning_with_its_place_and_the_rest_is_kept(string good, string bad)
    {
        var whole = Part(
            FourFour
                + "\n<attributes><transpose><chromatic>0</chromatic></transpose></attributes><sound tempo='100'/>"
                + "<barline location='left'><ending number='1' type='start'/></barline>\n"
                + Note("C5", 4)
                + Note("F#6", 4)
                + Note("E5", 3)
                + "<forward><duration>1</duration></forward><backup><duration>1</duration></backup>"
                + Note("G4", 5)
                + "<barline location='right'><ending number='1' type='stop'/><repeat direction='backward' times='2'/></barline>"
        );
        var damaged = whole.Replace(good, bad, StringComparison.Ordinal);
        Assert.NotEqual(whole, damaged);
        Assert.DoesNotContain(Tune(whole).Diagnostics, d => d.Severity != Severity.Note);
        var tune = Tune(damaged);
        Assert.Contains(
            tune.Diagnostics,
            d => d is { Severity: Severity.Warning, Place: { Line: not null, Column: not null, Bar: "1" } }
        );
        Assert.Equal("C5", tune.Value!.Bars[0].Notes[0].Pitch.ToString());
    }

    [Fact]
    public void Findings_are_bounded()
    {
        var bad = string.Concat(
            Enumerable.Repeat(Note("C5", 4).Replace("<octave>5", "<octave>99", StringComparison.Ordinal), 5000)
        );
        var tune = Tune(Part(FourFour + Note("C5", 4), bad));
        Assert.InRange(tune.Diagnostics.Count, 100, 202);
        Assert.Contains("more findings", tune.Diagnostics[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bar_of_very_many_notes_and_symbols_does_not_hang()
    {
        var notes = string.Concat(Enumerable.Repeat(Chord("C", "major") + Note("C5", 1), 30_000));
        var fine = PianoFourFour.Replace("<divisions>4<", "<divisions>4096<", StringComparison.Ordinal);
        var xml = Part(fine + notes + "<backup><duration>9</duration></backup>" + Note("C3", 1, "<staff>2</staff>"));
        Assert.NotNull(Hang.Never(() => Tune(xml)).Value);
        Assert.NotNull(Hang.Never(() => ScoreOf(xml)).Value);
    }

    private static void Refused(Stream file, string reason)
    {
        var tune = MusicXmlReader.ReadTune(file);
        Assert.Null(tune.Value);
        Assert.Contains(reason, Only(tune.Diagnostics, Severity.Error).Message, StringComparison.Ordinal);
    }

    private static MemoryStream Zip(params (string Name, string Text)[] entries)
    {
        var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in entries)
            {
                using var writer = new StreamWriter(archive.CreateEntry(name).Open());
                writer.Write(text);
            }
        }
        bytes.Position = 0;
        return bytes;
    }
}
