using System.Text;
using CsCheck;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Damaged files: whatever is changed in a good one, reading returns, and what it returns keeps the laws.</summary>
public sealed class MusicXmlReaderFuzzTests
{
    private static readonly string Seed = SeedScore();

    // Values that texts and attributes are replaced with: numbers at and over limits, and words of the format.
    private static readonly string[] Values =
    [
        "0",
        "-1",
        "1",
        "2",
        "3",
        "7",
        "13",
        "64",
        "97",
        "9973",
        "1000000",
        "999983",
        "1e18",
        "1e400",
        "0.01",
        "0.5",
        "2147483648",
        "",
        "x",
        "C",
        "start",
        "stop",
        "yes",
        "breve",
        "1024th",
        "3+2",
        "1-99999",
        "none",
    ];

    private static readonly Gen<Func<string, string>> ReplaceValue =
        from at in Gen.Int[0, 10_000]
        from value in Gen.OneOf(Values.Select(Gen.Const).ToArray())
        select (Func<string, string>)(xml => ReplaceNth(xml, at, value));

    private static readonly Gen<Func<string, string>> MoveOrDropLine =
        from at in Gen.Int[0, 10_000]
        from to in Gen.Int[-1, 10_000]
        select (Func<string, string>)(
            xml =>
            {
                var lines = xml.Split('\n').ToList();
                var line = lines[at % lines.Count];
                if (to < 0)
                {
                    lines.RemoveAt(at % lines.Count);
                }
                else
                {
                    lines.Insert(to % lines.Count, line);
                }
                return string.Join('\n', lines);
            }
        );

    private static readonly Gen<Func<string, string>> Cut =
        from at in Gen.Int[0, 100_000]
        select (Func<string, string>)(xml => xml.Length == 0 ? xml : xml[..(at % xml.Length)]);

    private static readonly Gen<Func<string, string>> Change = Gen.Frequency(
        (12, ReplaceValue),
        (8, MoveOrDropLine),
        (1, Cut)
    );

    [Fact]
    public void The_seed_itself_reads_without_warning()
    {
        Assert.DoesNotContain(Tune(Seed).Diagnostics, d => d.Severity != Severity.Note);
        Assert.DoesNotContain(ScoreOf(Seed).Diagnostics, d => d.Severity != Severity.Note);
    }

    [Fact]
    public void No_change_to_a_score_makes_reading_throw_or_break_its_laws() =>
        Change
            .Array[1, 6]
            .Sample(
                changes =>
                {
                    var xml = changes.Aggregate(Seed, (text, change) => change(text));
                    var tune = Tune(xml);
                    Assert.Equal(tune.Value is null, tune.Diagnostics.Any(d => d.Severity == Severity.Error));
                    var score = ScoreOf(xml);
                    Assert.Equal(score.Value is null, score.Diagnostics.Any(d => d.Severity == Severity.Error));
                    if (tune.Value is { } read)
                    {
                        ReaderLaws.Check(read, "mutated");
                    }
                    if (score.Value is { } two)
                    {
                        ReaderLaws.Check(two, "mutated");
                    }
                },
                iter: 1500,
                threads: 1
            );

    [Fact]
    public void No_change_of_bytes_makes_reading_throw()
    {
        using var zipped = new MemoryStream();
        using (
            var archive = new System.IO.Compression.ZipArchive(
                zipped,
                System.IO.Compression.ZipArchiveMode.Create,
                true
            )
        )
        {
            using var entry = archive.CreateEntry("score.xml").Open();
            entry.Write(Encoding.UTF8.GetBytes(Seed));
        }
        byte[][] files = [zipped.ToArray(), Encoding.UTF8.GetBytes(Seed), Encoding.Unicode.GetBytes("\uFEFF" + Seed)];
        Gen.Select(Gen.Int[0, 2], Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Byte).Array[1, 8])
            .Sample(
                (file, changes) =>
                {
                    var bytes = files[file].ToArray();
                    foreach (var (at, value) in changes)
                    {
                        bytes[at % bytes.Length] = value;
                    }
                    var tune = MusicXmlReader.ReadTune(new MemoryStream(bytes));
                    Assert.Equal(tune.Value is null, tune.Diagnostics.Any(d => d.Severity == Severity.Error));
                },
                iter: 2000,
                threads: 1
            );
    }

    // Replaces the text between the n-th "> <" pair or quotes.
    private static string ReplaceNth(string xml, int n, string value)
    {
        var spots = System.Text.RegularExpressions.Regex.Matches(xml, "(?<=>)[^<>\n]+(?=</)|(?<=')[^'<>\n]*(?=')");
        if (spots.Count == 0)
        {
            return xml;
        }
        var spot = spots[n % spots.Count];
        return string.Concat(xml.AsSpan(0, spot.Index), value, xml.AsSpan(spot.Index + spot.Length));
    }

    private static string SeedScore()
    {
        const string Right = "<voice>1</voice><staff>1</staff>";
        const string Left = "<voice>5</voice><staff>2</staff>";
        const string Tied = "<tie type='start'/>";
        const string Ended = "<tie type='stop'/>";
        var triplet =
            "<type>eighth</type><time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>";
        string[] bars =
        [
            "<attributes><divisions>12</divisions><key><fifths>-1</fifths></key>\n<time><beats>4</beats><beat-type>4</beat-type></time>"
                + "<staves>2</staves>\n<transpose><chromatic>0</chromatic></transpose></attributes>\n"
                + "<direction><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>92</per-minute></metronome></direction-type></direction>\n"
                + Note("C5", 12, Right),
            "<barline location='left'><repeat direction='forward'/></barline>\n"
                + Chord("F", "major", "<bass><bass-step>A</bass-step></bass><offset>3</offset>")
                + "\n"
                + Note("D5", 0, Right, "<grace/>")
                + "\n"
                + Note("F5", 12, Right + "<lyric number='1'><syllabic>begin</syllabic><text>la</text></lyric>")
                + "\n"
                + Note("A5", 12, Right, "<chord/>")
                + "\n"
                + string.Join('\n', Enumerable.Repeat(Note("G5", 4, Right + triplet), 3))
                + "\n"
                + Note("E5", 24, Tied + Right)
                + "\n<backup><duration>48</duration></backup>\n"
                + Note("F2", 24, Left)
                + "\n"
                + Note("C3", 24, Left),
            "<barline location='left'><ending number='1' type='start'/></barline>\n"
                + Chord(
                    "C",
                    "dominant",
                    "<degree><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add</degree-type></degree>"
                )
                + "\n"
                + Note("E5", 48, Ended + Right)
                + "\n<backup><duration>36</duration></backup>\n"
                + Note("C3", 36, Left)
                + "\n<barline location='right'><ending number='1' type='stop'/><repeat direction='backward' times='2'/></barline>",
            "<barline location='left'><ending number='2' type='start'/></barline>\n"
                + "<attributes><key><fifths>2</fifths></key><time><beats>3</beats><beat-type>4</beat-type></time></attributes>\n"
                + Note("F5", 36, Right)
                + "\n<barline location='right'><bar-style>light-heavy</bar-style><ending number='2' type='stop'/></barline>",
        ];
        return Part(bars).Replace("><measure", ">\n<measure", StringComparison.Ordinal);
    }
}
