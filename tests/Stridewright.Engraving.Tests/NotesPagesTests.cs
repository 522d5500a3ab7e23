using UglyToad.PdfPig;

namespace Stridewright.Engraving.Tests;

public sealed class NotesPagesTests(WarmEngraver warm)
{
    // As many notes as two pages hold, each of several lines.
    private static string Noted(int notes)
    {
        var fields = string.Concat(
            Enumerable
                .Range(1, notes)
                .Select(n => $"<miscellaneous-field name=\"footnote-{n}\">{Text(n)}</miscellaneous-field>")
        );
        return PianoXml
            .Rag(8)
            .Replace(
                "</identification>",
                $"<miscellaneous>{fields}</miscellaneous></identification>",
                StringComparison.Ordinal
            );
    }

    private static string Text(int note) =>
        $"bar {note}: B♭ a sixteenth early, held over mid-bar: " + string.Join(' ', Enumerable.Repeat("kettle", 24));

    [Fact]
    public void Footnotes_stand_on_pages_after_the_music_numbered_and_inside_the_margins()
    {
        var bare = warm.Engrave(PianoXml.Rag(8));
        var score = warm.Engrave(Noted(30));
        Assert.Equal(bare.Pages, score.Pages.Take(bare.Pages.Count));
        Assert.True(score.Pages.Count >= bare.Pages.Count + 2);
        using var stream = new MemoryStream();
        PdfWriter.Write(score, stream);
        using var pdf = PdfDocument.Open(stream.ToArray());
        var pages = pdf.GetPages().Skip(bare.Pages.Count).ToList();
        var words = pages.SelectMany(p => p.GetWords()).ToList();
        Assert.Equal("Notes", words[0].Text);
        for (var note = 1; note <= 30; note++)
        {
            Assert.Single(words, w => w.Text == $"{note}:");
        }
        Assert.Equal(30 * 24, words.Count(w => w.Text == "kettle"));
        // The flat comes from another face, which a reader of pages takes for another word.
        Assert.Equal(30, pages.Sum(p => p.Letters.Count(l => l.Value == "♭")));
        const double point = 25.4 / 72;
        Assert.All(
            words,
            w =>
            {
                Assert.InRange(w.BoundingBox.Left * point, score.Setup.SideMargin - 0.5, score.Setup.Width);
                Assert.InRange(w.BoundingBox.Right * point, 0, score.Setup.Width - score.Setup.SideMargin + 0.5);
                Assert.InRange(w.BoundingBox.Bottom * point, score.Setup.EndMargin / 2 - 1, score.Setup.Height);
            }
        );
    }

    [Fact]
    public void Without_footnotes_there_is_no_such_page() =>
        Assert.DoesNotContain(
            warm.Engrave(PianoXml.Rag(8)).Pages,
            p => p.Contains("class=\"notes\"", StringComparison.Ordinal)
        );
}
