using Stridewright.Music;

namespace Stridewright.Sound.Tests;

public sealed class SignalTests
{
    private const double Rate = 48_000;

    [Theory]
    [InlineData(110)]
    [InlineData(1000)]
    [InlineData(9000)]
    [InlineData(15_000)]
    public void A_tone_within_the_band_is_the_same_tone_at_the_new_rate(double hertz)
    {
        var step = Rate / Wav.Rate;
        var output = new Resampler(step).Resample(Tone(hertz), 20_000);
        for (var i = 100; i < output.Length - 100; i++)
        {
            Assert.Equal(Math.Sin(2 * Math.PI * hertz * i / Wav.Rate), output[i], 2e-3);
        }
    }

    [Theory]
    [InlineData(22_600)]
    [InlineData(23_500)]
    public void A_tone_above_the_new_half_rate_is_taken_away(double hertz)
    {
        var output = new Resampler(Rate / Wav.Rate).Resample(Tone(hertz), 20_000);
        Assert.True(output[100..^100].Max(Math.Abs) < 1e-3, "it comes back as an alias");
    }

    [Fact]
    public void What_stays_below_the_ceiling_passes_unchanged_and_what_does_not_is_held()
    {
        var limiter = new Limiter(0.9f, Wav.Rate);
        var quiet = Stereo(i => 0.8f * (float)Math.Sin(i * 0.05), 20_000);
        var passed = quiet.ToArray();
        limiter.Process(passed);
        Assert.Equal(quiet.SkipLast(2 * limiter.Delay), passed.Skip(2 * limiter.Delay));
        var loud = Stereo(i => (i > 5000 ? 3 : 0.5f) * (float)Math.Sin(i * 0.05), 20_000);
        limiter.Process(loud);
        Assert.InRange(loud.Max(Math.Abs), 0.85f, 0.9f);
    }

    [Fact]
    public void A_string_is_damped_with_its_key_with_the_pedal_or_when_it_is_struck_again()
    {
        var performance = Sounding.Of((0, 0.5, 60, 80), (0, 0.5, 64, 80), (1.5, 0.5, 60, 80)) with
        {
            Pedal =
            [
                new PedalChange(Sounding.TicksPerSecond / 4, true),
                new PedalChange(3 * Sounding.TicksPerSecond, false),
            ],
            EndTick = 4 * Sounding.TicksPerSecond,
        };
        Assert.Equal(
            [(60, 0.0, 0.5, 1.5), (64, 0.0, 0.5, 3.0), (60, 1.5, 2.0, 3.0)],
            Ringing.Of(performance).Select(r => (r.Stroke.Key, r.Start, r.Lifted, r.Damped))
        );
    }

    [Fact]
    public void Seconds_are_those_of_the_tempo_map()
    {
        var performance = Sounding.Of((0, 1, 60, 80)) with
        {
            Tempi = [new TempoChange(0, 500_000), new TempoChange(480, 1_000_000), new TempoChange(1440, 250_000)],
        };
        var clock = new TickClock(performance);
        Assert.All(
            [0, 1, 480, 700, 1440, 5000],
            tick => Assert.Equal(performance.SecondsAt(tick), clock.Seconds(tick), 9)
        );
    }

    private static float[] Tone(double hertz) =>
        [.. Enumerable.Range(0, 24_000).Select(i => (float)Math.Sin(2 * Math.PI * hertz * i / Rate))];

    private static float[] Stereo(Func<int, float> sample, int frames) =>
        [.. Enumerable.Range(0, frames).SelectMany(i => new[] { sample(i), sample(i) / 2 })];
}
