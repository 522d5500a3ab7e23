using System.Xml.Linq;
using Stridewright.Testing;

namespace Stridewright.Architecture.Tests;

/// <summary>The directions of docs: which project may know which, and which packages it may use.</summary>
public sealed class ProjectReferenceTests
{
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Music"] = [],
        ["Formats"] = ["Music"],
        ["Hands"] = ["Music"],
        ["Sound"] = ["Music"],
        ["Arranging"] = ["Music", "Hands"],
        ["Practice"] = ["Music", "Hands", "Arranging"],
        ["Engraving"] = ["Music", "Formats"],
        ["Shelf"] = ["Music"],
        ["Workbench"] = ["Music", "Formats", "Hands", "Sound", "Arranging", "Practice", "Engraving", "Shelf"],
        ["Web"] = ["Workbench", "Music"],
        ["Cli"] = ["Web", "Workbench", "Music"],
    };

    private static readonly string[] Pure = ["Music", "Hands", "Arranging", "Practice"];

    public static TheoryData<string> Projects =>
        new(
            Directory
                .EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "src"), "*.csproj", SearchOption.AllDirectories)
                .Select(f => Path.GetFileNameWithoutExtension(f)["Stridewright.".Length..])
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void There_are_projects_to_check() => Assert.NotEmpty(Projects);

    [Theory]
    [MemberData(nameof(Projects))]
    public void Project_refers_only_to_what_it_may_know(string project)
    {
        var references = Items(project, "ProjectReference")
            .Select(path => Path.GetFileNameWithoutExtension(path)["Stridewright.".Length..]);
        Assert.All(references, reference => Assert.Contains(reference, Allowed[project]));
    }

    [Theory]
    [MemberData(nameof(Projects))]
    public void Pure_project_uses_no_package_and_bans_the_outside(string project)
    {
        if (!Pure.Contains(project))
        {
            return;
        }
        Assert.Equal(["Microsoft.CodeAnalysis.BannedApiAnalyzers"], Items(project, "PackageReference"));
        Assert.Contains(
            Items(project, "AdditionalFiles"),
            file => file.EndsWith("BannedSymbols.txt", StringComparison.Ordinal)
        );
    }

    private static List<string> Items(string project, string kind)
    {
        var name = "Stridewright." + project;
        var file = Path.Combine(Corpus.CheckoutRoot, "src", name, name + ".csproj");
        return XDocument
            .Load(file)
            .Descendants(kind)
            .Select(e => e.Attribute("Include")!.Value.Replace('\\', '/'))
            .ToList();
    }
}
