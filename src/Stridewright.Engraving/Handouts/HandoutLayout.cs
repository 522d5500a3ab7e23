using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>Sets the head, the parts and the foot of a hand-out on one page. Lengths are in millimetres.</summary>
internal sealed class HandoutLayout(HandoutSheet sheet, PageSetup setup, IReadOnlyList<Strip?> strips)
{
    /// <summary>Of the strips, of which as much is cut off but what stands out of the staves is kept.</summary>
    public const double StripMargin = 5;
    private const double Cut = 4,
        Gap = 4.5,
        HeadingHeight = 6,
        HeadingPoints = 11.5,
        WordPoints = 11,
        LineHeight = 5.3,
        FootPoints = 8.5,
        FootLine = 3.8,
        TitlePoints = 20,
        KeyPoints = 9.5,
        KeyLine = 4.4,
        LongestHalf = 3,
        StaffHeight = 7.5,
        StaffGap = 9,
        SystemGap = 10,
        Gutter = 8;

    private double Room => setup.Width - 2 * setup.SideMargin;

    private double HeadHeight =>
        (sheet.Pupil is null ? 0 : 8)
        + (sheet.Title.Length > 0 ? 8.5 : 0)
        + (sheet.Subtitle.Length + sheet.Composer.Length > 0 ? 6.5 : 0)
        + 2;

    private List<string> Foot => [.. sheet.Foot.SelectMany(line => TextLines.Of(line, FootPoints, Room))];

    /// <summary>What the parts take, gaps counted.</summary>
    public ValueList<HandoutRoom> Rooms =>
        sheet.Parts.Select((p, i) => new HandoutRoom(p.Name, HeightOf(p, i) + Gap)).ToValueList();

    /// <summary>How far the page overflows; negative: it does not.</summary>
    public double Over =>
        HeadHeight + Rooms.Sum(r => r.Height) + FootLine * Foot.Count - (setup.Height - 2 * setup.EndMargin);

    public string Draw()
    {
        var page = new ChartMarks(setup.Width, setup.Height);
        Head(page);
        var y = setup.EndMargin + HeadHeight;
        for (var i = 0; i < sheet.Parts.Count; i++)
        {
            var part = sheet.Parts[i];
            if (part.Heading.Length > 0)
            {
                page.Text(part.Heading, setup.SideMargin, y + 4, HeadingPoints, bold: true);
            }
            Draw(page, part, i, y + (part.Heading.Length > 0 ? HeadingHeight : 0));
            y += HeightOf(part, i) + Gap;
        }
        var foot = setup.Height - setup.EndMargin - FootLine * (Foot.Count - 1);
        foreach (var line in Foot)
        {
            page.Text(line, setup.Width / 2, foot, FootPoints, "middle");
            foot += FootLine;
        }
        return page.ToString();
    }

    private void Head(ChartMarks page)
    {
        var (left, right, y) = (setup.SideMargin, setup.Width - setup.SideMargin, setup.EndMargin);
        if (sheet.Pupil is { } pupil)
        {
            var words = pupil.Length > 0 ? EngravingMessages.For(pupil) : EngravingMessages.NameLine;
            page.Text(words, left, y + 4, Fitted(words, 12, Room), italic: pupil.Length > 0);
            if (pupil.Length == 0)
            {
                var from = left + SvgText.WidthOf(words, 12 * PageFrame.Point) + 2;
                page.Line(from, y + 4.6, from + 70, y + 4.6);
            }
            y += 8;
        }
        if (sheet.Title.Length > 0)
        {
            page.Text(
                sheet.Title,
                setup.Width / 2,
                y + 6,
                Fitted(sheet.Title, TitlePoints, Room),
                "middle",
                bold: true
            );
            y += 8.5;
        }
        var third = Room / 3;
        page.Text(sheet.Subtitle, setup.Width / 2, y + 4, Fitted(sheet.Subtitle, 11, third), "middle", italic: true);
        page.Text(sheet.Composer, right, y + 4, Fitted(sheet.Composer, 10.5, third), "end");
    }

    private static double Fitted(string text, double points, double room) =>
        Math.Min(points, points * room / Math.Max(1, SvgText.WidthOf(text, points * PageFrame.Point) * 1.05));

    private double HeightOf(HandoutPart part, int index) =>
        (part.Heading.Length > 0 ? HeadingHeight : 0)
        + part switch
        {
            HandoutMusic => strips[index]!.Height - 2 * Cut,
            HandoutWords words => Lines(words).Count * LineHeight,
            HandoutStaves staves => staves.Systems * (2 * StaffHeight + StaffGap + SystemGap) - SystemGap + 2,
            HandoutKeyboards boards => Rows(boards).Sum(r => r.Height) + KeyLine * Key(boards).Count,
            _ => 0,
        };

    private void Draw(ChartMarks page, HandoutPart part, int index, double y)
    {
        switch (part)
        {
            case HandoutMusic:
                page.Put(strips[index]!.At(0, y - Cut, FormattableString.Invariant($"part{index + 1}")));
                break;
            case HandoutWords words:
                foreach (var line in Lines(words))
                {
                    page.Text(line, setup.SideMargin, y + 4, WordPoints);
                    y += LineHeight;
                }
                break;
            case HandoutStaves staves:
                for (var i = 0; i < staves.Systems; i++)
                {
                    Staves(page, y + 1 + i * (2 * StaffHeight + StaffGap + SystemGap));
                }
                break;
            case HandoutKeyboards boards:
                foreach (var row in Rows(boards))
                {
                    var x = setup.SideMargin;
                    foreach (var drawing in row.Drawings)
                    {
                        KeyboardPicture.Draw(page, drawing, x, y, row.Width, boards.Drawings.Count);
                        x += row.Width + Gutter;
                    }
                    y += row.Height;
                }
                foreach (var line in Key(boards))
                {
                    page.Text(line, setup.SideMargin, y + 2.5, KeyPoints);
                    y += KeyLine;
                }
                break;
        }
    }

    private void Staves(ChartMarks page, double y)
    {
        foreach (var top in new[] { y, y + StaffHeight + StaffGap })
        {
            for (var line = 0; line < 5; line++)
            {
                var at = top + line * StaffHeight / 4;
                page.Line(setup.SideMargin, at, setup.Width - setup.SideMargin, at);
            }
        }
        page.Line(setup.SideMargin, y, setup.SideMargin, y + 2 * StaffHeight + StaffGap);
    }

    private List<string> Lines(HandoutWords words) =>
        [.. words.Lines.SelectMany(l => TextLines.Of(l, WordPoints, Room))];

    private List<string> Key(HandoutKeyboards boards) => TextLines.Of(boards.Key, KeyPoints, Room);

    private List<(KeyboardDrawing[] Drawings, double Width, double Height)> Rows(HandoutKeyboards boards)
    {
        // Beyond three octaves the keys of half a row would be too narrow for a finger's number.
        var isShort = boards.Drawings.All(d => d.Octaves <= LongestHalf);
        var width = boards.Drawings.Count > 1 && isShort ? (Room - Gutter) / 2 : Room;
        return
        [
            .. boards
                .Drawings.Chunk(width < Room ? 2 : 1)
                .Select(row => (row, width, row.Max(d => KeyboardPicture.Height(d, width, boards.Drawings.Count)) + 1)),
        ];
    }
}
