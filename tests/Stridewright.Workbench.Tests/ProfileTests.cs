using System.Globalization;
using System.Xml.Linq;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>Profiles drawn into files.</summary>
public sealed class ProfileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("png", new byte[] { 0x89, 0x50, 0x4E, 0x47 })] // ISO/IEC 15948, 5.2
    [InlineData("pdf", new byte[] { 0x25, 0x50, 0x44, 0x46 })] // ISO 32000-1, 7.5.2
    [InlineData("svg", new byte[] { 0x3C, 0x73, 0x76, 0x67 })]
    public void A_drawing_is_written_in_the_format_of_its_ending(string ending, byte[] signature)
    {
        var report = Profile(_folder[$"out/style.{ending}"], Rag());
        Assert.Empty(report.Problems);
        Assert.NotEmpty(report.Drawings);
        Assert.All(report.Drawings, d => Assert.Equal(signature, File.ReadAllBytes(d.Path)[..4]));
    }

    [Fact]
    public void The_drawing_says_what_was_measured_and_what_is_published()
    {
        var report = Profile(_folder["style.svg"], Rag());
        var texts = report
            .Drawings.SelectMany(d => XDocument.Load(d.Path).Descendants())
            .Where(e => e.Name.LocalName == "text")
            .Select(e => e.Value)
            .ToList();
        Assert.Contains(texts, t => t.Contains("34 published piano rags in 2/4", StringComparison.Ordinal));
        foreach (var key in (string[])["any121_bars", "held_bars", "single", "strict"])
        {
            var figure = report.Scores[0].Style.Figures.Single(f => f.Key == key);
            Assert.Contains(figure.Words, texts);
            Assert.Contains($"{Percent(figure.Values[0])} ({Percent(figure.Reference[0])})", texts);
        }
    }

    [Fact]
    public void Several_scores_get_a_drawing_each()
    {
        var rag = Rag();
        var other = _folder["other.musicxml"];
        File.Copy(rag, other);
        var report = Profile(_folder["style.pdf"], rag, other);
        Assert.Equal(["style-1.pdf", "style-2.pdf"], report.Drawings.Select(d => Path.GetFileName(d.Path)));
    }

    [Fact]
    public void A_drawing_that_differs_is_not_replaced_unless_asked_for()
    {
        var rag = Rag();
        var plot = _folder.Put("style.pdf", "mine");
        var report = Profile(plot, rag);
        Assert.Equal("plot", Assert.Single(report.Problems).File);
        Assert.Equal("mine", File.ReadAllText(plot));
        Assert.Empty(report.Drawings);
    }

    [Theory]
    [InlineData("style.jpg")]
    [InlineData("style")]
    [InlineData("")]
    public void A_name_that_is_no_picture_is_refused_before_anything_is_done(string name)
    {
        var report = Profile(name, Rag());
        Assert.Contains(".png, .svg or .pdf", Assert.Single(report.Problems).Message, StringComparison.Ordinal);
        Assert.Empty(report.Scores);
    }

    [Fact]
    public void A_lead_sheet_is_refused_because_it_has_one_staff()
    {
        var report = Profile(null, Path.Combine(Samples, "musicxml", "ferry-bell.musicxml"));
        Assert.Contains(
            "one staff, as in a lead sheet",
            Assert.Single(report.Problems).Message,
            StringComparison.Ordinal
        );
    }

    private static string Samples => Path.Combine(Corpus.CheckoutRoot, "samples");

    private static string Percent(double share) =>
        (100 * share).ToString(share < 0.0995 ? "0.#" : "0", CultureInfo.InvariantCulture) + " %";

    private string Rag()
    {
        using var useCases = UseCases.Open();
        var request = new ArrangeRequest
        {
            Tunes = [Path.Combine(Samples, "rain-on-the-awning.abc")],
            OutputFolder = _folder["rag"],
            Formats = [OutputFormat.MusicXml],
        };
        return useCases.Arrange(request, null, TestContext.Current.CancellationToken).Written.Single().Outputs[0].Path;
    }

    private static ProfileReport Profile(string? plot, params string[] scores)
    {
        using var useCases = UseCases.Open();
        var request = new ProfileRequest { Scores = scores.ToValueList(), Plot = plot };
        return useCases.Profile(request, TestContext.Current.CancellationToken);
    }
}
