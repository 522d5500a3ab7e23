using System.Text;
using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;

namespace Stridewright.Workbench.Outputs;

/// <summary>Makes arrangement files.</summary>
internal static class SavedArrangement
{
    /// <summary>
    /// The bytes of a file with a tune and its brief. They are read back, so that nothing is saved which would be lost:
    /// null, with the reason, when something would.
    /// </summary>
    public static byte[]? Of(
        ITools tools,
        Tune tune,
        Brief brief,
        ValueList<FigureText> figures,
        out string problem,
        ValueList<string>? shown = null
    )
    {
        var text = ArrangementText.Write(
            new ArrangementFile(brief, figures, tools.ToAbc(tune)) { Shown = shown ?? [] }
        );
        var bytes = Encoding.UTF8.GetBytes(text);
        var reading = StoredArrangement.Read(tools, bytes);
        if (reading.Value is not { } back)
        {
            var fault = reading.Diagnostics.First(d => d.Severity == Severity.Error);
            problem = WorkbenchMessages.NotSaved(fault.ToString());
            return null;
        }
        problem =
            back.Tune != tune ? WorkbenchMessages.NotSaved(WorkbenchMessages.LostInAbc(Bar(tune, back.Tune)))
            : ArrangementText.Write(back.File) != text ? WorkbenchMessages.NotSaved(WorkbenchMessages.LostInBrief)
            : "";
        return problem.Length == 0 ? bytes : null;
    }

    // Number of the first bar that is lost; null: it is about the whole.
    private static string? Bar(Tune tune, Tune back) =>
        tune.Bars.Where((bar, i) => i >= back.Bars.Count || bar != back.Bars[i]).FirstOrDefault()?.Number;
}
