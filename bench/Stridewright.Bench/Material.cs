using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;

namespace Stridewright.Bench;

/// <summary>A tune of 32 bars for all benchmarks: a strain of eight bars, four times on.</summary>
internal static class Material
{
    private const string Strain =
        "\"C\"G2 ce|\"A7\"^c2 ea|\"D7\"^f2 ad'|\"G7\"b2 gf|\"C\"e2 cG|\"F\"A2 \"F#dim7\"c2|\"C/G\"eg \"G7\"fd|\"C\"c4|\n";

    public static string Abc { get; } =
        "X:1\nT:Thirty-two bars\nM:2/4\nL:1/8\nK:C\n" + string.Concat(Enumerable.Repeat(Strain, 4));

    public static Tune Tune { get; } = ReadAbc();

    public static Tune ReadAbc() => AbcReader.Read(new StringReader(Abc)).Value![0];

    public static Score Score(int level) =>
        Arranger.Arrange(Tune, new Brief { LeftLevel = level, RightLevel = level }).Arrangement!.Score;

    public static byte[] Xml(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }
}
