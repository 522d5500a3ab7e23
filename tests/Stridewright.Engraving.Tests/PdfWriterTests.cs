using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Stridewright.Engraving.Tests;

public sealed class PdfWriterTests(WarmEngraver warm)
{
    // Roots with every alteration, and kinds as musicians write them (common practice).
    private static readonly (string Kind, string Text)[] Kinds =
    [
        ("major", ""),
        ("minor", "m"),
        ("dominant", "7"),
        ("major-seventh", "maj7"),
        ("minor-seventh", "m7"),
        ("diminished", "°"),
        ("diminished-seventh", "dim7"),
        ("half-diminished", "ø7"),
        ("augmented", "+"),
        ("suspended-fourth", "sus4"),
        ("major-sixth", "6"),
        ("dominant-ninth", "9"),
        ("major-seventh", "△7"),
    ];

    [Theory]
    // Paper in points of 1/72 inch: ISO 216 and ANSI/ASME Y14.1.
    [InlineData(Paper.A4, 595.28, 841.89)]
    [InlineData(Paper.Letter, 612, 792)]
    public void Pages_have_the_size_of_the_paper(Paper paper, double width, double height)
    {
        var score = warm.Engrave(PianoXml.Rag(40), new PageSetup { Paper = paper });
        using var pdf = Open(score);
        Assert.Equal(score.Pages.Count, pdf.NumberOfPages);
        Assert.All(
            pdf.GetPages(),
            page =>
            {
                Assert.Equal(width, page.Width, 0.5);
                Assert.Equal(height, page.Height, 0.5);
            }
        );
    }

    [Fact]
    public void Title_subtitle_composer_tempo_and_page_numbers_are_text()
    {
        using var pdf = Open(warm.Engrave(PianoXml.Rag(40)));
        var first = pdf.GetPage(1).Text;
        Assert.Contains(PianoXml.Title, first, StringComparison.Ordinal);
        Assert.Contains(PianoXml.Subtitle, first, StringComparison.Ordinal);
        Assert.Contains(PianoXml.Composer, first, StringComparison.Ordinal);
        Assert.Contains("Not fast", first, StringComparison.Ordinal);
        Assert.Matches("♩\\s*=\\s*84", first);
        Assert.EndsWith("2", pdf.GetPage(2).Text, StringComparison.Ordinal);
        Assert.Equal(PianoXml.Title, pdf.Information.Title);
        Assert.Null(pdf.Information.CreationDate);
    }

    [Fact]
    public void Without_a_header_the_title_is_not_printed()
    {
        using var pdf = Open(warm.Engrave(PianoXml.Rag(4), new PageSetup { Header = false }));
        Assert.DoesNotContain(PianoXml.Title, pdf.GetPage(1).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void All_chord_names_are_text_and_none_has_a_box()
    {
        var chords = (
            from root in "ABCDEFG"
            from alter in new[] { 0, -1, 1 }
            from kind in Kinds
            select (Root: root.ToString(), Alter: alter, kind.Kind, kind.Text)
        ).ToList();
        var score = warm.Engrave(
            PianoXml.Rag(
                chords.Count,
                bar =>
                {
                    var (root, alter, kind, text) = chords[bar - 1];
                    return PianoXml.Harmony(root, alter, kind, text, bar % 10 == 0 ? "G" : "");
                }
            )
        );
        using var pdf = Open(score);
        var pages = pdf.GetPages().ToList();
        var printed = string.Concat(pages.Select(p => p.Text));
        var at = 0;
        for (var bar = 1; bar <= chords.Count; bar++)
        {
            var (root, alter, _, text) = chords[bar - 1];
            var sign =
                alter < 0 ? "♭"
                : alter > 0 ? "♯"
                : "";
            var name = root + sign + text + (bar % 10 == 0 ? "/G" : "");
            var found = printed.IndexOf(name, at, StringComparison.Ordinal);
            Assert.True(found >= 0, $"{name} of bar {bar} is not in the PDF after place {at}");
            at = found + name.Length;
        }
        // A box is glyph 0, for which a PDF has no text.
        Assert.All(
            pages.SelectMany(p => p.Letters),
            l => Assert.DoesNotMatch("^$|[\\0\\uFFFD\\uE000-\\uF8FF]", l.Value)
        );
    }

    [Fact]
    public void Text_stays_on_the_paper_and_letters_do_not_run_into_each_other()
    {
        // Two long names in every bar of two quarters.
        var score = warm.Engrave(
            PianoXml.Rag(
                24,
                _ =>
                    PianoXml.Harmony("B", -1, "half-diminished", "m7b5")
                    + PianoXml
                        .Harmony("E", -1, "dominant", "7sus4")
                        .Replace("</harmony>", "<offset>4</offset></harmony>", StringComparison.Ordinal)
            )
        );
        using var pdf = Open(score);
        foreach (var page in pdf.GetPages())
        {
            Assert.Contains("E♭7sus4", page.Text, StringComparison.Ordinal);
            Assert.All(
                page.Letters,
                l =>
                {
                    Assert.InRange(l.BoundingBox.Left, 0, page.Width);
                    Assert.InRange(l.BoundingBox.Right, 0, page.Width);
                    Assert.InRange(l.BoundingBox.Bottom, 0, page.Height);
                    Assert.InRange(l.BoundingBox.Top, 0, page.Height);
                }
            );
            foreach (var line in page.Letters.GroupBy(l => Math.Round(l.StartBaseLine.Y)))
            {
                var letters = line.OrderBy(l => l.StartBaseLine.X).ToList();
                Assert.All(letters.Zip(letters.Skip(1)), pair => Assert.False(Overlap(pair.First, pair.Second)));
            }
        }
    }

    [Fact]
    public void No_chord_is_printed_as_such_and_not_as_a_root()
    {
        const string NoChord =
            "<harmony><root><root-step text=\"\">C</root-step></root><kind text=\"N.C.\">none</kind></harmony>";
        using var pdf = Open(warm.Engrave(PianoXml.Rag(2, bar => NoChord)));
        Assert.Equal(2, pdf.GetPage(1).Text.Split("N.C.").Length - 1);
    }

    [Fact]
    public void The_same_score_gives_the_same_bytes()
    {
        var score = warm.Engrave(PianoXml.Rag(4));
        Assert.Equal(Write(score), Write(score));
    }

    private static bool Overlap(Letter left, Letter right) => right.StartBaseLine.X < left.EndBaseLine.X - 0.5;

    private static PdfDocument Open(EngravedScore score) => PdfDocument.Open(Write(score));

    private static byte[] Write(EngravedScore score)
    {
        using var stream = new MemoryStream();
        PdfWriter.Write(score, stream);
        return stream.ToArray();
    }
}
