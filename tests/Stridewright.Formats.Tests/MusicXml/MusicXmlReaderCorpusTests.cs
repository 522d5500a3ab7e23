using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Real files, against the counts of their manifest (columns bars, chord_symbols, metre, key).</summary>
public sealed class MusicXmlReaderCorpusTests
{
    private const string Again = "written here and again at the next note";

    // Files that show layout or form with rests alone: there is no tune in them.
    private static readonly string[] OnlyRests = ["41g-", "41h-", "45f-"];

    private static Dictionary<string, string[]> Manifest() =>
        File.ReadLines(Corpus.PathOf("corpus/MANIFEST.tsv")).Select(l => l.Split('\t')).ToDictionary(c => c[0], c => c);

    [Fact]
    public void Every_valid_file_with_notes_reads_with_the_bars_chords_metre_and_key_of_its_manifest()
    {
        var manifest = Manifest();
        var files = Corpus.Files("corpus/musicxml/valid", ".musicxml", ".mxl");
        Assert.True(files.Count >= 65);
        foreach (var file in files)
        {
            var name = Path.GetFileName(file);
            var row = manifest["musicxml/valid/" + name];
            using var stream = File.OpenRead(file);
            var (tune, findings) = MusicXmlReader.ReadTune(stream);
            if (OnlyRests.Any(name.StartsWith))
            {
                Assert.Null(tune);
                Assert.Contains(findings, d => d.Message.Contains("only rests", StringComparison.Ordinal));
                continue;
            }
            Assert.True(tune is not null, name + ": " + string.Join("; ", findings));
            Assert.True(row[5] == Text(tune.Bars.Count), name + ": bars");

            // The manifest counts symbols as written; those written twice for one place are read once.
            var twice = findings.Count(d => d.Message.Contains(Again, StringComparison.Ordinal));
            Assert.True(row[6] == Text(tune.Bars.Sum(b => b.Chords.Count) + twice), name + ": chord symbols");
            if (row[3].Contains('/', StringComparison.Ordinal) && !row[3].Contains('+', StringComparison.Ordinal))
            {
                Assert.Equal(row[3], tune.Bars[0].Metre.ToString());
            }
            if (
                row[4].EndsWith(" fifths", StringComparison.Ordinal)
                && !name.StartsWith("72a", StringComparison.Ordinal)
            )
            {
                Assert.Equal(row[4], Text(tune.Bars[0].Key.Signature) + " fifths");
            }
            ReaderLaws.Check(tune, name);
        }
    }

    [Fact]
    public void Every_file_to_reject_is_refused_with_a_reason_and_a_place()
    {
        var files = Corpus.Files("corpus/musicxml/reject", ".musicxml", ".mxl");
        Assert.True(files.Count >= 6);
        foreach (var file in files)
        {
            using var stream = File.OpenRead(file);
            var (tune, findings) = MusicXmlReader.ReadTune(stream);
            Assert.Null(tune);
            var error = Assert.Single(findings, d => d.Severity == Severity.Error);
            Assert.True(error.Place.Line > 0 || file.EndsWith(".mxl", StringComparison.Ordinal), file); // a zip has no lines
        }
    }

    [Theory]
    [InlineData("mismatched-tag.musicxml", 141)] // line as the manifest states
    [InlineData("entity-expansion.musicxml", 15)]
    [InlineData("external-entity.musicxml", 6)]
    public void The_place_of_a_fault_is_its_line(string name, int line)
    {
        using var stream = File.OpenRead(Corpus.PathOf("corpus/musicxml/reject/" + name));
        Assert.Equal(line, MusicXmlReader.ReadTune(stream).Diagnostics[^1].Place.Line);
    }

    [Fact]
    public void Two_staff_files_read_as_scores_and_others_are_refused()
    {
        var read = new List<string>();
        foreach (var file in Corpus.Files("corpus/musicxml/valid", ".musicxml", ".mxl"))
        {
            using var stream = File.OpenRead(file);
            var (score, findings) = MusicXmlReader.ReadScore(stream);
            Assert.Equal(score is null, findings.Any(d => d.Severity == Severity.Error));
            if (score is not null)
            {
                read.Add(Path.GetFileName(file)[..3]);
                ReaderLaws.Check(score, file);
            }
        }
        Assert.Equal(["11b", "43a"], read); // those with <staves>2</staves>
    }

    private static string Text(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
