using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Outputs;

/// <summary>Writes drawings into the file that was named for them.</summary>
internal static class PlotFiles
{
    private static readonly string[] Endings = [".png", ".svg", ".pdf"];

    /// <summary>True for a name that tells what kind of picture is wanted.</summary>
    public static bool IsName(string plot) => Endings.Contains(Path.GetExtension(plot).ToLowerInvariant());

    /// <summary>The files written, or null and the reason. Of several drawings each gets a number, and each page but an only
    /// one.</summary>
    public static ValueList<WrittenFile>? TryWrite(
        string plot,
        IReadOnlyList<EngravedPages> drawings,
        bool replace,
        IEnumerable<string> inputs,
        CancellationToken cancellation,
        out string problem
    )
    {
        var (folder, ending) = (Path.GetDirectoryName(plot), Path.GetExtension(plot));
        var outputs = new OutputFiles(
            string.IsNullOrEmpty(folder) ? "." : folder,
            replace,
            inputs.Select(Path.GetFullPath)
        );
        var name = Path.GetFileNameWithoutExtension(plot);
        var files = drawings.SelectMany(
            (pages, i) =>
                Files(pages, drawings.Count == 1 ? name : FormattableString.Invariant($"{name}-{i + 1}"), ending)
        );
        return outputs.TryWrite(files, cancellation, out problem);
    }

    private static IEnumerable<OutputFile> Files(EngravedPages pages, string name, string ending)
    {
        if (ending.Equals(".pdf", StringComparison.OrdinalIgnoreCase))
        {
            yield return new OutputFile(name + ending, pages.Pdf());
            yield break;
        }
        for (var page = 0; page < pages.Svg.Count; page++)
        {
            var file = pages.Svg.Count == 1 ? name : FormattableString.Invariant($"{name}-page-{page + 1}");
            var isSvg = ending.Equals(".svg", StringComparison.OrdinalIgnoreCase);
            yield return new OutputFile(file + ending, isSvg ? pages.Svg[page] : pages.Png(page));
        }
    }
}
