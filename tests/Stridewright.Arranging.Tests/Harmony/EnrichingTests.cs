using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Harmony;

/// <summary>Enriched harmonies: every kind by a tune that asks for it, and the law that the tune stays consonant on its
/// beats. Kinds and chords: common practice of ragtime and stride harmony.</summary>
public sealed class EnrichingTests
{
    private const string Two = "M:2/4\nL:1/8\nK:C";

    public static TheoryData<HarmonyChangeKind, string, string> Kinds { get; } =
        new()
        {
            { HarmonyChangeKind.SecondaryDominant, "\"C\"e2 g2 | e2 g2 | \"Dm\"f2 a2 | \"G7\"f2 d2 | \"C\"c4 |", "A7" },
            {
                HarmonyChangeKind.CircleOfFifths,
                "\"C\"c2 e2 | e2 e2 | e2 z2 | e2 a2 | \"G7\"g2 f2 | \"C\"c4 |",
                "A7 D7"
            },
            {
                HarmonyChangeKind.PassingDiminished,
                "\"C\"c2 e2 | c2 e2 | \"Dm\"f2 d2 | \"G7\"d2 B2 | \"C\"c4 |",
                "C#dim7"
            },
            { HarmonyChangeKind.CommonToneDiminished, "\"C\"e2 c2 | c2 e2 | \"G7\"d2 B2 | \"C\"c4 |", "Cdim7" },
            { HarmonyChangeKind.MinorSubdominant, "\"C\"e2 g2 | \"F\"a2 c'2 | \"C\"g2 e2 | c4 |", "Fm" },
            {
                HarmonyChangeKind.StrainEnding,
                "\"C\"e2 g2 | \"G7\"f2 d2 | \"C\"e2 c2 | \"G7\"d2 B2 | \"C\"c2 c2 | c2 e2 | \"G7\"d2 d2 | \"C\"c4 |",
                "F F#dim7 C/G A7 D7 G7 C"
            },
            { HarmonyChangeKind.TwoFive, "\"C\"e2 c2 | \"G7\"f2 d2 | \"C\"c4 |", "Dm7" },
            { HarmonyChangeKind.Turnaround, "|: \"C\"e2 g2 | \"G7\"f2 d2 | \"C\"c2 z2 | z2 z2 :|", "A7 D7 G7" },
            {
                HarmonyChangeKind.Pedal,
                "\"C\"e2 c2 | \"G7\"d2 f2 | \"C\"e2 c2 | \"Dm\"d2 f2 | \"G7\"d2 B2 | \"C\"c4 |",
                "G7/C"
            },
            { HarmonyChangeKind.ChromaticBass, "\"C\"e2 g2 | e2 g2 | \"F\"a2 c2 | \"C\"c4 |", "C7/Bb F/A" },
        };

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_kind_is_found_where_it_fits_and_can_be_left_out(HarmonyChangeKind kind, string body, string after)
    {
        var tune = Tunes.Abc(Two, body);
        HarmonyWish Wish(params HarmonyChangeKind[] without) =>
            new() { Richness = Richness.Rich, Without = without.ToValueList() };
        var others = Enum.GetValues<HarmonyChangeKind>().Where(k => k != kind).ToArray();
        var (rich, changes) = Enriching.Apply(tune, Wish(others), Feel.Classic);
        Assert.Contains(changes, c => c.Kind == kind && c.After == after);
        Assert.All(changes, c => Assert.Equal(kind, c.Kind));
        Assert.NotEqual(tune, rich);
        var (_, without) = Enriching.Apply(tune, Wish(kind), Feel.Classic);
        Assert.DoesNotContain(without, c => c.Kind == kind);
    }

    // Common practice: the last dominant of a strain has its own bass.
    [Fact]
    public void A_pedal_leaves_the_close_its_bass()
    {
        var tune = Tunes.Abc(Two, "\"C\"e2 c2 | c2 e2 | \"G7\"d2 f2 | \"C\"e2 c2 |");
        var (_, changes) = Enriching.Apply(tune, new() { Richness = Richness.Rich }, Feel.Classic);
        Assert.DoesNotContain(changes, c => c.Kind == HarmonyChangeKind.Pedal);
    }

    [Fact]
    public void The_second_degree_turns_into_a_dominant()
    {
        var tune = Tunes.Abc(Two, "\"C\"e2 g2 | \"Dm\"d2 f2 | a2 d2 | \"G7\"g2 f2 | \"C\"c4 |");
        var (_, changes) = Enriching.Apply(tune, new() { Richness = Richness.Rich }, Feel.Classic);
        Assert.Contains(changes, c => (c.Before, c.After) == ("Dm", "D7"));
    }

    [Fact]
    public void One_change_alone_can_be_left_out()
    {
        var tune = Tunes.Samples.First(t => t.Title.StartsWith("Two Sugars", StringComparison.Ordinal));
        var wish = new HarmonyWish { Richness = Richness.Rich };
        var (_, all) = Enriching.Apply(Harmonising.Apply(tune), wish, Feel.Classic);
        var one = all[all.Count / 2];
        var word = $"{BriefWords.HarmonyChanges.WordOf(one.Kind)}:{one.Bar}";
        var unwanted = Assert.IsType<UnwantedChange>(UnwantedChange.Read(word));
        Assert.Equal(word, unwanted.ToString());
        var (_, rest) = Enriching.Apply(Harmonising.Apply(tune), wish with { WithoutAt = [unwanted] }, Feel.Classic);
        Assert.DoesNotContain(rest, c => (c.Kind, c.Bar) == (one.Kind, one.Bar));
        // The same kind stays elsewhere, and what does not meet it stays as it was.
        Assert.True(rest.Count(all.Contains) >= all.Count - 2, $"{rest.Count(all.Contains)} of {all.Count}");
    }

    [Theory]
    [InlineData("pedal")]
    [InlineData("pedal:")]
    [InlineData("cake:7")]
    [InlineData("pedal:7\nlevel 6")]
    public void What_names_no_change_of_a_bar_is_none(string word) => Assert.Null(UnwantedChange.Read(word));

    [Fact]
    public void Tritone_substitutes_belong_to_stride()
    {
        var tune = Tunes.Abc("M:4/4\nL:1/4\nK:C", "\"C\"e g e c | \"G7\"f f B B | \"C\"c4 |");
        var wish = new HarmonyWish { Richness = Richness.Rich, Without = [HarmonyChangeKind.TwoFive] };
        Assert.Contains(Enriching.Apply(tune, wish, Feel.Stride).Changes, c => c.After == "Db7");
        Assert.DoesNotContain(
            Enriching.Apply(tune, wish, Feel.Classic).Changes,
            c => c.Kind == HarmonyChangeKind.Tritone
        );
    }

    [Fact]
    public void New_chords_hold_the_tunes_notes_on_the_beats()
    {
        var checkedBeats = 0;
        foreach (var tune in Tunes.Samples.Concat(CorpusSlice()))
        {
            var (rich, changes) = Enriching.Apply(tune, new() { Richness = Richness.Rich }, Feel.Stride);
            Assert.Equal(tune.Bars.Count, rich.Bars.Count);
            var (before, after) = (ByPlace(tune), ByPlace(rich));
            foreach (var (place, pitch, bar) in OnBeats(tune))
            {
                var (old, now) = (At(before, place), At(after, place));
                if (old != now)
                {
                    checkedBeats++;
                    Assert.NotEmpty(changes);
                    Assert.True(
                        now!.Tones.Any(t => t.PitchClass == pitch.Tone.PitchClass),
                        $"{tune.Title}, bar {bar}: {pitch.Tone} over {now} for {old}"
                    );
                }
            }
        }
        Assert.True(checkedBeats > 200, $"{checkedBeats} beats");
    }

    [Fact]
    public void Plain_harmony_stays_to_the_letter()
    {
        foreach (var tune in Tunes.Samples)
        {
            Assert.Equal(tune, Enriching.Apply(tune, new(), Feel.Classic).Tune);
        }
    }

    [Fact]
    public void Seasoned_changes_less_than_rich()
    {
        int Count(Richness richness) =>
            Tunes.Samples.Sum(t => Enriching.Apply(t, new() { Richness = richness }, Feel.Classic).Changes.Count);
        var (seasoned, rich) = (Count(Richness.Seasoned), Count(Richness.Rich));
        Assert.InRange(seasoned, 1, rich - 1);
    }

    [Fact]
    public void Enriched_samples_are_playable_and_name_their_changes()
    {
        foreach (var tune in Tunes.Samples.Where((_, i) => i % 3 == 0))
        {
            foreach (var level in new[] { 2, 6 })
            {
                var brief = new Brief
                {
                    LeftLevel = level,
                    RightLevel = level,
                    Harmony = new() { Richness = Richness.Rich },
                };
                var result = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);
                Assert.True(result.Arrangement is not null, result.Refusal?.Message);
                Assert.Equal(
                    result.Arrangement.HarmonyChanges.Count,
                    result.Arrangement.Notes.Count(n =>
                        n.Message.Contains(" for ", StringComparison.Ordinal) && n.Place != Place.Whole
                    )
                );
            }
        }
    }

    private static IEnumerable<Tune> CorpusSlice() =>
        Corpus
            .Files("corpus/abc", ".abc")
            .Where((_, i) => i % 3 == 0)
            .SelectMany(f =>
            {
                using var stream = File.OpenRead(f);
                return AbcReader.Read(new StringReader(AbcReader.Decode(stream).Value!)).Value ?? [];
            });

    private static List<(ScoreTime At, ChordSymbol Chord)> ByPlace(Tune tune)
    {
        var now = ScoreTime.Zero;
        var found = new List<(ScoreTime, ChordSymbol)>();
        foreach (var bar in tune.Bars)
        {
            found.AddRange(bar.Chords.Select(c => (now + c.At, c.Chord)));
            now += bar.Length;
        }
        return found;
    }

    // Whatever sounds on a beat of a full bar.
    private static IEnumerable<(ScoreTime Place, Pitch Pitch, string Bar)> OnBeats(Tune tune)
    {
        var start = ScoreTime.Zero;
        foreach (var bar in tune.Bars)
        {
            if (bar.Length == bar.Metre.BarLength)
            {
                for (var at = ScoreTime.Zero; at < bar.Length; at += bar.Metre.Beat)
                {
                    foreach (var note in bar.Notes.Where(n => n.At <= at && at < n.At + n.Length))
                    {
                        yield return (start + at, note.Pitch, bar.Number);
                    }
                }
            }
            start += bar.Length;
        }
    }

    private static ChordSymbol? At(List<(ScoreTime At, ChordSymbol Chord)> chords, ScoreTime place) =>
        chords.FindLast(c => c.At <= place).Chord;
}
