using System.Text.RegularExpressions;
using Stridewright.Testing;
using static Stridewright.Cli.Tests.RealProgram;

namespace Stridewright.Cli.Tests;

/// <summary>The commands with everything real behind them.</summary>
public sealed class RealRunTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-real-");

    public static TheoryData<string> BrokenScores =>
        new(Directory.Exists(Reject) ? Directory.EnumerateFiles(Reject).Select(f => Path.GetFileName(f)!).Order() : []);

    private static string Reject =>
        Path.Combine(
            Environment.GetEnvironmentVariable("STRIDEWRIGHT_SHARED")
                ?? Path.Combine(Corpus.CheckoutRoot, "..", "shared"),
            "corpus",
            "musicxml",
            "reject"
        );

    private static string Sample => Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_tune_becomes_a_score_a_midi_file_and_a_pdf_and_the_score_passes_check()
    {
        var (code, output, error) = Run("arrange", Sample, "--out", _folder.FullName);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("ferry-bell.pdf", output, StringComparison.Ordinal);
        Assert.Equal(
            ["ferry-bell.mid", "ferry-bell.musicxml", "ferry-bell.pdf"],
            _folder.EnumerateFiles().Select(f => f.Name).Order(StringComparer.Ordinal)
        );
        Assert.Equal(0, Run("check", Path.Combine(_folder.FullName, "ferry-bell.musicxml")).Code);
    }

    [Fact]
    public void A_tune_is_written_as_sound_the_same_each_time()
    {
        string[] wishes = ["arrange", Sample, "--format", "wav", "--out", _folder.FullName];
        Assert.Equal((0, ""), (Run(wishes).Code, Run(wishes).Error)); // what is the same needs no --replace
        var file = Assert.Single(_folder.EnumerateFiles());
        Assert.Equal("ferry-bell.wav", file.Name);
        using var bytes = file.OpenRead();
        var header = new byte[12];
        bytes.ReadExactly(header);
        // Multimedia Programming Interface and Data Specifications 1.0: the form of a RIFF file and its length.
        Assert.Equal("RIFF"u8, header.AsSpan(0, 4));
        Assert.Equal(file.Length - 8, BitConverter.ToUInt32(header, 4));
        Assert.Equal("WAVE"u8, header.AsSpan(8));
    }

    [Fact]
    public void Pictures_and_the_compressed_score_are_written_the_same_each_time_and_the_score_passes_check()
    {
        string[] wishes = ["arrange", Sample, "--format", "mxl,png,svg", "--out", _folder.FullName];
        var (code, output, error) = Run(wishes);
        Assert.True((code, error) == (0, ""), output + error);
        var files = _folder.EnumerateFiles().ToDictionary(f => f.Name, f => File.ReadAllBytes(f.FullName));
        var pictures = files.Where(f => f.Key.EndsWith(".png", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(pictures);
        Assert.Equal(pictures.Count, files.Count(f => f.Key.EndsWith(".svg", StringComparison.Ordinal)));
        // A4 (ISO 216) at 150 dots an inch; PNG (ISO/IEC 15948) 11.2.2 has the width and height in bytes 16 to 23.
        Assert.All(pictures, p => Assert.Equal([0, 0, 0x04, 0xD8, 0, 0, 0x06, 0xDA], p.Value[16..24]));
        Assert.Equal(0, Run([.. wishes]).Code); // what is the same needs no --replace
        Assert.All(files, f => Assert.Equal(f.Value, File.ReadAllBytes(Path.Combine(_folder.FullName, f.Key))));
        Assert.Equal(files.Count, _folder.EnumerateFiles().Count());
        Assert.Equal(0, Run("check", Path.Combine(_folder.FullName, "ferry-bell.mxl")).Code);
    }

    [Fact]
    public void A_part_is_chosen_and_one_that_there_is_not_ends_with_2_and_those_there_are()
    {
        const string Duet =
            "X:1\nT:Duet\nM:2/4\nL:1/8\nV:1 name=Flute\nV:2 name=Fiddle\nK:C\nV:1\nc2 cc|c4|\nV:2\nE2 EE|E4|\n";
        Assert.Contains("1 'Flute' was read as the tune", Arrange(Duet).Output, StringComparison.Ordinal);
        Assert.Contains(
            "2 'Fiddle' was read as the tune",
            Arrange(Duet, "--replace", "--part", "fiddle").Output,
            StringComparison.Ordinal
        );
        var (code, _, error) = Arrange(Duet, "--part", "Oboe");
        Assert.Equal(2, code);
        Assert.Contains(
            "broken.abc:line 1: there is no voice 'Oboe'; there are 1 'Flute', 2 'Fiddle'",
            error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_score_for_large_hands_is_not_for_small_ones()
    {
        Run("arrange", Sample, "--level", "6", "--span", "230", "--out", _folder.FullName, "--format", "musicxml");
        var score = Path.Combine(_folder.FullName, "ferry-bell.musicxml");
        Assert.Equal(0, Run("check", score, "--span", "230").Code);
        var (code, output, _) = Run("check", score, "--span", "165");
        Assert.Equal(1, code);
        Assert.Contains("bar ", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1", "205")]
    [InlineData("4", "205")]
    [InlineData("6", "230")]
    public void Every_sample_passes_check_for_the_hands_it_was_set_for(string level, string span)
    {
        string[] wishes = ["--level", level, "--span", span, "--out", _folder.FullName, "--format", "musicxml"];
        var (code, output, error) = Run(["arrange", Path.GetDirectoryName(Sample)!, .. wishes]);
        Assert.True(code == 0, output + error);
        var scores = _folder.GetFiles("*.musicxml");
        Assert.True(scores.Length >= 8);
        Assert.All(
            scores,
            score =>
            {
                var check = Run("check", score.FullName, "--span", span);
                Assert.True(check is (0, _, ""), check.ToString());
            }
        );
        if (level == "6")
        {
            // Octaves are taken all over at this level; at 145 mm, 20 mm under an octave, none can be struck.
            Assert.All(
                scores,
                score =>
                {
                    var check = Run("check", score.FullName, "--span", "145");
                    Assert.Equal(1, check.Code);
                    Assert.Matches(@"bar \d+", check.Output);
                }
            );
            Assert.Contains(scores, score => Run("check", score.FullName, "--span", "185").Code == 1);
        }
    }

    [Fact]
    public void Chords_become_a_left_hand_page_in_all_keys_that_passes_check()
    {
        string[] wishes =
        [
            "--level",
            "5",
            "--title",
            "Way home",
            "--out",
            _folder.FullName,
            "--format",
            "musicxml,midi",
        ];
        var (code, output, error) = Run(["arrange", "--chords", "F | D7 | G7 C7 | F", "--all-keys", .. wishes]);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("12 written, 0 failed", output, StringComparison.Ordinal);
        var scores = _folder.GetFiles("way-home.*.musicxml");
        Assert.Equal(12, scores.Length);
        Assert.Contains(scores, s => s.Name == "way-home.B-flat.musicxml");
        Assert.All(scores, score => Assert.Equal(0, Run("check", score.FullName).Code));
    }

    [Theory]
    [InlineData("F | H7", "chords:column 5: 'H7' is no chord")]
    [InlineData("", "chords: there is no chord in the line")]
    public void A_fault_in_a_line_of_chords_is_told_with_its_column(string line, string expected)
    {
        var (code, _, error) = Run("arrange", "--chords", line, "--out", _folder.FullName);
        Assert.Equal(2, code);
        Assert.StartsWith(expected, error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_left_hand_of_a_tune_is_written_alone()
    {
        string[] wishes = ["--left-hand-only", "--out", _folder.FullName, "--format", "musicxml"];
        var (code, output, _) = Run(["arrange", Sample, .. wishes]);
        Assert.Equal(0, code);
        Assert.Contains("left 4, alone", output, StringComparison.Ordinal);
        Assert.Equal(0, Run("check", Path.Combine(_folder.FullName, "ferry-bell.musicxml")).Code);
    }

    public static TheoryData<string, string> BrokenTunes =>
        new(
            Broken("not music at all", "there is no tune"),
            Broken("", "is empty"),
            Broken("<html><body>not found</body></html>", "line 1"),
            Broken("\0\u0001\u0002\u0003", "there is no tune"),
            Broken("X:1\nT:Head only\nM:4/4\nK:C\n", "line 1"),
            Broken("X:1\nT:No notes\nK:C\n|||::||\n", "line 1"),
            Broken("X:1\nT:Rests only\nM:2/4\nK:C\nz4|z4|\n", "line 1"),
            Broken("X:1\nT:Grace\nM:2/4\nL:1/8\nK:C\n{{{{CDEF|\n", "line 6"),
            Broken("X:1\nT:Quote\nM:2/4\nL:1/8\nK:C\n\"Am CDEF|\n", "line 6"),
            Broken("X:1\nT:High\nM:2/4\nL:1/8\nK:C\nc" + new string('\'', 5000) + "|\n", "line 6"),
            Broken("X:1\nT:Wide\nM:2/4\nL:1/8\nK:C\nC,,,C,,,C,,,C,,,|c'''2 C,,,2|\n", "bar")
        );

    [Theory]
    [MemberData(nameof(BrokenTunes))]
    public void A_tune_that_cannot_be_set_ends_with_2_and_its_place(string text, string expected)
    {
        var (code, _, error) = Arrange(text);
        Assert.Equal(2, code);
        Assert.All(Lines(error), line => Assert.Matches(@"broken\.abc:\s*\S", line));
        Assert.Contains(Lines(error), line => line.Contains(expected, StringComparison.Ordinal));
        Assert.DoesNotContain("went wrong inside", error, StringComparison.Ordinal);
        Assert.DoesNotContain(_folder.EnumerateFiles(), f => f.Extension == ".musicxml");
    }

    [Theory]
    [InlineData("X:1\nT:No key\nM:2/4\nCDEF|\n", "K:")]
    [InlineData("X:1\nT:T\nM:99999999/1\nK:C\nCDEF|\n", "line 3, column 1")]
    [InlineData("X:1\nT:T\nM:4/0\nK:C\nCDEF|\n", "line 3, column 1")]
    [InlineData("X:1\nT:T\nL:1/0\nK:C\nCDEF|\n", "line 3, column 1")]
    [InlineData("X:1\nT:T\nM:2/4\nK:H#minorish\nCDEF|\n", "line 4, column 1")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\n(9999CDEF|\n", "line 6, column 1")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\n[CEG|FAc\n", "line 6, column 1")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\n|:CDEF|[1-999999999 GABc:|\n", "line 6, column 9")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\n\"Zm17&&\"CDEF|GABc|\n", "line 6, column 1")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\n-----C-|-|D-\n", "line 6, column 6")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\nC///////////////////////////////////D|\n", "line 6, column 2")]
    [InlineData("X:1\nT:T\nM:2/4\nL:1/8\nK:C\n[M:0/0][K:ZZ][L:a/b]CDEF|\n", "line 6, column 9")]
    [InlineData("X:1\nK:C\nC99999999999999999999D|\n", "line 3")]
    public void A_broken_tune_is_repaired_with_a_word_and_its_place(string text, string expected)
    {
        var (code, output, error) = Arrange(text);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains(
            Lines(output),
            line =>
                line.Contains(expected, StringComparison.Ordinal)
                && (
                    line.Contains("warning", StringComparison.Ordinal)
                    || line.Contains("note", StringComparison.Ordinal)
                )
        );
        Assert.Single(_folder.EnumerateFiles("*.musicxml"));
    }

    [Theory]
    [MemberData(nameof(BrokenScores))]
    public void A_broken_score_of_the_corpus_ends_with_2_and_its_place(string name)
    {
        var file = Corpus.PathOf("corpus/musicxml/reject/" + name);
        var (code, _, error) = Hang.Never(() =>
            Run("arrange", file, "--out", _folder.FullName, "--format", "musicxml")
        );
        Assert.Equal(2, code);
        Assert.All(Lines(error), line => Assert.Matches(Regex.Escape(name) + @":\s*\S", line));
        Assert.Empty(_folder.EnumerateFiles());
        Assert.DoesNotContain("went wrong inside", error, StringComparison.Ordinal);
    }

    private static TheoryDataRow<string, string> Broken(string text, string expected) => new(text, expected);

    private (int Code, string Output, string Error) Arrange(string text, params string[] more)
    {
        var file = Path.Combine(_folder.FullName, "broken.abc");
        File.WriteAllText(file, text);
        return Hang.Never(() => Run(["arrange", file, "--out", _folder.FullName, "--format", "musicxml", .. more]));
    }

    private static string[] Lines(string text) =>
        text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
