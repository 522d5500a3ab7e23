using CsCheck;

namespace Stridewright.Music.Tests;

public sealed class ChordTextTests
{
    /// <summary>Symbols and semitones above the root. Source: MusicXML 4.0 kind definitions (trade.md 6.4).</summary>
    [Theory]
    [InlineData("C", ChordKind.Major, "0 4 7")]
    [InlineData("Cm", ChordKind.Minor, "0 3 7")]
    [InlineData("C+", ChordKind.Augmented, "0 4 8")]
    [InlineData("Cdim", ChordKind.Diminished, "0 3 6")]
    [InlineData("C7", ChordKind.Dominant, "0 4 7 10")]
    [InlineData("Cmaj7", ChordKind.MajorSeventh, "0 4 7 11")]
    [InlineData("Cm7", ChordKind.MinorSeventh, "0 3 7 10")]
    [InlineData("Cdim7", ChordKind.DiminishedSeventh, "0 3 6 9")]
    [InlineData("C7#5", ChordKind.AugmentedSeventh, "0 4 8 10")]
    [InlineData("Cm7b5", ChordKind.HalfDiminished, "0 3 6 10")]
    [InlineData("Cm(maj7)", ChordKind.MajorMinor, "0 3 7 11")]
    [InlineData("C6", ChordKind.MajorSixth, "0 4 7 9")]
    [InlineData("Cm6", ChordKind.MinorSixth, "0 3 7 9")]
    [InlineData("C9", ChordKind.DominantNinth, "0 4 7 10 14")]
    [InlineData("Cmaj9", ChordKind.MajorNinth, "0 4 7 11 14")]
    [InlineData("Cm9", ChordKind.MinorNinth, "0 3 7 10 14")]
    [InlineData("C11", ChordKind.Dominant11th, "0 4 7 10 14 17")]
    [InlineData("Cm11", ChordKind.Minor11th, "0 3 7 10 14 17")]
    [InlineData("C13", ChordKind.Dominant13th, "0 4 7 10 14 17 21")]
    [InlineData("Csus2", ChordKind.SuspendedSecond, "0 2 7")]
    [InlineData("Csus4", ChordKind.SuspendedFourth, "0 5 7")]
    [InlineData("C5", ChordKind.Power, "0 7")]
    public void Each_kind_is_read_and_written_in_its_usual_way(string text, ChordKind kind, string semitones)
    {
        var chord = Parse(text);
        Assert.Equal(kind, chord.Kind);
        Assert.Equal(semitones, Semitones(chord));
        Assert.Equal(text, ChordText.Format(chord));
    }

    /// <summary>Source: common practice; C7b9 = 0 4 7 10 13 in trade.md 6.4.</summary>
    [Theory]
    [InlineData("0 3 7", "Cmin C- CMIN Cmi Cminor")]
    [InlineData("0 4 7", "CM Cmaj C(no9)")]
    [InlineData("0 3 6", "C° Co Cd CDim Cm(b5)")]
    [InlineData("0 3 6 9", "C°7 Co7 Cd7")]
    [InlineData("0 3 6 10", "Cø Cø7 C-7b5 Cmin7b5 Cm7(b5) Cm7(♭5)")]
    [InlineData("0 4 8", "Caug Ca C(#5)")]
    [InlineData("0 4 8 10", "C+7 Caug7 C7(♯5) C7+5 C7(+5)")]
    [InlineData("0 4 7 11", "CM7 CMaj7 CMA7 C^7 CΔ CΔ7")]
    [InlineData("0 3 7 11", "CmM7 CmMaj7 Cminmaj7 C-(maj7) C-Δ7")]
    [InlineData("0 4 7 9 14", "C69 C6/9 C6(add9)")]
    [InlineData("0 3 7 9 14", "Cm69 Cm6/9")]
    [InlineData("0 4 7 10 13", "C7b9 C7(b9) C7♭9 C7-9")]
    [InlineData("0 4 7 10 15", "C7#9 C7(#9) C7+9")]
    [InlineData("0 4 7 10 18", "C7#11 C7(#11)")]
    [InlineData("0 4 7 10 13 20", "C7b9b13 C7(b9,b13)")]
    [InlineData("0 4 6 10", "C7b5 C7(b5)")]
    [InlineData("0 4 8 10 14", "C+9 C9#5 Caug9")]
    [InlineData("0 5 7", "Csus CSus4")]
    [InlineData("0 5 7 10", "C7sus4 C7sus")]
    [InlineData("0 5 7 10 14", "C9sus4")]
    [InlineData("0 4 7 14", "Cadd9 C(add9)")]
    [InlineData("0 4 7 14", "CMadd9 CM(add9)")]
    [InlineData("0 3 7 14", "Cmadd9 CmAdd9")]
    [InlineData("0 4 7 10 18", "C7#4 C7#11")]
    [InlineData("0 3 7 11 14", "CmM9 Cmmaj9 Cm(maj9)")]
    [InlineData("0 5 7 10 13", "C7sus4(b9) C7b9sus4")]
    [InlineData("0 2 4 7", "C2 Cadd2")]
    [InlineData("0 4 7 11 18", "Cmaj7#11")]
    [InlineData("0 7", "C(no3) Comit3")]
    public void Other_spellings_give_the_same_tones(string semitones, string texts)
    {
        foreach (var text in texts.Split(' '))
        {
            Assert.Equal((text, semitones), (text, Semitones(Parse(text))));
        }
    }

    [Theory]
    [InlineData("C/G", "C", "G")]
    [InlineData("Cm/Eb", "C", "Eb")]
    [InlineData("D/f#", "D", "F#")]
    [InlineData("D/f+", "D", "F#")]
    [InlineData("Gm/bb", "G", "Bb")]
    [InlineData("G/b", "G", "B")]
    [InlineData("B♭7/d", "Bb", "D")]
    [InlineData("C♯m7b5/B", "C#", "B")]
    [InlineData("Ebd", "Eb", null)]
    [InlineData("C/c", "C", null)]
    [InlineData("D m", "D", null)]
    [InlineData("C6/9/E", "C", "E")]
    public void Root_and_bass_are_spelled_as_written(string text, string root, string? bass)
    {
        var chord = Parse(text);
        Assert.Equal(root, chord.Root.ToString());
        Assert.Equal(bass, chord.Bass?.ToString());
    }

    [Theory]
    [InlineData("N.C.")]
    [InlineData("NC")]
    [InlineData("n.c.")]
    [InlineData("No Chord")]
    public void No_chord_is_a_symbol_too(string text) => Assert.Same(ChordSymbol.NoChord, Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("H")]
    [InlineData("c")]
    [InlineData("Fine")]
    [InlineData("Coda")]
    [InlineData("D.C.")]
    [InlineData("Variation A")]
    [InlineData("C7(b9")]
    [InlineData("C/H")]
    [InlineData("C/G/")]
    [InlineData("C99999999999999999999")]
    [InlineData("C7((((((((((b9))))))))))")]
    [InlineData("Cadd")]
    [InlineData("Cm7b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5b5")]
    public void What_is_no_chord_symbol_is_refused(string text) => Assert.False(ChordText.TryParse(text, out _));

    [Fact]
    public void Every_kind_on_every_root_reads_back_as_written()
    {
        foreach (var kind in Enum.GetValues<ChordKind>().Where(k => k != ChordKind.None))
        {
            for (var fifths = -15; fifths <= 19; fifths++)
            {
                var chord = new ChordSymbol(new Tone(fifths), kind);
                Assert.Equal(chord, Parse(ChordText.Format(chord)));
            }
        }
    }

    [Fact]
    public void Any_symbol_with_degrees_and_bass_reads_back_as_written()
    {
        var tone = Gen.Int[-15, 19].Select(f => new Tone(f));
        var degree = Gen.Select(Gen.Int[1, 13], Gen.Int[-2, 2], Gen.Enum<DegreeChange>())
            .Select(d => new ChordDegree(d.Item1, d.Item2, d.Item3));
        Gen.Select(tone, Gen.Enum<ChordKind>(), degree.Array[0, 3], tone, Gen.Bool)
            .Where(c => c.Item2 != ChordKind.None)
            .Select(c => new ChordSymbol(c.Item1, c.Item2)
            {
                Degrees = c.Item3.ToValueList(),
                Bass = c.Item5 && c.Item4 != c.Item1 ? c.Item4 : null,
            })
            .Sample(chord => Assert.Equal(chord, Parse(ChordText.Format(chord))), iter: 5000);
    }

    [Fact]
    public void No_text_makes_the_reader_throw() =>
        Gen.String[Gen.Char["ABCDEFGmMajdinsu+-b#°ø/()0123456789 .N"], 0, 14]
            .Sample(
                text =>
                {
                    if (ChordText.TryParse(text, out var chord))
                    {
                        Assert.Equal(chord, Parse(ChordText.Format(chord)));
                    }
                },
                iter: 20000
            );

    private static ChordSymbol Parse(string text)
    {
        Assert.True(ChordText.TryParse(text, out var chord), text);
        return chord;
    }

    private static string Semitones(ChordSymbol chord) =>
        string.Join(' ', chord.Intervals.Select(i => i.Semitones).Order());
}
