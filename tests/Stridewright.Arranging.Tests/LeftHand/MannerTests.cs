using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.LeftHand;

/// <summary>Asked manners of either hand, found again in the score as it is written: by their definitions in
/// <see cref="Vocabulary"/> (common practice), on every sample.</summary>
public sealed class MannerTests
{
    private const int Least = 3,
        Short = 40;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>Words whose every asked bar must be as asked or told.</summary>
    private static readonly string[] Strict =
    [
        "walking-octaves",
        "walking-tenths",
        "chromatic-approach",
        "back-beat-tenths",
        "broken-tenths",
        "cadence-figure",
        "left-silent",
        "thirds",
        "sixths",
        "octaves",
        "full-octaves",
        "right-silent",
        "thumb-tune",
        "obbligato",
        "three-against-four",
        "parallel-run",
    ];

    public static TheoryData<string> Words => [.. Manners.Left.Keys.Concat(Manners.Right.Keys)];

    public static TheoryData<string, int> StrictWords =>
        [.. Strict.SelectMany(w => new[] { 185, 205, 230 }.Select(s => (w, s)))];

    [Theory]
    [MemberData(nameof(Words))]
    public void Large_hands_play_each_manner_on_three_samples_at_least(string word)
    {
        int samples = 0,
            bars = 0,
            asked = 0;
        foreach (var tune in Tunes.Samples.Where(t => t.Bars.Count <= Short))
        {
            var (arrangement, sheet, mine) = Set(tune, word, 230);
            Assert.True(arrangement.Verdict.IsPlayable);
            var found = mine.Count(i => Vocabulary.Has(word, sheet, i) == true);
            samples += found > 0 ? 1 : 0;
            (bars, asked) = (bars + found, asked + mine.Count);
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{word}: {bars} of {asked} bars, {samples} samples");
        Assert.True(samples >= Least, $"{word}: {bars} of {asked} bars, {samples} samples");
    }

    [Theory]
    [MemberData(nameof(StrictWords))]
    public void A_bar_is_as_asked_or_it_is_told(string word, int span)
    {
        foreach (var tune in Tunes.Samples.Where(t => t.Bars.Count <= Short))
        {
            var (arrangement, sheet, mine) = Set(tune, word, span);
            var told = arrangement.FellBack.Where(f => f.Word == word).SelectMany(f => f.Bars).ToHashSet();
            foreach (var i in mine.Where(i => Vocabulary.Has(word, sheet, i) != true))
            {
                // None of the tune is struck there.
                var isEmpty =
                    Manners.Right.ContainsKey(word) && !sheet[i].Right.Concat(sheet[i].Left).Any(s => s.Is("tune"));
                Assert.True(
                    told.Contains(sheet[i].Number) || isEmpty,
                    $"{tune.Title}, bar {sheet[i].Number}: {word}, and nothing is told"
                );
            }
        }
    }

    [Fact]
    public void What_falls_back_is_told_by_its_word_and_bars()
    {
        // A tune that never holds has no room for an answer.
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"cdef|gfed|\"G7\"dcBA|\"C\"GABc|cdef|gfed|\"G7\"dcBA|\"C\"c4|]");
        var made = Arranger.Arrange(tune, new Brief { RightManners = [RightManner.Answer] }, Cancel).Arrangement!;
        var fell = Assert.Single(made.FellBack);
        Assert.Equal("answer", fell.Word);
        Assert.Equal(7, fell.Asked);
        Assert.Equal(["1", "2", "3", "4", "5", "6", "7"], fell.Bars);
        Assert.Contains(made.Notes, n => n.Message.StartsWith("answer: 7 of 7 bars", StringComparison.Ordinal));
    }

    [Fact]
    public void A_tune_in_the_thumb_is_held_over_a_bar_that_strikes_none_of_it()
    {
        var tune = Tunes.Abc("M:4/4\nL:1/8\nK:C", "\"C\"c2e2g>ec2|g8|\"G7\"d2f2g>ed2|d8|\"C\"g2e2c>ec2|c8|]");
        var (made, bars, _) = Set(tune, "thumb-tune", 230);
        Assert.True(made.Verdict.IsPlayable);
        Assert.Contains(bars, b => b.Left.Count > 0 && !b.Left.Any(s => s.Is("tune")));
        Assert.All(bars, b => Assert.DoesNotContain(b.Right, s => s.Is("tune")));
    }

    // What walks in a bar that goes back leads to a bass that does not follow.
    [Theory]
    [InlineData(LeftManner.WalkingOctaves)]
    [InlineData(LeftManner.WalkingTenths)]
    [InlineData(LeftManner.ContraryRun)]
    [InlineData(LeftManner.ChromaticApproach)]
    public void Nothing_leads_on_where_the_piece_goes_back(LeftManner manner)
    {
        var tune = Tunes.Samples.First(t => t.Title.EndsWith("Ferry Bell", StringComparison.Ordinal));
        var form = new FormLine([
            new(PartKind.Strain, 1, 'A')
            {
                Repeated = true,
                Treatment = new() { Left = manner },
            },
        ]);
        var made = Arranger.Arrange(tune, new Brief { Form = form }, Cancel).Arrangement!;
        var back = Assert.Single(made.Score.Bars, b => b.Marks.RepeatEnd > 0);
        Assert.Contains(back.Number, made.FellBack.Single().Bars);
        Assert.DoesNotContain(
            back.Voices.Where(v => v.Hand == Hand.Left).SelectMany(v => v.Events).SelectMany(e => e.Notes),
            n => n.Id.Contains("run", StringComparison.Ordinal)
        );
    }

    // A contrary run goes on one way into the bass it leads to.
    [Fact]
    public void A_contrary_run_does_not_overshoot_the_bass_it_leads_to()
    {
        var runs = 0;
        foreach (var tune in Tunes.Samples.Where(t => t.Bars.Count <= Short))
        {
            var (made, sheet, mine) = Set(tune, "contrary-run", 205);
            foreach (var i in mine.Where(i => i + 1 < sheet.Count && Vocabulary.Has("contrary-run", sheet, i) == true))
            {
                var keys = sheet[i].Left.Select(s => s.Low).ToList();
                if (keys.Count < 2 || !sheet[i].Left[^1].Is("run") || sheet[i + 1].Left.Count == 0)
                {
                    continue;
                }
                // Nearer than a semitone a stroke no run goes one way.
                if (Math.Abs(sheet[i + 1].Left[0].Low - keys[0]) < keys.Count)
                {
                    continue;
                }
                runs++;
                Assert.True(
                    Math.Sign(keys[^1] - keys[^2]) == Math.Sign(sheet[i + 1].Left[0].Low - keys[^1]),
                    $"{tune.Title}, bar {sheet[i].Number}: {string.Join(' ', keys)}, {sheet[i + 1].Left[0].Low}"
                );
            }
        }
        Assert.True(runs >= 5, $"{runs} runs");
    }

    // No tone of a chord lies a semitone over the pedal under it (common practice: a pedal is borne or left).
    [Fact]
    public void A_low_pedal_is_borne_by_its_chords()
    {
        var pedals = 0;
        foreach (var tune in Tunes.Samples.Where(t => t.Bars.Count <= Short))
        {
            var (made, sheet, mine) = Set(tune, "low-pedal", 205);
            var fell = made.FellBack.SelectMany(f => f.Bars).ToHashSet();
            foreach (var bar in mine.Select(i => sheet[i]).Where(b => !fell.Contains(b.Number) && b.Left.Count > 0))
            {
                var pedal = bar.Left.Min(s => s.Low);
                pedals++;
                Assert.DoesNotContain(
                    bar.Left.Where(s => s.Is("chord")).SelectMany(s => s.Keys),
                    key => (key - pedal) % 12 == 1
                );
            }
        }
        Assert.True(pedals >= 10, $"{pedals} bars");
    }

    [Fact]
    public void Every_manner_has_its_word()
    {
        Assert.Equal(Enum.GetValues<LeftManner>().Order(), Manners.Left.Values.Order());
        Assert.Equal(Enum.GetValues<RightManner>().Order(), Manners.Right.Values.Order());
        Assert.Empty(Manners.Left.Keys.Intersect(Manners.Right.Keys));
        Assert.All(Manners.Left, w => Assert.Equal(w.Key, Manners.Left.WordOf(w.Value)));
        Assert.All(Manners.Right, w => Assert.Equal(w.Key, Manners.Right.WordOf(w.Value)));
    }

    [Fact]
    public void Phrases_are_counted_by_strain_and_a_pick_up_is_none()
    {
        // Strains of six bars: the phrase begins anew with the second one.
        const string Strain = "\"C\"c2e2|g2e2|\"G7\"d2f2|\"C\"e2c2|\"F\"a2f2|\"C\"e4||";
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:C", "G2|" + Strain + Strain + "c4|]");
        var brief = new Brief
        {
            RightManners = [RightManner.Thirds, RightManner.Sixths],
            LeftManners = [LeftManner.LowPedal],
        };
        var bars = new Setting(tune, brief, Feel.Classic, Metre.TwoFour, Prices.Standard).Plan().Lattice.Bars;
        var words = bars.Select(b =>
            b.Treatment.Right switch
            {
                RightManner.Thirds => 't',
                RightManner.Sixths => 's',
                _ => '-',
            }
        );
        Assert.Equal("-ttttssttttss-", string.Concat(words.Take(14)));
        Assert.Equal(
            "-ll--llll",
            string.Concat(bars.Take(9).Select(b => b.Treatment.Left == LeftManner.LowPedal ? 'l' : '-'))[..9]
        );
    }

    [Fact]
    public void Notes_left_out_as_asked_are_counted_apart()
    {
        foreach (var tune in Tunes.Samples.Where(t => t.Bars.Count <= Short))
        {
            var plan = new Setting(
                tune,
                new Brief(),
                Feels.For(Feels.MainMetre(tune)),
                Feels.MainMetre(tune),
                Prices.Standard
            )
                .Plan()
                .Lattice;
            var own = plan.Notes.Length + plan.LostNotes;
            var (silent, _, _) = Set(tune, "right-silent", 205);
            Assert.Equal(own, silent.Tune.Notes);
            Assert.True(silent.Tune.LeftOut > 0);
            Assert.Equal(own - plan.LostNotes, silent.Tune.Kept + silent.Tune.LeftOut);
            var (thumb, _, _) = Set(tune, "obbligato", 230);
            Assert.Equal(own - plan.LostNotes, thumb.Tune.Kept);
            Assert.InRange(thumb.Tune.Elsewhere, 1, thumb.Tune.Kept);
        }
    }

    private static (Arrangement Arrangement, IReadOnlyList<SheetBar> Sheet, List<int> Asked) Set(
        Tune tune,
        string word,
        double span
    )
    {
        var isLeft = Manners.Left.TryGetValue(word, out var left);
        var right = isLeft ? default : Manners.Right[word];
        var brief = new Brief
        {
            LeftManners = isLeft ? [left] : [],
            RightManners = isLeft ? [] : [right],
            Hands = new PlayerHands { SpanMm = span },
        };
        tune = Unfolding.WithRepeatStarts(Unfolding.BySectionOrder(tune));
        var metre = Feels.MainMetre(tune);
        var bars = new Setting(tune, brief, Feels.For(metre), metre, Prices.Standard).Plan().Lattice.Bars;
        var result = Arranger.Arrange(tune, brief, Cancel);
        Assert.True(result.Arrangement is not null, $"{tune.Title}: {result.Refusal?.Message}");
        var asked = Enumerable
            .Range(0, bars.Length)
            .Where(i =>
                !bars[i].IsShort && (isLeft ? bars[i].Treatment.Left == left : bars[i].Treatment.Right == right)
            )
            .ToList();
        return (result.Arrangement, Sheets.Of(result.Arrangement.Score), asked);
    }
}
