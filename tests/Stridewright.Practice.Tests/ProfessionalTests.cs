using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Practice.Tests.Takes;

namespace Stridewright.Practice.Tests;

public sealed class ProfessionalTests(ITestOutputHelper output)
{
    // The melody leads by about 30 ms (Goebl 2001), onsets vary by about 10 ms (from memory), chords lie within 30 ms, and
    // the tempo breathes by less than what counts as drift: common practice.
    private static readonly TakeWishes Professional = new()
    {
        Quarter = 0.65,
        Curve = 0.05,
        Jitter = 0.01,
        Spread = 0.012,
        HandsApart = 0.03,
    };

    [Fact]
    public void A_professional_is_left_in_peace()
    {
        var (bars, remarked) = (0, 0);
        var kinds = new List<RemarkKind>();
        for (var seed = 0; seed < 13; seed++)
        {
            var made = MadeTake.Of(Pieces.Whole[seed % Pieces.Whole.Count], Professional, seed);
            var report = Listener.Hear(Aligner.Align(made.Score, made.Take));
            bars += report.Bars.Count;
            remarked += report
                .All.SelectMany(r => Enumerable.Range(r.FirstBar, r.LastBar - r.FirstBar + 1))
                .Distinct()
                .Count();
            kinds.AddRange(report.All.Select(r => r.Kind));
        }
        output.WriteLine($"{remarked} of {bars} bars: {string.Join(", ", kinds.CountBy(k => k))}");
        Assert.True(remarked <= 0.05 * bars);
    }
}
