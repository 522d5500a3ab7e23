using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Harmony;

/// <summary>
/// Harmonies found for tunes without any, against the chords printed over open tunes, and against common practice:
/// functional, closing on the tonic, following the key.
/// </summary>
public sealed class HarmonisingTests
{
    [Fact]
    public void Printed_chords_of_the_corpus_are_found_again()
    {
        var sum = Chorded()
            .Select(t => HarmonyAgreement.Of(t, Harmonising.Apply(Bare(t))))
            .Aggregate(HarmonyAgreement.None, (a, b) => a.Plus(b));
        Assert.True(sum.Beats > 8000, $"{sum.Beats} beats");
        Assert.True(sum.RootShare >= 0.60, $"roots {sum.RootShare:F3}");
        Assert.True(sum.SharedShare >= 0.75, $"two common tones {sum.SharedShare:F3}");
    }

    [Fact]
    public void A_tune_without_a_dissonant_end_closes_on_its_tonic()
    {
        foreach (var tune in Tunes.Samples)
        {
            var key = tune.Bars[^1].Key;
            var last = tune.Bars.SelectMany(b => b.Notes).Last().Pitch.Tone;
            if (last == key.Tonic)
            {
                var chord = Harmonising.Apply(Bare(tune)).Bars.SelectMany(b => b.Chords).Last().Chord;
                Assert.Equal(key.Tonic, chord.Root);
            }
        }
    }

    [Fact]
    public void A_strain_that_modulates_without_a_new_signature_is_harmonised_in_its_own_key()
    {
        // G major, then eight bars in C: the F is natural throughout and the strain closes on C.
        var tune = Tunes.Abc(
            "M:2/4\nL:1/8\nK:G",
            "G2 B2 | d2 B2 | c2 A2 | B2 G2 | A2 c2 | B2 G2 | F2 A2 | G4 |"
                + "|: c2 e2 | g2 e2 | =f2 d2 | e2 c2 | d2 =f2 | e2 g2 | d2 B2 | c4 :|"
        );
        var keys = LocalKeys.Of(tune);
        Assert.All(keys[..8], k => Assert.Equal(new Key(Tone.Parse("G"), Mode.Major), k));
        Assert.All(keys[8..], k => Assert.Equal(new Key(Tone.Parse("C"), Mode.Major), k));
        var chords = Harmonising.Apply(tune).Bars.SelectMany(b => b.Chords).Select(c => c.Chord.ToString()).ToList();
        Assert.Equal("C", chords[^1]);
        Assert.Equal("G7", chords[^2]);
    }

    [Fact]
    public void A_minor_tune_has_its_raised_leading_note_over_the_dominant()
    {
        var tune = Tunes.Abc("M:3/4\nL:1/4\nK:Am", "A c e | d c B | ^G B e | A3 | A c e | d c B | B ^G E | A3 |");
        var chords = Harmonising
            .Apply(tune)
            .Bars.Select(b => b.Chords is [.., var last] ? last.Chord.ToString() : "")
            .ToList();
        Assert.Equal("Am", chords[0]);
        Assert.Equal("E7", chords[6]);
        Assert.Equal("Am", chords[7]);
    }

    private static IEnumerable<Tune> Chorded()
    {
        var abc = Corpus
            .Files("corpus/abc", ".abc")
            .SelectMany(f =>
            {
                using var stream = File.OpenRead(f);
                return AbcReader.Read(new StringReader(AbcReader.Decode(stream).Value!)).Value ?? [];
            });
        var sheets = Corpus
            .Files("corpus/musicxml/valid", ".musicxml", ".xml", ".mxl")
            .Select(f =>
            {
                using var stream = File.OpenRead(f);
                return MusicXmlReader.ReadTune(stream).Value;
            });
        return abc.Concat(sheets.OfType<Tune>()).Where(t => t.Bars.Count(b => b.Chords.Count > 0) > t.Bars.Count / 4);
    }

    private static Tune Bare(Tune tune) =>
        tune with
        {
            Bars = tune.Bars.Select(b => b with { Chords = [] }).ToValueList(),
        };
}
