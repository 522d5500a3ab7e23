using Stridewright.Arranging;
using Stridewright.Hands;

namespace Stridewright.Workbench;

/// <summary>A setting that may leave: nothing does that the judge has not passed, whoever made it.</summary>
internal sealed record Passed(Arrangement Arrangement, Verdict Verdict)
{
    /// <summary>Null, with the place and the reason, for what was refused or cannot be played.</summary>
    public static Passed? Of(ITools tools, ArrangeResult result, out string place, out string reason)
    {
        (place, reason) = (result.Refusal?.Place.ToString() ?? "", result.Refusal?.Message ?? "");
        if (result.Arrangement is not { } arrangement)
        {
            return null;
        }
        var verdict = tools.Judge(arrangement.Score, arrangement.Brief.Hands, null);
        if (verdict.Faults is [var first, ..])
        {
            (place, reason) = (first.Place, WorkbenchMessages.NotPassed(verdict.Faults.Count, first.Message));
            return null;
        }
        return new(arrangement, verdict);
    }
}
