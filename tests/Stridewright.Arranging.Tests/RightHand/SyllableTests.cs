using Stridewright.Music;

namespace Stridewright.Arranging.Tests.RightHand;

/// <summary>Stressed syllables and what they do to the ragging.</summary>
public sealed class SyllableTests
{
    // Source: a dictionary's stress marks for the longer words, common practice of verse for the others.
    [Theory]
    [InlineData("M:4/4\nL:1/4", "CDEF|GFED|\nw:The fer-ry bell has rung a-gain", "-+-+ -+-+")]
    [InlineData("M:4/4\nL:1/4", "F|CDEF|G4|\nw:And lan-terns a-long the", "- +--+ -")]
    [InlineData("M:4/4\nL:1/8", "CDEFGFED|\nw:late boats come home out-side the town", "+-+- +---")]
    [InlineData("M:4/4\nL:1/4", "CDEF|G4|\nw:Stay_ a- * shore", "+.-. +")]
    public void Stress_follows_the_word_and_the_beat(string head, string body, string wanted)
    {
        var stresses = Stresses.Of(Tunes.Abc(head + "\nK:C", body));
        var found = string.Concat(
            stresses.Select(s =>
                s switch
                {
                    Stress.Strong => '+',
                    Stress.Weak => '-',
                    _ => '.',
                }
            )
        );
        Assert.Equal(wanted.Replace(" ", "", StringComparison.Ordinal), found);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(3)]
    public void More_anticipations_fall_on_stressed_syllables(int level)
    {
        var (with, without) = (Share(level, RagWeights.Standard.Syllable), Share(level, 0));
        Assert.True(with > without + 0.15, $"{with:0.000} against {without:0.000}");
    }

    [Fact]
    public void Words_do_not_rag_a_tune_less()
    {
        var (with, without) = (Count(5, RagWeights.Standard.Syllable).Sum(), Count(5, 0).Sum());
        Assert.InRange(with, 0.8 * without, 1.25 * without);
    }

    [Fact]
    public void A_tune_without_words_is_ragged_the_same()
    {
        foreach (var tune in Tunes.Samples)
        {
            var bare = Without(tune);
            Assert.Equal(Onsets(bare, 5, 1, 0), Onsets(bare, 5, 1, RagWeights.Standard.Syllable));
        }
    }

    private static double Share(int level, long price)
    {
        var (strong, weak) = (Count(level, price)[1], Count(level, price)[0]);
        return (double)strong / (strong + weak);
    }

    // Early notes on weak and on strong syllables.
    private static int[] Count(int level, long price)
    {
        var counts = new int[2];
        foreach (var tune in Tunes.Samples.Where(t => t.Bars.Any(b => b.Notes.Any(n => n.Lyrics.Count > 0))))
        {
            for (var seed = 1; seed <= 4; seed++)
            {
                var (lattice, onsets) = Onset(tune, level, seed, price);
                foreach (var onset in onsets.Where(o => !o.IsFiller && o.Tick < lattice.Notes[o.Tune].Start))
                {
                    var stress = lattice.Notes[onset.Tune].Stress;
                    counts[stress == Stress.Strong ? 1 : 0] += stress == Stress.None ? 0 : 1;
                }
            }
        }
        return counts;
    }

    private static RightOnset[] Onsets(Tune tune, int level, int seed, long price) =>
        Onset(tune, level, seed, price).Onsets;

    private static (Lattice Lattice, RightOnset[] Onsets) Onset(Tune tune, int level, int seed, long price)
    {
        var brief = new Brief { RightLevel = level, Seed = seed };
        var prices = Prices.Standard with { Ragging = RagWeights.Standard with { Syllable = price } };
        var metre = Feels.MainMetre(tune);
        var lattice = new Setting(tune, brief, Feels.For(metre), metre, prices).Plan().Lattice;
        return (lattice, Ragging.Solve(lattice, brief, prices.Ragging, CancellationToken.None).Onsets);
    }

    private static Tune Without(Tune tune) =>
        tune with
        {
            Bars = tune
                .Bars.Select(b => b with { Notes = b.Notes.Select(n => n with { Lyrics = [] }).ToValueList() })
                .ToValueList(),
        };
}
