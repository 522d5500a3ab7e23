using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Finds the bars that ask most of the hands: each is judged alone, at the tempo in force there.</summary>
internal static class HardestBars
{
    private const int Count = 3;
    private const double UsualQuartersPerMinute = 100;

    public static ValueList<HardBar> Of(ITools tools, Score score, PlayerHands hands)
    {
        double tempo = UsualQuartersPerMinute;
        var bars = new List<HardBar>();
        foreach (var bar in score.Bars)
        {
            tempo = bar.Directions.Select(d => d.QuartersPerMinute).LastOrDefault(t => t is not null) ?? tempo;
            if (!bar.Implicit)
            {
                var alone = score with { Bars = [Alone(bar)] };
                bars.Add(new HardBar(bar.Number, tools.Judge(alone, hands, tempo).Effort.Overall));
            }
        }
        return bars.OrderByDescending(bar => bar.Effort).Take(Count).ToValueList();
    }

    // Without its neighbours a bar has neither repeats nor ties to them.
    private static ScoreBar Alone(ScoreBar bar) =>
        bar with
        {
            Marks = BarMarks.None,
            Voices = bar.Voices.Select(v => v with { Events = Untied(v.Events) }).ToValueList(),
        };

    private static ValueList<ScoreEvent> Untied(ValueList<ScoreEvent> events) =>
        events
            .Select(
                (e, i) =>
                    i > 0 && i < events.Count - 1
                        ? e
                        : e with
                        {
                            Notes = e
                                .Notes.Select(n =>
                                    n with
                                    {
                                        TieStop = n.TieStop && i > 0,
                                        TieStart = n.TieStart && i < events.Count - 1,
                                    }
                                )
                                .ToValueList(),
                        }
            )
            .ToValueList();
}
