using System.Xml.Linq;
using Stridewright.Music;
using UglyToad.PdfPig;

namespace Stridewright.Engraving.Tests;

public sealed class HandoutTests(WarmEngraver warm)
{
    private static readonly HandoutMusic Music = new("score", "The setting", [new NamedXml("", PianoXml.Rag(4))]);

    [Theory]
    // Paper in points of 1/72 inch: ISO 216 and ANSI/ASME Y14.1.
    [InlineData(Paper.A4, 595.28, 841.89)]
    [InlineData(Paper.Letter, 612, 792)]
    public void A_handout_is_one_page_with_all_its_words_as_text(Paper paper, double width, double height)
    {
        var sheet = new HandoutSheet(
            "The Ferry Bell",
            "bars 5–8",
            [
                Music,
                new HandoutWords("text", "", ["Count aloud & smile <always>."]),
                new HandoutStaves("staves", "Your own", 2),
                new HandoutKeyboards("keyboard", "Keys", [Keys(48, 72)], "Squares and rings."),
            ]
        )
        {
            Composer = "Somebody",
            Pupil = "<b>Ada</b>",
            Foot = ["Ours; </text><script>no</script>"],
        };
        var drawn = Drawn(sheet, new PageSetup { Paper = paper });
        using var pdf = PdfDocument.Open(Pdf(drawn.Page!));
        var page = Assert.Single(pdf.GetPages());
        Assert.Equal(
            (width, height),
            (page.Width, page.Height),
            (a, b) => Near(a.Item1, b.Item1) && Near(a.Item2, b.Item2)
        );
        var words = string.Join(' ', page.GetWords().Select(w => w.Text));
        foreach (
            var said in new[]
            {
                "The Ferry Bell",
                "for <b>Ada</b>",
                "bars 5–8",
                "Somebody",
                "The setting",
                "Count aloud & smile <always>.",
                "Your own",
                "Squares and rings.",
                "</text><script>no</script>",
            }
        )
        {
            Assert.Contains(said, words, StringComparison.Ordinal);
        }
        Assert.DoesNotContain(XDocument.Parse(drawn.Page!.Pages[0]).Descendants(), e => e.Name.LocalName == "script");
    }

    [Fact]
    public void What_does_not_fit_is_told_with_the_room_of_each_part()
    {
        var sheet = new HandoutSheet("Long", "", [Music, new HandoutStaves("staves", "Own", 12)]);
        var drawn = Drawn(sheet, PageSetup.Default);
        Assert.Null(drawn.Page);
        Assert.True(drawn.Over > 0);
        Assert.Equal(["score", "staves"], drawn.Rooms.Select(r => r.Name));
        var less = Drawn(sheet with { Parts = [Music, new HandoutStaves("staves", "Own", 5)] }, PageSetup.Default);
        Assert.NotNull(less.Page);
    }

    [Fact]
    public void Smaller_print_is_taken_before_anything_is_refused()
    {
        const int Bars = 28;
        var cut = PageSetup.Default with { Cut = true, Header = false, EndMargin = 5 };
        var usual = warm.Engrave(PianoXml.Rag(Bars), cut).Height;
        var smallest = warm.Engrave(PianoXml.Rag(Bars), cut with { StaffHeight = 5 }).Height;
        var own = (int)Math.Ceiling((PageSetup.Default.Height - usual) / 30);
        var sheet = new HandoutSheet(
            "",
            "",
            [
                new HandoutMusic("score", "", [new NamedXml("", PianoXml.Rag(Bars))]),
                new HandoutStaves("staves", "", own),
            ]
        );
        Assert.True(smallest < usual - 20);
        Assert.NotNull(Drawn(sheet, PageSetup.Default).Page);
    }

    [Fact]
    public void Scores_below_each_other_have_their_bars_in_one_line()
    {
        var two = new HandoutMusic(
            "levels",
            "",
            [new NamedXml("level 1", PianoXml.Rag(4)), new NamedXml("level 2", PianoXml.Rag(4))]
        );
        var score = Handout
            .OneSystem(warm.Engraver, two, PageSetup.Default, TestContext.Current.CancellationToken)
            .Value!;
        var svg = Assert.Single(score.Pages);
        Assert.Equal(4, svg.AsSpan().Count("class=\"measure\""));
        Assert.Equal(16, svg.AsSpan().Count("class=\"staff\""));
        Assert.Contains("level 2", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void One_system_is_a_picture_of_its_own_size()
    {
        var short4 = Size(4);
        var long8 = Size(8);
        Assert.True(long8.Width > short4.Width * 1.5);
        Assert.Equal(short4.Height, long8.Height, 8.0);
        Assert.True(short4.Height < 60);

        (double Width, double Height) Size(int bars)
        {
            var music = new HandoutMusic("score", "", [new NamedXml("", PianoXml.Rag(bars))]);
            var score = Handout
                .OneSystem(warm.Engraver, music, PageSetup.Default, TestContext.Current.CancellationToken)
                .Value!;
            var box = XDocument.Parse(score.Pages[0]).Root!.Attribute("viewBox")!.Value.Split(' ');
            Assert.Equal(double.Parse(box[2]) / 10, score.Width, 0.1);
            Assert.Single(
                XDocument.Parse(score.Pages[0]).Descendants(),
                e => (string?)e.Attribute("class") == "system"
            );
            return (score.Width, score.Height);
        }
    }

    [Fact]
    public void A_keyboard_has_its_keys_where_they_are()
    {
        // An octave of a keyboard: seven white keys and five black ones, none between E and F, B and C.
        var sheet = new HandoutSheet("", "", [new HandoutKeyboards("keyboard", "", [Keys(60, 72)], "")]);
        var page = XDocument.Parse(Drawn(sheet, PageSetup.Default).Page!.Pages[0]);
        var keys = page.Descendants().Where(e => e.Name.LocalName == "rect" && Height(e) > 100).ToList();
        var (white, black) = (Filled("#ffffff"), Filled("#000000"));
        Assert.Equal((8, 5), (white.Count, black.Count));
        // A black key lies over the border of two white ones (Keyboard: its centre a few millimetres beside it).
        Assert.All(
            black,
            key => Assert.Contains(white, w => Math.Abs(X(w) - (X(key) + Width(key) / 2)) < 0.25 * Width(w))
        );
        // None lies at the border of E and F, which is the fourth of the white keys.
        Assert.DoesNotContain(black, key => X(key) < X(white[3]) && X(key) + Width(key) > X(white[3]));

        List<XElement> Filled(string colour) => [.. keys.Where(k => (string?)k.Attribute("fill") == colour)];
        static double X(XElement e) => (double)e.Attribute("x")!;
        static double Width(XElement e) => (double)e.Attribute("width")!;
        static double Height(XElement e) => (double)e.Attribute("height")!;
    }

    private HandoutDrawn Drawn(HandoutSheet sheet, PageSetup setup) =>
        Handout.Draw(warm.Engraver, sheet, setup, TestContext.Current.CancellationToken).Value!;

    private static bool Near(double a, double b) => Math.Abs(a - b) < 0.5;

    private static byte[] Pdf(EngravedScore score)
    {
        using var stream = new MemoryStream();
        PdfWriter.Write(score, stream);
        return stream.ToArray();
    }

    // Centres as in a drawing of a keyboard: white keys 23.5 mm apart, black ones near their borders.
    private static KeyboardDrawing Keys(int from, int to)
    {
        double[] centres = [0, 9.5, 23.5, 37.5, 47, 70.5, 78.5, 94, 105.5, 117, 132.5, 140.5];
        bool IsBlack(int key) => key % 12 is 1 or 3 or 6 or 8 or 10;
        var keys = Enumerable
            .Range(from, to - from + 1)
            .Select(k => new DrawnKey(164 * (k / 12) + centres[k % 12], IsBlack(k), "")
            {
                Marks = k == from + 4 ? [new KeyMark(Hand.Left, 5, true), new KeyMark(Hand.Right, 1, false)] : [],
            });
        return new("Bar 5, F", 23.5, 13.7, keys.ToValueList());
    }
}
