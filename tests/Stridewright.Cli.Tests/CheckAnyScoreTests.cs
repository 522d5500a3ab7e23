using System.Text.Json;
using Stridewright.Testing;
using Stridewright.Workbench;

namespace Stridewright.Cli.Tests;

/// <summary><c>check</c> on two-staff scores that are not ours.</summary>
public sealed class CheckAnyScoreTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-any-");

    public void Dispose() => _folder.Delete(recursive: true);

    // Three voices, of which the first goes over to the lower staff in the second bar; a repeat with two endings.
    private const string Score = """
        <score-partwise version="4.0"><part-list><score-part id="P1"><part-name>Piano</part-name></score-part></part-list>
        <part id="P1">
        <measure number="1"><attributes><divisions>4</divisions><key><fifths>-1</fifths></key>
        <time><beats>2</beats><beat-type>4</beat-type></time><staves>2</staves>
        <clef number="1"><sign>G</sign><line>2</line></clef><clef number="2"><sign>F</sign><line>4</line></clef></attributes>
        <barline location="left"><repeat direction="forward"/></barline>
        <note><pitch><step>A</step><octave>5</octave></pitch><duration>4</duration><voice>1</voice><type>quarter</type><staff>1</staff></note>
        <note><pitch><step>F</step><octave>5</octave></pitch><duration>4</duration><voice>1</voice><type>quarter</type><staff>1</staff></note>
        <backup><duration>8</duration></backup>
        <note><pitch><step>C</step><octave>5</octave></pitch><duration>8</duration><voice>2</voice><type>half</type><staff>1</staff></note>
        <backup><duration>8</duration></backup>
        <note><pitch><step>F</step><octave>4</octave></pitch><duration>8</duration><voice>3</voice><type>half</type><staff>1</staff></note>
        <backup><duration>8</duration></backup>
        <note><rest/><duration>8</duration><voice>5</voice><type>half</type><staff>2</staff></note>
        </measure>
        <measure number="2">
        <note><pitch><step>E</step><octave>4</octave></pitch><duration>2</duration><voice>1</voice><type>eighth</type><staff>2</staff></note>
        <note><pitch><step>C</step><octave>4</octave></pitch><duration>2</duration><voice>1</voice><type>eighth</type><staff>2</staff></note>
        <note><pitch><step>G</step><octave>4</octave></pitch><duration>4</duration><voice>1</voice><type>quarter</type><staff>1</staff></note>
        <backup><duration>8</duration></backup>
        <note><pitch><step>C</step><octave>2</octave></pitch><duration>8</duration><voice>5</voice><type>half</type><staff>2</staff></note>
        </measure>
        <measure number="3"><barline location="left"><ending number="1" type="start"/></barline>
        <note><pitch><step>F</step><octave>4</octave></pitch><duration>8</duration><voice>1</voice><type>half</type><staff>1</staff></note>
        <backup><duration>8</duration></backup>
        <note><pitch><step>F</step><octave>2</octave></pitch><duration>8</duration><voice>5</voice><type>half</type><staff>2</staff></note>
        <barline location="right"><ending number="1" type="stop"/><repeat direction="backward"/></barline></measure>
        <measure number="4"><barline location="left"><ending number="2" type="start"/></barline>
        <note><pitch><step>F</step><octave>4</octave></pitch><duration>8</duration><voice>1</voice><type>half</type><staff>1</staff></note>
        <backup><duration>8</duration></backup>
        <note><pitch><step>F</step><octave>2</octave></pitch><duration>8</duration><voice>5</voice><type>half</type><staff>2</staff></note>
        <barline location="right"><ending number="2" type="discontinue"/></barline></measure>
        </part></score-partwise>
        """;

    [Fact]
    public void Repeats_three_voices_and_notes_across_the_staves_are_judged()
    {
        var file = Path.Combine(_folder.FullName, "three-voices.musicxml");
        File.WriteAllText(file, Score);
        var (code, output, error) = Check(file, "--json");
        Assert.Equal((1, ""), (code, error));
        using var json = JsonDocument.Parse(output);
        var score = json.RootElement.GetProperty("score");
        // Each bar stands once, as it is written; in the first the left hand rests.
        var bars = score.GetProperty("barEfforts").EnumerateArray().ToList();
        Assert.Equal(["1", "2", "3", "4"], bars.Select(b => b.GetProperty("bar").GetString()));
        Assert.Equal(1, bars[0].GetProperty("left").GetDouble());
        // The notes on the lower staff are the left hand's, whose C2 is held: both are out of its reach.
        var spots = score
            .GetProperty("spots")
            .EnumerateArray()
            .Select(s => s.GetProperty("message").GetString())
            .ToList();
        Assert.Contains(
            spots,
            s =>
                s!.StartsWith("the left hand needs", StringComparison.Ordinal)
                && s.Contains("C2 and E4", StringComparison.Ordinal)
        );
        // The right hand has three keys at once in the first bar, of which two are further voices: something to read.
        var reading = score.GetProperty("effort").GetProperty("right").GetProperty("parts").EnumerateArray();
        Assert.True(
            reading.Single(p => p.GetProperty("kind").GetString() == "reading").GetProperty("points").GetDouble() > 0.5
        );
    }

    [Fact]
    public void Every_score_at_hand_is_judged_or_refused_in_a_sentence()
    {
        string[] endings = [".musicxml", ".mxl", ".xml"];
        var files = endings.SelectMany(e => Corpus.FilesIfThere("corpus", e)).ToList();
        var samples = Directory.GetFiles(Path.Combine(Corpus.CheckoutRoot, "samples", "musicxml"));
        var judged = 0;
        foreach (var file in files.Concat(samples))
        {
            var (code, output, error) = Check(file);
            Assert.True(code is 0 or 1 or 2, file);
            Assert.True(code == 2 ? error.Length > 0 : output.Length > 0, file);
            Assert.DoesNotContain("went wrong inside", error, StringComparison.Ordinal);
            judged += code < 2 ? 1 : 0;
        }
        Assert.True(files.Count == 0 || judged >= 2, $"{judged} of {files.Count}");
    }

    private static (int Code, string Output, string Error) Check(params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = new CommandLineApp(UseCases.Open, output, error).Run(
            ["check", .. args],
            TestContext.Current.CancellationToken
        );
        return (code, output.ToString(), error.ToString());
    }
}
