using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>Puts a fingering into the plain words and numbers of a report.</summary>
internal static class FingersOf
{
    private const int Decimals = 2;

    public static FingeredFile Report(
        string file,
        FingeredScore made,
        PlayerHands hands,
        ValueList<Diagnostic> findings,
        ValueList<WrittenFile> outputs
    )
    {
        var keys = made.Onsets.SelectMany(o => o.Keys).Where(k => !k.IsHeld).ToList();
        var notes = made.Score.Bars.SelectMany(b => b.Voices).SelectMany(v => v.Events).SelectMany(e => e.Notes);
        return new()
        {
            File = file,
            Title = made.Score.Title,
            Outputs = outputs,
            Hands = ReportOf.Hands(hands),
            Bars = ReportOf.CountedBars(made.Score),
            Notes = keys.Count,
            Fingered = keys.Count(k => k.Finger is not null),
            Printed = notes.Count(n => n.Finger is not null),
            Costs = Costs(made),
            Remarks = made.Remarks.Select(ReportOf.Remark).ToValueList(),
            Reading = findings.Select(ReportOf.Remark).ToValueList(),
        };
    }

    private static ValueList<FingeredBar> Costs(FingeredScore made) =>
        made
            .Onsets.GroupBy(o => (o.Bar, o.Hand))
            .OrderBy(g => g.Key)
            .Select(g => new FingeredBar(
                made.Score.Bars[g.Key.Bar].Number,
                g.Key.Hand == Hand.Right ? "right" : "left",
                Rounded(g.Sum(o => o.Cost)),
                g.SelectMany(o => o.Terms)
                    .GroupBy(t => t.Term, t => t.Points)
                    .OrderByDescending(t => t.Sum())
                    .ThenBy(t => t.Key)
                    .Select(t => new FingeringTerm(
                        CostTerms.WordsOf(t.Key),
                        Rounded(t.Sum()),
                        CostTerms.SourceOf(t.Key)
                    ))
                    .ToValueList()
            ))
            .ToValueList();

    private static double Rounded(double cost) => Math.Round(cost, Decimals);
}
