using Stridewright.Formats.Abc;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>Every claim is derived anew from the finished score, the plain tune and the hands, never from what the search
/// kept.</summary>
public sealed class ReasonTruthTests
{
    private static readonly double[] Spans = [185, 205, 230];

    [Fact]
    public void Every_reason_of_the_samples_is_true_at_all_levels_and_spans() => AssertTrue(Tunes.Samples, Spans);

    [Fact]
    public void Every_reason_of_outside_tunes_is_true_at_all_levels_and_spans() =>
        AssertTrue(
            [
                .. Corpus
                    .Files("corpus/abc", ".abc")
                    .Where((_, i) => i % 30 == 0)
                    .Select(f => AbcReader.Read(new StringReader(File.ReadAllText(f))).Value![0]),
            ],
            Spans
        );

    [Fact]
    public void Every_reason_is_true_where_harmony_is_rich_and_manners_are_asked_for()
    {
        var wish = new Brief
        {
            Harmony = new HarmonyWish { Richness = Richness.Rich },
            LeftManners = [LeftManner.WalkingOctaves, LeftManner.LowPedal, LeftManner.CadenceFigure],
            RightManners = [RightManner.Thirds, RightManner.Octaves, RightManner.CrushedNotes],
        };
        AssertTrue(Tunes.Samples, [205], wish);
    }

    private static void AssertTrue(IReadOnlyList<Tune> tunes, double[] spans, Brief? wish = null)
    {
        var faults = new List<string>();
        var claims = 0;
        foreach (var tune in tunes)
        {
            foreach (var span in spans)
            {
                var briefs = Enumerable
                    .Range(Brief.LowestLevel, Brief.HighestLevel)
                    .Select(level =>
                        (wish ?? new Brief()) with
                        {
                            LeftLevel = level,
                            RightLevel = level,
                            Hands = new PlayerHands { SpanMm = span },
                        }
                    );
                var set = briefs
                    .Select(b => Arranger.Arrange(tune, b, TestContext.Current.CancellationToken).Arrangement)
                    .OfType<Arrangement>()
                    .ToList();
                var levels = set.Select(a => new ScoreFacts(a.Score, a.Brief.Hands)).ToList();
                foreach (var (arrangement, facts) in set.Zip(levels))
                {
                    var check = new ClaimCheck(tune, arrangement, facts, levels);
                    foreach (var reason in Arranging.Reasons.Of(arrangement).SelectMany(b => b.Reasons))
                    {
                        claims++;
                        if (check.Fault(reason) is { } fault)
                        {
                            faults.Add(
                                $"{tune.Title} level {arrangement.Brief.LeftLevel} span {span} bar {reason.Bar}: "
                                    + $"\"{reason.Sentence}\": {fault}"
                            );
                        }
                    }
                }
            }
        }
        var summary = $"{faults.Count} of {claims} claims are false\n" + string.Join('\n', faults.Take(40));
        TestContext.Current.SendDiagnosticMessage(summary);
        Assert.True(claims > 1000, summary);
        Assert.True(faults.Count == 0, summary);
    }
}
