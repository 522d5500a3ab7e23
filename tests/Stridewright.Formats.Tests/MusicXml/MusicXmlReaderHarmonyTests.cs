using System.Xml.Linq;
using Stridewright.Music;
using Stridewright.Testing;
using static Stridewright.Formats.Tests.MusicXml.ReaderSheet;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Chord symbols. Kinds: MusicXML 4.0, definition of <c>kind</c>; semitones as collected in trade.md 6.4.</summary>
public sealed class MusicXmlReaderHarmonyTests
{
    [Theory]
    [InlineData("major", "0 4 7")]
    [InlineData("minor", "0 3 7")]
    [InlineData("augmented", "0 4 8")]
    [InlineData("diminished", "0 3 6")]
    [InlineData("dominant", "0 4 7 10")]
    [InlineData("major-seventh", "0 4 7 11")]
    [InlineData("minor-seventh", "0 3 7 10")]
    [InlineData("diminished-seventh", "0 3 6 9")]
    [InlineData("augmented-seventh", "0 4 8 10")]
    [InlineData("half-diminished", "0 3 6 10")]
    [InlineData("major-minor", "0 3 7 11")]
    [InlineData("major-sixth", "0 4 7 9")]
    [InlineData("minor-sixth", "0 3 7 9")]
    [InlineData("dominant-ninth", "0 4 7 10 14")]
    [InlineData("major-ninth", "0 4 7 11 14")]
    [InlineData("minor-ninth", "0 3 7 10 14")]
    [InlineData("dominant-11th", "0 4 7 10 14 17")]
    [InlineData("major-11th", "0 4 7 11 14 17")]
    [InlineData("minor-11th", "0 3 7 10 14 17")]
    [InlineData("dominant-13th", "0 4 7 10 14 17 21")]
    [InlineData("major-13th", "0 4 7 11 14 17 21")]
    [InlineData("minor-13th", "0 3 7 10 14 17 21")]
    [InlineData("suspended-second", "0 2 7")]
    [InlineData("suspended-fourth", "0 5 7")]
    [InlineData("power", "0 7")]
    public void Kinds_sound_as_defined(string kind, string semitones)
    {
        var tune = Tune(Part(FourFour + Chord("C", kind) + Note("C5", 16)));
        Assert.Equal(Set(semitones), tune.Value!.Bars[0].Chords[0].Chord.PitchClassSet);
        Assert.Empty(tune.Diagnostics);
    }

    [Fact]
    public void Every_kind_of_the_schema_is_known()
    {
        var schema = XDocument.Load(Corpus.PathOf("standards/musicxml.xsd"));
        var kinds = schema
            .Descendants()
            .Single(e => e.Name.LocalName == "simpleType" && (string?)e.Attribute("name") == "kind-value")
            .Descendants()
            .Where(e => e.Name.LocalName == "enumeration")
            .Select(e => e.Attribute("value")!.Value)
            .ToList();
        Assert.Equal(33, kinds.Count);
        foreach (var kind in kinds)
        {
            var tune = Tune(Part(FourFour + Chord("C", kind) + Note("C5", 16)));
            Assert.Empty(tune.Diagnostics);
            var read = tune.Value!.Bars[0].Chords[0].Chord.Kind.ToString();
            Assert.Equal(kind.Replace("-", "", StringComparison.Ordinal), read, ignoreCase: true);
        }
    }

    [Theory]
    [InlineData("dominant", "9 -1 add", "0 4 7 10 13")] // trade.md 6.4
    [InlineData("dominant", "5 -1 alter", "0 4 6 10")]
    [InlineData("dominant", "11 1 add, 5 0 subtract", "0 4 10 18")]
    [InlineData("major", "7 0 add", "0 4 7 10")] // added degrees count from a dominant chord
    [InlineData("major", "3 0 subtract, 5 -1 alter", "0 6")]
    public void Degrees_add_alter_and_subtract(string kind, string degrees, string semitones)
    {
        var written = degrees
            .Split(", ")
            .Select(d => d.Split(' '))
            .Select(d =>
                $"<degree><degree-value>{d[0]}</degree-value><degree-alter>{d[1]}</degree-alter>"
                + $"<degree-type>{d[2]}</degree-type></degree>"
            );
        var tune = Tune(Part(FourFour + Chord("C", kind, string.Concat(written)) + Note("C5", 16)));
        Assert.Equal(Set(semitones), tune.Value!.Bars[0].Chords[0].Chord.PitchClassSet);
    }

    [Theory]
    [InlineData("<bass><bass-step>B</bass-step><bass-alter>-1</bass-alter></bass>", "Bb")]
    [InlineData("<inversion>1</inversion>", "E")]
    [InlineData("<inversion>2</inversion><bass><bass-step>G</bass-step></bass>", "G")]
    [InlineData("<inversion>0</inversion>", null)]
    [InlineData("<bass><bass-step>C</bass-step></bass>", null)]
    public void Bass_is_given_or_follows_from_the_inversion(string more, string? bass)
    {
        var tune = Tune(Part(FourFour + Chord("C", "major", more) + Note("C5", 16)));
        Assert.Equal(bass, tune.Value!.Bars[0].Chords[0].Chord.Bass?.ToString());
    }

    [Fact]
    public void Root_alterations_and_no_chord_are_read()
    {
        var flat =
            "<harmony><root><root-step>E</root-step><root-alter>-1</root-alter></root><kind>major</kind></harmony>";
        var none = "<harmony><root><root-step>C</root-step></root><kind text='N.C.'>none</kind></harmony>";
        var tune = Tune(Part(FourFour + flat + Note("C5", 8) + none + Note("C5", 8)));
        Assert.Equal(["0 Eb Major, 1/2 C None"], Chords(tune));
        Assert.True(tune.Value!.Bars[0].Chords[1].Chord.IsNoChord);
    }

    [Fact]
    public void Offsets_move_a_symbol_from_its_note()
    {
        var late = Chord("F", "major", "<offset>8</offset>");
        var early = Chord("G", "dominant", "<offset>-4</offset>");
        var tune = Tune(Part(FourFour + Chord("C", "major") + late + Note("C5", 16) + early, Note("C5", 16)));
        Assert.Equal(["0 C Major, 1/2 F Major, 3/4 G Dominant", ""], Chords(tune));
        Assert.Empty(tune.Diagnostics);
    }

    [Fact]
    public void An_offset_past_the_bar_opens_the_next_one()
    {
        var tune = Tune(Part(FourFour + Chord("F", "major", "<offset>20</offset>") + Note("C5", 16), Note("C5", 16)));
        Assert.Equal(["", "1/4 F Major"], Chords(tune));
        Only(tune.Diagnostics, Severity.Note);
    }

    [Fact]
    public void Symbols_at_one_place_share_the_time_to_the_next_note()
    {
        var tune = Tune(Part(FourFour + Chord("C", "major") + Chord("A", "minor") + Note("C5", 8) + Note("D5", 8)));
        Assert.Equal(["0 C Major, 1/4 A Minor"], Chords(tune));
        Only(tune.Diagnostics, Severity.Note);
    }

    [Fact]
    public void A_symbol_written_again_at_the_next_note_is_read_there_only()
    {
        var minor = Chord("A", "minor");
        var tune = Tune(Part(FourFour + Chord("C", "major") + minor + Note("C5", 8) + minor + Note("D5", 8)));
        Assert.Equal(["0 C Major, 1/2 A Minor"], Chords(tune));
        Only(tune.Diagnostics, Severity.Note);
    }

    [Theory]
    [InlineData("<harmony><function>V</function><kind>dominant</kind></harmony>", 0)]
    [InlineData("<harmony><root><root-step>H</root-step></root><kind>major</kind></harmony>", 0)]
    [InlineData("<harmony><root><root-step>C</root-step></root><kind>lovely</kind></harmony>", 1)]
    [InlineData("<harmony><root><root-step>C</root-step></root><kind>major</kind><degree/></harmony>", 1)]
    public void A_faulty_symbol_costs_a_warning_and_nothing_else(string harmony, int kept)
    {
        var tune = Tune(Part(FourFour + harmony + Note("C5", 16)));
        Assert.Equal(kept, tune.Value!.Bars[0].Chords.Count);
        Assert.Equal("1", Only(tune.Diagnostics, Severity.Warning).Place.Bar);
        Assert.Equal(["C5@0+1"], Line(tune));
    }

    private static int Set(string semitones) =>
        semitones.Split(' ').Aggregate(0, (set, s) => set | (1 << (int.Parse(s, null) % 12)));
}
