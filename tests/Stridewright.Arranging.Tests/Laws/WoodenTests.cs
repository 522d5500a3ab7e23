using Stridewright.Formats.Abc;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>
/// What sounded wooden in a trial arranger, each measured over the samples, and over every third tune of the corpus where
/// it is, in scores as they are written. The bounds hold what was measured; where printed music gives a figure it is
/// named.
/// </summary>
public sealed class WoodenTests
{
    private static readonly Lazy<IReadOnlyList<WoodenTune>> All = new(() => [.. Set(5)]);

    /// <summary>A filler on the key before it says nothing new; and not every downbeat drops into the chord. Printed rags:
    /// half of all moves of the top note are a step (34 rags, 3001 bars).</summary>
    [Fact]
    public void Fillers_seldom_repeat_a_key_and_do_not_always_drop_from_the_downbeat()
    {
        Assert.InRange(Share("fillers on the key before", t => t.FillersThatRepeat), 0, 0.02);
        Assert.InRange(Share("fillers a third to a sixth under the downbeat", t => t.FillersThatDrop), 0.3, 0.8);
    }

    [Fact]
    public void Long_notes_sound_on_above_what_fills_them() =>
        Assert.InRange(Share("long notes cut", t => t.LongNotesCut), 0, 0.08);

    /// <summary>One hand fills where the tune holds or rests, not both (common practice).</summary>
    [Fact]
    public void Phrase_ends_breathe_and_last_bars_close()
    {
        var ends = Share("fillers in a bar that ends a phrase", t => t.FillersAtPhraseEnds);
        var others = Share("fillers in another bar", t => t.FillersElsewhere);
        Assert.True(ends < others, $"{ends} and {others}");
        Assert.InRange(Share("phrase ends that breathe", t => t.Breathing), 0.65, 1);
        Assert.InRange(Share("phrase ends that both hands fill", t => t.BothFill), 0, 0.06);
        Assert.InRange(Share("closing bars", t => t.ClosingBars), 0.95, 1);
    }

    [Fact]
    public void Left_hand_bars_are_not_alike_for_a_whole_phrase() =>
        Assert.InRange(Share("phrases of one left-hand figure", t => t.LeftPhrasesAlike), 0, 0.03);

    [Fact]
    public void The_fifth_does_not_lie_under_a_downbeat_but_in_a_line() =>
        Assert.InRange(Share("fifths under downbeats", t => t.FifthsUnderDownbeats), 0, 0.02);

    [Fact]
    public void A_run_leads_by_step_into_what_follows() =>
        Assert.InRange(Share("stray notes of runs", t => t.StrayRuns), 0, 0);

    [Fact]
    public void Dotted_figures_are_ragged() => Assert.InRange(Share("dotted figures kept", t => t.DottedKept), 0, 0.1);

    /// <summary>Printed rags: 63 % of downbeats and 51 % of second beats are thick, 27 % of the sixteenth after the
    /// downbeat.</summary>
    [Fact]
    public void Textures_thicken_on_accents()
    {
        var accents = Share("thick on accents", t => t.ThickOnAccents);
        var others = Share("thick elsewhere", t => t.ThickElsewhere);
        Assert.True(accents >= 1.3 * others, $"{accents} and {others}");
    }

    [Fact]
    public void Eight_bars_do_not_return_to_the_letter()
    {
        Assert.InRange(Share("returns to the letter, both hands", t => t.EightBarsVerbatim), 0, 0.03);
        Assert.InRange(Share("returns to the letter, right hand", t => t.EightBarsVerbatimRight), 0, 0.03);
    }

    private static double Share(string what, Func<WoodenTune, (int Some, int All)> of)
    {
        var (some, all) = (All.Value.Sum(t => of(t).Some), All.Value.Sum(t => of(t).All));
        TestContext.Current.TestOutputHelper?.WriteLine($"{what}: {some} of {all}, {(double)some / all:0.000}");
        Assert.True(all > 0, what);
        return (double)some / all;
    }

    private static IEnumerable<WoodenTune> Set(int level)
    {
        var corpus = Corpus
            .FilesIfThere("corpus/abc", ".abc")
            .Where((_, i) => i % 3 == 0)
            .Select(p => AbcReader.Read(new StringReader(File.ReadAllText(p))).Value![0]);
        foreach (var tune in Tunes.Samples.Concat(corpus))
        {
            var brief = new Brief
            {
                LeftLevel = level,
                RightLevel = level,
                Hands = new PlayerHands { SpanMm = 230 },
            };
            if (Arranger.Arrange(tune, brief).Arrangement is { } arrangement)
            {
                var plain = Unfolding.WithRepeatStarts(Unfolding.BySectionOrder(tune));
                var metre = Feels.MainMetre(plain);
                var lattice = new Setting(plain, brief, Feels.For(metre), metre, Prices.Standard).Plan().Lattice;
                Assert.Equal(lattice.Bars.Length, arrangement.Score.Bars.Count);
                yield return new WoodenTune(lattice, Sheets.Of(arrangement.Score));
            }
        }
    }
}
