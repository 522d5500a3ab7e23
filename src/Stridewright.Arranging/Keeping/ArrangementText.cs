using System.Globalization;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The text of arrangement files (docs/arrangement-file.md): a first line with the version, then the sections brief,
/// kept, settled, figures and tune, each a word on its own line with its lines indented below; the tune, in ABC, goes to the end.
/// </summary>
public static class ArrangementText
{
    /// <summary>What every file begins with, before its version.</summary>
    public const string FirstWords = "stridewright arrangement";

    /// <summary>Version that is written and read.</summary>
    public const int Version = 1;

    /// <summary>Characters: a tune of 2000 bars takes a tenth of this.</summary>
    public const int MostCharacters = 1_000_000;

    private const int MostFigureLines = 5000;
    private const int LongestName = 80;
    private const string Indent = "  ";

    /// <summary>The file's text, lines ending in <c>\n</c>. Sections without content are left out.</summary>
    /// <exception cref="ArgumentException">A kept stroke or a figure is not as its type asks.</exception>
    public static string Write(ArrangementFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{FirstWords} {Version}\n");
        Section(text, "brief", BriefText.Write(file.Brief));
        Section(text, "shown", file.Shown);
        Section(text, "kept", KeptText.Write(file.Brief.Kept));
        Section(text, "settled", SettledText.Write(file.Brief.Settled));
        Section(text, "figures", file.Figures.SelectMany(FigureLines));
        text.Append("tune\n").Append(file.Tune);
        return text.ToString();
    }

    /// <summary>
    /// Reads a file's text. The value is null, with at least one error, when any of it cannot be read; each error names
    /// its line and column. The tune is not looked into.
    /// </summary>
    public static Reading<ArrangementFile> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var faults = new TextFaults();
        var file = Read(text, faults);
        return new(faults.Any ? null : file, faults.ToValueList());
    }

    private static ArrangementFile? Read(string text, TextFaults faults)
    {
        if (text.Length > MostCharacters)
        {
            faults.Add(new(1, 1, ""), ArrangementTextMessages.TooLong(MostCharacters));
            return null;
        }
        var lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").Split('\n');
        if (!IsOurs(TextLine.Of(lines[0], 1), faults))
        {
            return null;
        }
        var sections = new Dictionary<string, List<int>>(StringComparer.Ordinal); // indices of their lines
        List<int>? section = null;
        for (var i = 1; i < lines.Length; i++)
        {
            var line = TextLine.Of(lines[i], i + 1);
            if (line.Text.Length == 0)
            {
                continue;
            }
            if (line.Column == 1 && line.Text == "tune")
            {
                return Joined(lines, sections, i + 1, faults);
            }
            if (line.Column == 1 && line.Text is "brief" or "shown" or "kept" or "settled" or "figures")
            {
                section = [];
                if (!sections.TryAdd(line.Text, section))
                {
                    faults.Add(line, ArrangementTextMessages.SectionTwice(line.Text));
                }
            }
            else if (line.Column == 1 || section is null)
            {
                faults.Add(line, ArrangementTextMessages.OutsideSection);
            }
            else
            {
                section.Add(i);
            }
        }
        faults.Add(new(lines.Length, 1, ""), ArrangementTextMessages.NoTune);
        return null;
    }

    private static bool IsOurs(TextLine first, TextFaults faults)
    {
        var version = first.VersionBehind(FirstWords);
        if (version != Version)
        {
            faults.Add(
                first,
                version > Version
                    ? ArrangementTextMessages.Newer(version.Value, Version)
                    : ArrangementTextMessages.NotOurs(first.Text)
            );
        }
        return version == Version;
    }

    private static ArrangementFile Joined(
        string[] lines,
        Dictionary<string, List<int>> sections,
        int tuneFrom,
        TextFaults faults
    )
    {
        IEnumerable<TextLine> Of(string name) =>
            sections.GetValueOrDefault(name, []).Select(i => TextLine.Of(lines[i], i + 1));
        var brief = BriefText.Read(Of("brief"), faults) with
        {
            Kept = KeptText.Read(Of("kept"), faults),
            Settled = sections.ContainsKey("settled") ? SettledText.Read(Of("settled"), faults) : null,
        };
        var figures = Figures(lines, sections.GetValueOrDefault("figures", []), faults);
        var tune = string.Join('\n', lines.Skip(tuneFrom));
        if (string.IsNullOrWhiteSpace(tune))
        {
            faults.Add(new(tuneFrom, 1, ""), ArrangementTextMessages.NoTune);
        }
        return new ArrangementFile(brief, figures, tune)
        {
            TuneLine = tuneFrom + 1,
            Shown = ShownText.Read(Of("shown"), faults),
        };
    }

    private static void Section(StringBuilder text, string name, IEnumerable<string> lines)
    {
        foreach (var (i, line) in lines.Index())
        {
            text.Append(i == 0 ? name + "\n" : "").Append(Indent).Append(line).Append('\n');
        }
    }

    private static IEnumerable<string> FigureLines(FigureText figure)
    {
        if (
            figure
                .Lines.Prepend(figure.Name)
                .FirstOrDefault(t => string.IsNullOrWhiteSpace(t) || t.Contains('\n', StringComparison.Ordinal)) is
            { } odd
        )
        {
            throw new ArgumentException($"'{odd}' is no line of a figure");
        }
        return figure.Lines.Select(line => Indent + line).Prepend("figure " + figure.Name);
    }

    // Lines further in than the figure's name belong to it, as they stand.
    private static ValueList<FigureText> Figures(string[] lines, List<int> indices, TextFaults faults)
    {
        var figures = new List<(string Name, List<string> Lines)>();
        if (indices.Count > MostFigureLines)
        {
            faults.Add(
                new(indices[MostFigureLines] + 1, 1, ""),
                ArrangementTextMessages.TooMany("lines of figures", MostFigureLines)
            );
            return [];
        }
        var indent = int.MaxValue;
        foreach (var index in indices)
        {
            var line = TextLine.Of(lines[index], index + 1);
            if (line.Column - 1 > indent)
            {
                figures[^1].Lines.Add(lines[index][Math.Min(line.Column - 1, indent + Indent.Length)..].TrimEnd());
                continue;
            }
            var (word, name) = line.Split();
            if (word != "figure" || name.Text.Length == 0)
            {
                faults.Add(
                    line,
                    word == "figure"
                        ? ArrangementTextMessages.FigureWithoutName
                        : ArrangementTextMessages.LineOutsideFigure
                );
                continue;
            }
            if (name.Text.Length > LongestName)
            {
                faults.Add(name, ArrangementTextMessages.TooLongName(LongestName));
            }
            if (figures.Exists(f => f.Name == name.Text))
            {
                faults.Add(name, ArrangementTextMessages.FigureTwice(name.Text));
            }
            figures.Add((name.Text, []));
            indent = line.Column - 1;
        }
        return figures.Select(f => new FigureText(f.Name, f.Lines.ToValueList())).ToValueList();
    }
}
