using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Practice.Tests.Takes;

namespace Stridewright.Practice.Tests;

/// <summary>Faults put into a take on purpose, and what is measured of them: within 5 ms or 3 %.</summary>
public sealed class TimingFaultTests
{
    private const double Quarter = 0.5; // seconds
    private const double Percent = 0.03;
    private const double Milliseconds = 0.005;

    private static readonly ExpectedScore Stride = Played.Stride(16);

    private static double Even(ExpectedNote note) => 1 + Quarter * note.Beats;

    private static TakeReport Hear(ExpectedScore score, Func<ExpectedNote, double> onset) =>
        Listener.Hear(Aligner.Align(score, Played.Take(score, onset)));

    [Fact]
    public void An_even_take_has_no_remark()
    {
        var report = Hear(Stride, Even);
        Assert.Empty(report.All);
        Assert.Equal(120, report.QuartersPerMinute!.Value, 3);
        Assert.Equal(0, report.LeftHand.Unevenness!.Value, 6);
        Assert.Equal(1, report.Ragging.MeanShare!.Value, 6);
    }

    [Theory]
    [InlineData(0.06)]
    [InlineData(0.1)]
    [InlineData(0.16)]
    public void Unevenness_of_the_left_hand(double share)
    {
        // Steps by turns longer and shorter by a share: the standard deviation is that share, here with the two degrees
        // of freedom that the trend takes.
        var report = Hear(Stride, n => Even(n) + (n.Hand == Hand.Left && (int)n.Beats % 2 == 1 ? share * Quarter : 0));
        Assert.Equal(share * Math.Sqrt(7 / 5.0), report.LeftHand.Unevenness!.Value, 0.03 * share + 0.004);
        Assert.Equal(share > 0.08, report.All.Any(r => r.Kind == RemarkKind.Unevenness));
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(-0.12)]
    public void Drift(double drift)
    {
        // The tempo changes evenly, in its logarithm, from the first bar to the last.
        var rate = Math.Log(1 + drift) / 60; // a quarter; fifteen bars from the middle of the first to that of the last
        var report = Hear(Stride, n => 1 + Quarter * (1 - Math.Exp(-rate * n.Beats)) / rate);
        // The last bar is left out: fourteen of the fifteen steps.
        Assert.Equal(
            Math.Pow(1 + drift, 14 / 15.0) - 1,
            report.LeftHand.Drift!.Value,
            Percent * Math.Abs(drift) + 0.001
        );
        Assert.Contains(report.All, r => r.Kind == RemarkKind.Drift);
    }

    [Theory]
    [InlineData(0.05)]
    [InlineData(0.08)]
    [InlineData(0.15)]
    public void Chords_that_are_not_together(double seconds)
    {
        var report = Hear(Stride, n => Even(n) + (n is { Key: 60, Bar: 5, Hand: Hand.Left } ? seconds : 0));
        var remarks = report.All.Where(r => r.Kind == RemarkKind.Spread).ToList();
        Assert.Equal(seconds > 0.06 ? 1 : 0, remarks.Count);
        Assert.All(remarks, r => Assert.Equal((5, seconds), (r.FirstBar, r.Measured), Near));
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.6)]
    [InlineData(1.5)]
    public void A_hesitation(double beats)
    {
        var report = Hear(Stride, n => Even(n) + (n.Beats >= 30 ? beats * Quarter : 0));
        var remarks = report.All.Where(r => r.Kind == RemarkKind.Hesitation).ToList();
        Assert.Equal(beats > 0.3 ? 1 : 0, remarks.Count);
        Assert.All(remarks, r => Assert.Equal((7, beats), (r.FirstBar, r.Measured), Near));
    }

    [Theory]
    [InlineData(1.0, 0)]
    [InlineData(0.8, 0)]
    [InlineData(0.3, 1)]
    [InlineData(0.0, 1)]
    public void Anticipations_that_fall_onto_the_beat(double share, int flattened)
    {
        // The note at the half of the first beat is held through the second.
        static bool IsEarly(ExpectedNote n) => n.Hand == Hand.Right && n.At == Played.Time(0.5);
        var report = Hear(Stride, n => Even(n) + (IsEarly(n) ? (1 - share) * Quarter / 2 : 0));
        Assert.Equal(16, report.Ragging.Count);
        Assert.Equal(share, report.Ragging.MeanShare!.Value, Percent);
        Assert.Equal(flattened * 16, report.Ragging.Flattened);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(1.7)]
    [InlineData(2.0)]
    public void Swing_is_measured_against_what_is_asked(double ratio)
    {
        var score = Played.Stride(16, swing: (17, 10));
        var late = ratio / (1 + ratio) - 0.5;
        var report = Hear(score, n => Even(n) + (n.Hand == Hand.Right && n.Beats % 1 != 0 ? late * Quarter : 0));
        Assert.Equal(1.7, report.Swing.Asked, 6);
        Assert.Equal(ratio, report.Swing.Played!.Value, Percent * ratio);
        Assert.Equal(ratio < 1.2, report.All.Any(r => r.Kind == RemarkKind.Swing));
    }

    [Fact]
    public void A_missed_leap_is_told_with_how_far()
    {
        // The first bass of bar 3 is reached by a leap down from the chord.
        var take = Played.Take(Stride, Even, n => n is { Bar: 2, Beats: 8, Hand: Hand.Left } ? n.Key - 2 : n.Key);
        var report = Listener.Hear(Aligner.Align(Stride, take));
        var remark = Assert.Single(report.All);
        Assert.Equal((RemarkKind.Leap, 2, 2.0), (remark.Kind, remark.FirstBar, remark.Measured));
        Assert.Contains("a whole tone too low", remark.Message, StringComparison.Ordinal);
        Assert.Equal(1, report.Bars[2].Wrong);
    }

    [Fact]
    public void A_slower_tempo_and_a_ritardando_are_no_hesitations()
    {
        var slower = Hear(Stride, n => n.Beats < 32 ? Even(n) : 1 + Quarter * 32 + 1.5 * Quarter * (n.Beats - 32));
        Assert.DoesNotContain(slower.All, r => r.Kind == RemarkKind.Hesitation);
        var end = Hear(Stride, n => Even(n) + (n.Beats > 56 ? 0.02 * (n.Beats - 56) * (n.Beats - 56) : 0));
        Assert.DoesNotContain(end.All, r => r.Kind == RemarkKind.Hesitation);
    }

    [Fact]
    public void Every_limit_names_its_source()
    {
        Assert.All(Thresholds.All, t => Assert.False(string.IsNullOrWhiteSpace(t.Source)));
        var declared = typeof(Thresholds).GetFields().Where(f => f.FieldType == typeof(Threshold));
        Assert.Equal(declared.Select(f => f.GetValue(null)), Thresholds.All);
    }

    private static bool Near((int Bar, double Value) a, (int Bar, double Value) b) =>
        a.Bar == b.Bar && Math.Abs(a.Value - b.Value) <= Math.Max(Milliseconds, Percent * a.Value);
}
