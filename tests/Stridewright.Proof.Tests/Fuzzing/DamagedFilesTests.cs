using CsCheck;
using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;
using Stridewright.Trials;

namespace Stridewright.Proof.Tests.Fuzzing;

/// <summary>
/// A short run of the damage that the trials do for hours: the samples, damaged in keeping with their format, are read or
/// refused with a reason, and what was read is arranged or refused.
/// </summary>
public sealed class DamagedFilesTests
{
    public static TheoryData<string> Formats => new(FuzzFormat.All.Select(f => f.Name));

    [Theory]
    [MemberData(nameof(Formats))]
    public void Damaged_samples_are_read_and_arranged_or_refused(string name)
    {
        var format = FuzzFormat.All.Single(f => f.Name == name);
        var files = Samples(format);
        Gen.Int[0, int.MaxValue - 1]
            .Sample(
                seed =>
                {
                    var random = new Random(seed);
                    var file = files[random.Next(files.Count)];
                    var tunes = format.Read(format.Damage(file, files[random.Next(files.Count)], random));
                    if (tunes.Count > 0 && seed % 8 == 0)
                    {
                        AssertArranged(tunes[random.Next(tunes.Count)], random);
                    }
                },
                iter: 400,
                threads: 1
            );
    }

    [Fact]
    public void The_same_seed_does_the_same_damage()
    {
        foreach (var format in FuzzFormat.All)
        {
            var files = Samples(format);
            Assert.Equal(
                format.Damage(files[0], files[^1], new Random(5)),
                format.Damage(files[0], files[^1], new Random(5))
            );
        }
    }

    private static void AssertArranged(Tune tune, Random random)
    {
        var brief = new Brief
        {
            LeftLevel = random.Next(Brief.LowestLevel, Brief.HighestLevel + 1),
            RightLevel = random.Next(Brief.LowestLevel, Brief.HighestLevel + 1),
            Raggedness = random.NextDouble(),
        };
        var result = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);
        Assert.NotEqual(result.Arrangement is null, result.Refusal is null);
        Assert.True(result.Arrangement is null || Judge.Check(result.Arrangement.Score, brief.Hands).IsPlayable);
    }

    private static List<byte[]> Samples(FuzzFormat format) =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(Corpus.CheckoutRoot, "samples"), "*", SearchOption.AllDirectories)
                .Where(f => format.Endings.Contains(Path.GetExtension(f)))
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes),
        ];
}
