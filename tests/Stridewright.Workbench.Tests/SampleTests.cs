using System.Xml.Linq;
using Stridewright.Testing;

namespace Stridewright.Workbench.Tests;

/// <summary>The tunes that come with the project.</summary>
public sealed class SampleTests
{
    private static string Folder => Path.Combine(Corpus.CheckoutRoot, "samples");

    public static TheoryData<string> MusicXmlSamples =>
        new(Directory.EnumerateFiles(Path.Combine(Folder, "musicxml")).Select(f => Path.GetFileName(f)!).Order());

    [Fact]
    public void At_least_eight_tunes_come_in_abc_and_three_of_them_in_musicxml()
    {
        var abc = Directory.EnumerateFiles(Folder, "*.abc").Select(Path.GetFileNameWithoutExtension).ToHashSet();
        Assert.True(abc.Count >= 8);
        Assert.True(MusicXmlSamples.Count >= 3);
        Assert.All(
            Directory.EnumerateFiles(Path.Combine(Folder, "musicxml")),
            file => Assert.Contains(Path.GetFileNameWithoutExtension(file), abc)
        );
    }

    // Source: the schema of MusicXML 4.0.
    [Theory]
    [MemberData(nameof(MusicXmlSamples))]
    public void A_musicxml_sample_is_valid(string name)
    {
        using var document = File.OpenRead(Path.Combine(Folder, "musicxml", name));
        Assert.Empty(MusicXmlSchema.Faults(document));
    }

    // Source: arithmetic of the metre; a pick-up and the bar that completes it may be shorter.
    [Theory]
    [MemberData(nameof(MusicXmlSamples))]
    public void The_bars_of_a_musicxml_sample_add_up(string name)
    {
        var part = XDocument.Load(Path.Combine(Folder, "musicxml", name)).Root!.Element("part")!;
        var first = part.Element("measure")!.Element("attributes")!;
        var full =
            4
            * (int)first.Element("divisions")!
            * (int)first.Element("time")!.Element("beats")!
            / (int)first.Element("time")!.Element("beat-type")!;
        var lengths = part.Elements("measure")
            .Select(m => m.Elements("note").Sum(n => (int)n.Element("duration")!))
            .ToList();
        Assert.All(lengths.Skip(1).SkipLast(1), length => Assert.Equal(full, length));
        Assert.True(lengths[0] == full || lengths[^1] == full || lengths[0] + lengths[^1] == full);
    }
}
