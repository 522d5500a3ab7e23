using System.Globalization;

namespace Stridewright.Engraving;

/// <summary>Draws a stretch of a keyboard as it is seen from above, to one scale in its width; its length is shortened, as
/// in any drawing of a keyboard on a page.</summary>
internal static class KeyboardPicture
{
    // Keys are drawn two thirds as long against their width as they are; a black key has 95 of the 150 mm of a white one
    // (common measures of a piano).
    private const double Length = 100,
        BlackShare = 95.0 / 150,
        Tallest = 28,
        TallestOfSeveral = 20,
        NameHeight = 4.5,
        CaptionHeight = 4.6,
        CaptionPoints = 9.5,
        LargestMark = 5.4;

    /// <param name="together">How many drawings stand together: of several each is lower.</param>
    public static double Height(KeyboardDrawing drawing, double width, int together) =>
        KeysHeight(drawing, width, together) + NameHeight + CaptionHeight * Caption(drawing, width).Count + 1;

    /// <param name="x">Left edge, in millimetres like all that follows.</param>
    /// <param name="y">Upper edge.</param>
    public static void Draw(ChartMarks page, KeyboardDrawing drawing, double x, double y, double width, int together)
    {
        var scale = Scale(drawing, width);
        var left = drawing.Keys[0].Centre - drawing.WhiteWidth / 2;
        var height = KeysHeight(drawing, width, together);
        var (white, black) = (drawing.WhiteWidth * scale, drawing.BlackWidth * scale);
        double At(DrawnKey key) => x + (key.Centre - left) * scale;
        foreach (var key in drawing.Keys.Where(k => !k.IsBlack))
        {
            page.Frame(At(key) - white / 2, y, white, height);
            if (key.Name.Length > 0)
            {
                page.Text(key.Name, At(key), y + height + 3.4, 8, "middle");
            }
        }
        foreach (var key in drawing.Keys.Where(k => k.IsBlack))
        {
            page.Bar(At(key) - black / 2, y, black, height * BlackShare);
        }
        var size = Math.Min(LargestMark, white * 0.9);
        foreach (var key in drawing.Keys)
        {
            var at = y + height * (key.IsBlack ? BlackShare - 0.16 : 0.84);
            foreach (var mark in key.Marks)
            {
                Mark(page, mark, At(key), at, size);
                at -= size;
            }
        }
        var line = y + height + NameHeight + 3.4;
        foreach (var words in Caption(drawing, width))
        {
            page.Text(words, x, line, CaptionPoints);
            line += CaptionHeight;
        }
    }

    private static void Mark(ChartMarks page, KeyMark mark, double x, double y, double size)
    {
        if (mark.Hand == Music.Hand.Right)
        {
            page.Ring(x, y, size, mark.IsFirst);
        }
        else
        {
            // A white rim, so that a solid mark is seen on a black key.
            page.Frame(x - size / 2, y - size / 2, size, size);
            if (mark.IsFirst)
            {
                page.Bar(x - size * 0.42, y - size * 0.42, size * 0.84, size * 0.84);
            }
        }
        if (mark.Finger is { } finger)
        {
            var words = finger.ToString(CultureInfo.InvariantCulture);
            var colour = mark.IsFirst ? "#ffffff" : "#000000";
            page.Text(words, x, y + size * 0.26, size * 2.1, "middle", bold: true, colour: colour);
        }
    }

    private static double Scale(KeyboardDrawing drawing, double width) =>
        width / (drawing.Keys[^1].Centre - drawing.Keys[0].Centre + drawing.WhiteWidth);

    private static double KeysHeight(KeyboardDrawing drawing, double width, int together) =>
        Math.Min(together > 1 ? TallestOfSeveral : Tallest, Length * Scale(drawing, width));

    private static List<string> Caption(KeyboardDrawing drawing, double width) =>
        TextLines.Of(drawing.Caption, CaptionPoints, width);
}
