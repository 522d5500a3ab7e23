using Stridewright.Workbench.Reports;

namespace Stridewright.Cli.Output;

/// <summary>What a run chose and how hard it is, as text: at length for one tune, a line each for several.</summary>
internal static class ArrangeSummary
{
    private const int MostRemarks = 24;

    public static void Write(TextWriter output, ArrangeReport report)
    {
        if (report.Written.Count == 1)
        {
            WriteOne(output, report.Written[0]);
        }
        foreach (var tune in report.Written.Count > 1 ? report.Written.AsEnumerable() : [])
        {
            output.WriteLine(CliMessages.OneLine(CliMessages.TuneInALine(tune)));
            if (tune.Adds is { } adds)
            {
                output.WriteLine("  " + adds);
            }
            WriteWhy(output, tune);
        }
        if (report.Written.Count + report.Problems.Count > 1)
        {
            output.WriteLine();
            output.WriteLine(CliMessages.Counts(report));
        }
        if (report.Written.Count > 0)
        {
            output.WriteLine();
            output.WriteLine(CliMessages.Copyright);
        }
    }

    private static void WriteOne(TextWriter output, WrittenTune tune)
    {
        var setting = tune.Setting;
        output.WriteLine(CliMessages.OneLine(CliMessages.TuneOfFile(tune)));
        Row("setting", CliMessages.SettingOf(setting));
        Row("levels", CliMessages.LevelsOf(setting));
        Row("hands", CliMessages.HandsOf(setting.Hands));
        Row("length", CliMessages.LengthOf(setting));
        if (setting.Form is { } form)
        {
            Row("form", form);
        }
        if (setting.Voice is { } voice)
        {
            Row("voice", CliMessages.VoiceOf(voice));
        }
        else if (!setting.LeftHandOnly)
        {
            Row("tune", CliMessages.SurvivalOf(setting.Tune));
        }
        EffortRows.Write(Row, setting.Effort);
        if (setting.HardestBars.Count > 0)
        {
            Row("hardest", CliMessages.HardestOf(setting.HardestBars));
        }
        var remarks = CliMessages.Gathered(tune.Reading.Concat(setting.Remarks));
        foreach (var remark in remarks.Take(MostRemarks))
        {
            Row(remark.Severity, CliMessages.RemarkOf(remark));
        }
        if (remarks.Count > MostRemarks)
        {
            Row("", CliMessages.MoreRemarks(remarks.Count - MostRemarks));
        }
        foreach (var file in tune.Outputs)
        {
            Row(file.Unchanged ? "unchanged" : "written", file.Path);
        }
        WriteWhy(output, tune);
        void Row(string name, string text) => output.WriteLine(CliMessages.Row(name, text));
    }

    // A limit that binds in many bars is told once.
    private static void WriteWhy(TextWriter output, WrittenTune tune)
    {
        if (tune.Reasons.Count > 0)
        {
            output.WriteLine(CliMessages.Row("why", ""));
        }
        var limits = new HashSet<string>();
        foreach (var bar in tune.Reasons)
        {
            var number = bar.Bar;
            foreach (var why in bar.Reasons.Where(w => w.Kind != "limit" || limits.Add(w.Message)))
            {
                output.WriteLine(CliMessages.WhyRow(number, why.Message));
                number = "";
            }
        }
    }
}

/// <summary>Effort as rows of a summary.</summary>
internal static class EffortRows
{
    public static void Write(Action<string, string> row, EffortReport effort)
    {
        row("effort", CliMessages.EffortOf(effort));
        // A hand that plays nothing has no row.
        foreach (var (name, hand) in new[] { ("  right", effort.Right), ("  left", effort.Left) })
        {
            if (hand.StrokesPerSecond > 0)
            {
                row(name, CliMessages.HandOf(hand));
            }
        }
    }
}
