using System.Xml;
using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>A tune of 32 bars for all benchmarks: a strain of eight bars, four times on.</summary>
internal static class Material
{
    /// <summary>Strains in the usual tune.</summary>
    public const int Strains = 4;

    public const int BarsInStrain = 8;

    private const string Head = "X:1\nT:Strains\nM:2/4\nL:1/8\nK:C\n";

    private const string Strain =
        "\"C\"G2 ce|\"A7\"^c2 ea|\"D7\"^f2 ad'|\"G7\"b2 gf|\"C\"e2 cG|\"F\"A2 \"F#dim7\"c2|\"C/G\"eg \"G7\"fd|\"C\"c4|\n";

    public static Tune Tune { get; } = ReadAbc();

    public static Tune ReadAbc(int strains = Strains) => AbcReader.Read(new StringReader(Abc(strains))).Value![0];

    /// <summary>Bars of the tune in its form.</summary>
    public const int BarsInForm = 150;

    /// <summary>Two strains of sixteen bars in the form of a rag with introduction, trio and tag: 150 bars.</summary>
    public static FormLine Form { get; } = FormLine.Read("intro A A B B A trio:B trio:B A A tag", out _)!;

    /// <summary>Bars of the tune in the long form.</summary>
    public const int BarsInLongForm = 438;

    /// <summary>The same form three times on: 438 bars.</summary>
    public static FormLine LongForm { get; } =
        FormLine.Read($"intro {string.Join(' ', Enumerable.Repeat("A A B B A trio:B trio:B A A", 3))} tag", out _)!;

    /// <summary>The usual tune as two strains of sixteen bars.</summary>
    public static Tune TwoStrains { get; } =
        AbcReader.Read(new StringReader(Head + "P:A\n" + Strain + Strain + "P:B\n" + Strain + Strain)).Value![0];

    public static Score Score(int level, int strains = Strains) =>
        Arranger.Arrange(ReadAbc(strains), new Brief { LeftLevel = level, RightLevel = level }).Arrangement!.Score;

    /// <summary>The keys of <see cref="Score"/> at level 5 as free strokes, yet to be spelled.</summary>
    public static Draft Draft()
    {
        var score = Score(5);
        var strokes = Timeline
            .Of(score)
            .GroupBy(s => (s.Bar, s.Hand, s.At))
            .Select(g =>
                (
                    g.Key.Bar,
                    Stroke: new Stroke(
                        g.Key.Hand,
                        1,
                        g.Key.At,
                        ScoreTime.Sixteenth,
                        g.OrderBy(s => s.Key)
                            .Select(s => Pitch.At(s.Key, score.Bars[s.Bar].Key.Spell(s.Key)))
                            .ToValueList(),
                        "key"
                    )
                )
            )
            .ToLookup(s => s.Bar, s => s.Stroke);
        var bars = score.Bars.Select(
            (bar, i) =>
                new DraftBar
                {
                    Number = bar.Number,
                    Metre = bar.Metre,
                    Key = bar.Key,
                    Length = bar.Length,
                    Strokes = strokes[i].ToValueList(),
                }
        );
        return new Draft { Title = score.Title, Bars = bars.ToValueList() };
    }

    public static byte[] Xml(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }

    public static XmlReader BareReader(byte[] xml) =>
        XmlReader.Create(
            new MemoryStream(xml),
            new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore, XmlResolver = null }
        );

    public static string Abc(int strains) => Head + string.Concat(Enumerable.Repeat(Strain, strains));
}
