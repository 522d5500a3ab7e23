using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>A judgement as text.</summary>
internal static class CheckSummary
{
    public static void Write(TextWriter output, CheckReport report)
    {
        if (report.Score is not { } score)
        {
            return;
        }
        output.WriteLine(CliMessages.OneLine(CliMessages.JudgedTitle(report.File, score)));
        output.WriteLine(CliMessages.Judgement(score));
        output.WriteLine();
        Row("hands", CliMessages.HandsOf(score.Hands));
        Row("tempo", CliMessages.TempoOf(score));
        EffortRows.Write(Row, score.Effort);
        WhatIfs(score, Row);
        foreach (var remark in score.Reading)
        {
            Row(remark.Severity, CliMessages.RemarkOf(remark));
        }
        foreach (var drawing in score.Drawings)
        {
            Row("drawn", drawing.Path);
        }
        if (score.Spots.Count > 0)
        {
            output.WriteLine();
        }
        foreach (var spot in score.Spots)
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.SpotOf(spot)));
        }
        foreach (var source in score.Cautions.GroupBy(c => c.Source))
        {
            output.WriteLine();
            output.WriteLine(CliMessages.CautionsOf(source.Key));
            foreach (var caution in source)
            {
                output.WriteLine(CliMessages.OneLine("  " + caution.Sentence));
            }
        }
        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, text));
    }

    // The parts of the effort, the hardest bars, and what would make it easier.
    private static void WhatIfs(JudgedScore score, Action<string, string> row)
    {
        foreach (var (name, hand) in new[] { ("right", score.Effort.Right), ("left", score.Effort.Left) })
        {
            if (hand.Parts.Count > 0)
            {
                row("parts", CliMessages.PartsOf(name, hand));
            }
        }
        foreach (var hard in score.Hardest)
        {
            row("hard", CliMessages.HardOf(hard));
        }
        if (score.Comfortable is { } comfortable)
        {
            row("comfort", CliMessages.ComfortOf(comfortable));
        }
        row("span", CliMessages.NeedOf("right", score.RightSpan));
        row("", CliMessages.NeedOf("left", score.LeftSpan));
        row("change", CliMessages.ChangeOf(score.Change, score.Spots.Count > 0));
    }
}
