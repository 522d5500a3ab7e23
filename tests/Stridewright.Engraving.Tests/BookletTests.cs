using UglyToad.PdfPig;

namespace Stridewright.Engraving.Tests;

public sealed class BookletTests(WarmEngraver warm)
{
    [Fact]
    public void Rows_tell_the_pages_of_marks_that_come_later()
    {
        var texts = Texts(
            new BookletHeading("Contents"),
            new BookletRow(["The last", "@to-the-very-last-one"], [0.97, 0.03]),
            new BookletText("lamps @home and @last"),
            new BookletHeading("Middle") { NewPage = true },
            new BookletHeading("The last one") { NewPage = true, Mark = "to-the-very-last-one" }
        );
        Assert.Equal(3, texts.Count);
        Assert.Contains("3", texts[0], StringComparison.Ordinal);
        Assert.DoesNotContain("@to", texts[0], StringComparison.Ordinal);
        Assert.Contains("@home", texts[0], StringComparison.Ordinal);
        // Pages are numbered from the second on.
        Assert.EndsWith("2", texts[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_group_is_not_torn_and_long_text_goes_on_to_the_next_page()
    {
        var lines = Enumerable.Range(1, 44).Select(BookletPart (i) => new BookletText($"line {i}")).ToList();
        var group = new BookletGroup([
            new BookletHeading("Group head"),
            new BookletText("a"),
            new BookletText("Group end"),
        ]);
        var texts = Texts([.. lines, group]);
        Assert.Equal(2, texts.Count);
        Assert.Contains("head", texts[1], StringComparison.Ordinal);
        Assert.Contains("end", texts[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_strip_of_music_stands_among_text_and_is_as_high_as_its_music()
    {
        var setup = PageSetup.Default with { Cut = true, Named = false, Header = false, EndMargin = 1 };
        var strip = warm.Engraver.Engrave(PianoXml.Rag(4), setup, TestContext.Current.CancellationToken);
        Assert.NotNull(strip.Value);
        var svg = Assert.Single(strip.Value.Pages);
        var pages = BookletLayout
            .LayOut(
                "Booklet",
                Enumerable
                    .Range(0, 9)
                    .Select(i => new BookletStrip(svg))
                    .Prepend<BookletPart>(new BookletHeading("Music")),
                PageSetup.Default
            )
            .Pages;
        // Nine systems of piano music need more than a page, each whole page has several.
        Assert.InRange(pages.Count, 2, 5);
        Assert.All(pages.SkipLast(1), page => Assert.True(page.AsSpan().Count("class=\"system\"") >= 2));
        Assert.Equal(9, pages.Sum(page => page.AsSpan().Count("class=\"system\"")));
        Assert.DoesNotContain("xlink", pages[0], StringComparison.Ordinal);
    }

    private static List<string> Texts(params BookletPart[] parts)
    {
        using var bytes = new MemoryStream();
        PdfWriter.Write(BookletLayout.LayOut("Booklet", parts, PageSetup.Default), bytes);
        using var pdf = PdfDocument.Open(bytes.ToArray());
        return [.. pdf.GetPages().Select(p => p.Text)];
    }
}
