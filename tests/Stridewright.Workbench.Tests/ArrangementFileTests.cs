using System.Text;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>Arrangement files, with the project's own readers, arranger and writers.</summary>
public sealed class ArrangementFileTests : IDisposable
{
    private static readonly Wishes[] Briefs =
    [
        new(),
        new()
        {
            Level = 6,
            Key = "Ab",
            Raggedness = 1,
            Seed = 5,
        },
        new()
        {
            LeftLevel = 2,
            RightLevel = 5,
            Span = "ninth",
            OctaveWidth = "6in",
            NoOctaves = true,
            BeatsPerMinute = 71.5,
            Lyrics = true,
        },
        new()
        {
            Play = ["walking-octaves", "thirds", "stop-time"],
            Harmony = "rich",
            Without = ["pedal", "tritone"],
            Form = "intro A(high, ff) vamp  A end",
            ShowPlain = true,
        },
        new() { LeftHandOnly = true, Level = 3 },
        new() { Accompany = true, Range = "A3-E5" },
    ];

    private readonly TemporaryFolder _folder = new();
    private readonly UseCases _useCases = UseCases.Open();

    public void Dispose()
    {
        _useCases.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void A_saved_sample_is_set_again_byte_for_byte() =>
        AssertSetAgain(
            Directory
                .EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*", SearchOption.AllDirectories)
                .Where(f => Path.GetExtension(f) is ".abc" or ".musicxml" or ".mid")
                .Order(StringComparer.Ordinal)
                .ToList(),
            atLeast: 15
        );

    [Theory]
    [InlineData("corpus/abc", 60)]
    [InlineData("corpus/musicxml/valid", 55)]
    [InlineData("corpus/midi/valid", 3)]
    public void A_saved_tune_of_the_corpus_is_set_again_byte_for_byte(string folder, int atLeast) =>
        AssertSetAgain(
            Corpus.Files(folder, folder == "corpus/abc" ? [".abc"] : [".musicxml", ".xml", ".mxl", ".mid"]),
            atLeast
        );

    [Fact]
    public void Chords_are_saved_and_set_again()
    {
        var request = Request() with { Chords = "F | D7 . G7 C7 | F", Tunes = [], Save = _folder["f.stridewright"] };
        Assert.Empty(Arrange(request with { Title = "Left" }).Problems);
        Assert.Empty(Arrange(Request(_folder["f.stridewright"]) with { OutputFolder = _folder["again"] }).Problems);
        Assert.Equal(Bytes("out/left.musicxml"), Bytes("again/f.musicxml"));
    }

    [Fact]
    public void An_option_counts_more_than_the_files_brief_and_what_it_leaves_open_is_the_files()
    {
        var tune = Sample("ferry-bell.abc");
        var wishes = new Wishes
        {
            Level = 3,
            Key = "G",
            Form = "A A",
            Play = ["thirds"],
        };
        Save(tune, wishes, "f.stridewright");
        Arrange(
            Request(_folder["f.stridewright"]) with
            {
                Wishes = new Wishes { RightLevel = 5, Form = "plain" },
                OutputFolder = _folder["again"],
            }
        );
        Arrange(
            Request(tune) with
            {
                Replace = true,
                Wishes = new Wishes
                {
                    LeftLevel = 3,
                    RightLevel = 5,
                    Key = "G",
                    Play = ["thirds"],
                },
            }
        );
        Assert.Equal(Bytes("out/ferry-bell.musicxml"), Bytes("again/f.musicxml"));
    }

    [Fact]
    public void Saved_anew_a_file_keeps_its_figures_and_kept_bars()
    {
        var path = _folder.Put(
            "f.stridewright",
            """
            stridewright arrangement 1
            figures
              figure run home
                over ii7 V7
            tune
            X:1
            T:Quay
            M:2/4
            L:1/8
            K:F
            "F"FA c2 | "C7"c2 BG | "F"A2 F2 |]

            """
        );
        var request = Request(path) with
        {
            Save = path,
            Wishes = new Wishes { Seed = 3 },
        };
        Assert.Contains("add --replace", Assert.Single(Arrange(request).Problems).Message, StringComparison.Ordinal);
        Assert.Empty(Arrange(request with { Replace = true }).Problems);
        Assert.StartsWith(
            "stridewright arrangement 1\nbrief\n  seed 3\nfigures\n  figure run home\n    over ii7 V7\ntune\nX:1\n",
            File.ReadAllText(path),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("tune\nX:1\nK:C\nCDEF|\n\nX:2\nK:C\nC|\n", "", "holds one tune, and this has 2")]
    [InlineData("brief\n  level 9\ntune\nX:1\nK:C\nCDEF|\n", "line 3, column 9", "1 to 6")]
    [InlineData("tune\nX:1\nT:t\nM:2/4\nK:Q\n\n", "line 3", "neither notes nor chord symbols")]
    [InlineData("tune\n", "line 2, column 1", "no tune")]
    public void A_fault_is_told_with_its_line_in_the_file(string text, string place, string message)
    {
        var path = _folder.Put("f.stridewright", "stridewright arrangement 1\n" + text);
        var problem = Arrange(Request(path)).Problems[0];
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Equal(place, problem.Place);
    }

    [Fact]
    public void A_file_is_known_by_its_first_line_or_its_ending()
    {
        var good = "\ufeffstridewright arrangement 1\r\ntune\r\nX:1\r\nT:t\r\nK:C\r\nCDEF GABc|\r\n";
        Assert.Empty(Arrange(Request(_folder.Put("a.txt", good))).Problems);
        var bad = Arrange(Request(_folder.Put("b.stridewright", "X:1\nT:t\nK:C\nCDEF|")));
        Assert.Contains("no arrangement file", Assert.Single(bad.Problems).Message, StringComparison.Ordinal);
        File.WriteAllBytes(
            _folder["c.stridewright"],
            [.. Encoding.Latin1.GetBytes(good[1..].Replace("T:t", "T:\u00e9"))]
        );
        Assert.Contains("UTF-8", Assert.Single(Arrange(Request(_folder["c.stridewright"])).Problems).Message);
    }

    [Fact]
    public void What_would_be_lost_is_not_saved()
    {
        // More bars than the ABC reader takes: MusicXML may have 10,000, ABC 2000.
        var bars = string.Concat(
            Enumerable
                .Range(1, 2001)
                .Select(i =>
                    $"<measure number='{i}'>{(i == 1 ? "<attributes><divisions>1</divisions><key><fifths>0</fifths></key><time><beats>2</beats><beat-type>4</beat-type></time></attributes>" : "")}<note><pitch><step>C</step><octave>5</octave></pitch><duration>2</duration></note></measure>"
                )
        );
        var path = _folder.Put(
            "long.musicxml",
            "<score-partwise><part-list><score-part id='P'><part-name/></score-part></part-list><part id='P'>"
                + bars
                + "</part></score-partwise>"
        );
        var report = Arrange(Request(path) with { Save = _folder["long.stridewright"] });
        Assert.Contains(
            "bar 2001 cannot be written in ABC",
            Assert.Single(report.Problems).Message,
            StringComparison.Ordinal
        );
        Assert.Equal(["long.musicxml"], _folder.Files());
    }

    [Fact]
    public void Only_one_setting_is_saved_under_a_fitting_name()
    {
        var samples = Path.Combine(Corpus.CheckoutRoot, "samples");
        ArrangeRequest[] requests =
        [
            Request(samples) with
            {
                Save = _folder["a.stridewright"],
            },
            Request(Sample("ferry-bell.abc")) with
            {
                Save = _folder["a.stridewright"],
                AllKeys = true,
            },
            Request(Sample("ferry-bell.abc")) with
            {
                Save = _folder["a.abc"],
            },
            Request(_folder.Put("two.abc", "X:1\nT:a\nK:C\nCDEF|\n\nX:2\nT:b\nK:C\nCDEF|\n")) with
            {
                Save = _folder["a.stridewright"],
            },
        ];
        Assert.All(
            requests,
            r =>
                Assert.Contains(
                    "arrangement file",
                    Assert.Single(Arrange(r).Problems).Message,
                    StringComparison.Ordinal
                )
        );
        Assert.Equal(["two.abc"], _folder.Files());
    }

    private void AssertSetAgain(IReadOnlyList<string> files, int atLeast)
    {
        var same = 0;
        foreach (var (i, file) in files.Index())
        {
            var wishes = Briefs[i % Briefs.Length];
            var name = Path.GetFileNameWithoutExtension(file);
            var report = Save(file, wishes, "saved.stridewright");
            Assert.DoesNotContain(report.Problems, p => p.Message.Contains("would not hold", StringComparison.Ordinal));
            if (report.Written.Count == 0)
            {
                continue; // no tune in it, or no setting of it: a form asks for what the tune has not, say
            }
            var again = Arrange(
                Request(_folder["saved.stridewright"]) with
                {
                    OutputFolder = _folder["again"],
                    Replace = true,
                }
            );
            Assert.Empty(again.Problems);
            Assert.True(Bytes($"out/{name}.musicxml").SequenceEqual(Bytes("again/saved.musicxml")), file);
            Assert.True(Bytes($"out/{name}.mid").SequenceEqual(Bytes("again/saved.mid")), file);
            same++;
        }
        Assert.True(same >= atLeast, $"{same} of {files.Count}");
    }

    private ArrangeReport Arrange(ArrangeRequest request) =>
        _useCases.Arrange(request, cancellation: TestContext.Current.CancellationToken);

    private ArrangeReport Save(string tune, Wishes wishes, string name) =>
        Arrange(Request(tune) with { Wishes = wishes, Save = _folder[name], Replace = true });

    private static string Sample(string name) => Path.Combine(Corpus.CheckoutRoot, "samples", name);

    private ArrangeRequest Request(params string[] tunes) =>
        new()
        {
            Tunes = tunes.ToValueList(),
            OutputFolder = _folder["out"],
            Formats = [OutputFormat.MusicXml, OutputFormat.Midi],
        };

    private byte[] Bytes(string relative) => File.ReadAllBytes(_folder[relative]);
}
