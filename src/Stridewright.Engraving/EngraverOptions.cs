using System.Text;
using System.Text.Json.Nodes;

namespace Stridewright.Engraving;

/// <summary>The engraver's options for a page setup; its lengths are tenths of a millimetre and half staff spaces.</summary>
internal static class EngraverOptions
{
    // The engraver cuts a screen's pages and pictures to what stands on them; long pages are drawn more slowly.
    private const int Highest = 60_000,
        ScreenSystems = 6;

    // The engraver's most room under a header, in half spaces: in the smallest print it is a little less than wanted.
    private const double MostUnderHeader = 24;

    // The engraver's own size of words, in half spaces.
    private const double WordSize = 4.5;

    /// <param name="smallStaff">A small staff's height against the usual; 1: there is none. Its words are printed nearly as large as
    /// others.</param>
    /// <param name="systemsPerPage">Most systems on a page; 0: as many as fit.</param>
    /// <param name="breaks">How systems and pages are ended: <c>auto</c>, or <c>encoded</c> as the score says.</param>
    public static byte[] For(PageSetup setup, double smallStaff = 1, int systemsPerPage = 0, string breaks = "auto")
    {
        var halfSpace = setup.StaffHeight / 8;
        var isScreen = setup.ScreenWidth is not null;
        var isCut = isScreen || setup.Cut;
        var options = new JsonObject
        {
            ["inputFrom"] = "musicxml",
            ["pageWidth"] = Tenths(setup.Width),
            ["pageHeight"] = isCut ? Highest : Tenths(setup.Height),
            ["adjustPageHeight"] = isCut,
            ["pageMarginLeft"] = Tenths(setup.SideMargin),
            ["pageMarginRight"] = Tenths(setup.SideMargin),
            ["pageMarginTop"] = Tenths(setup.EndMargin),
            ["pageMarginBottom"] = Tenths(setup.EndMargin),
            // A staff is eight half spaces high.
            ["unit"] = halfSpace * 10,
            ["svgViewBox"] = true,
            ["header"] = setup.Header ? "auto" : "none",
            ["bottomMarginHeader"] = Math.Min(
                MostUnderHeader,
                PageFrame.HeaderHeight / halfSpace - PageFrame.MarkHalfSpaces
            ),
            ["footer"] = "none",
            ["breaks"] = breaks,
            ["minLastJustification"] = setup.Cut ? 0.3 : 0.65,
            ["justifyVertically"] = !isCut,
            ["spacingLinear"] = 0.36,
            ["spacingStaff"] = 9,
            ["spacingSystem"] = 3,
            // So large that a digit beside a stem is moved past its end.
            ["fingeringScale"] = 0.95,
            ["harmDist"] = 1.5,
            ["lyricSize"] = WordSize * 2 / (1 + smallStaff),
            ["lyricWordSpace"] = 3,
            ["lyricTopMinMargin"] = 3,
            ["systemMaxPerPage"] = isScreen ? ScreenSystems : systemsPerPage,
        };
        if (setup.Cut && setup.OneSystem)
        {
            options["breaks"] = "none";
            options["adjustPageWidth"] = true;
        }
        return Encoding.UTF8.GetBytes(options.ToJsonString());
    }

    /// <exception cref="ArgumentOutOfRangeException">A length is outside its range.</exception>
    public static void Check(PageSetup setup)
    {
        Check(setup.SideMargin, 5, 40, nameof(setup.SideMargin));
        Check(setup.EndMargin, setup.Cut ? 0 : 5, 40, nameof(setup.EndMargin));
        Check(setup.ScreenWidth ?? setup.Width, 60, 300, nameof(setup.ScreenWidth));
        Check(setup.StaffHeight, 4, 9, nameof(setup.StaffHeight));
    }

    private static int Tenths(double millimetres) => (int)Math.Round(millimetres * 10);

    private static void Check(double value, double least, double most, string name)
    {
        if (!(value >= least && value <= most))
        {
            throw new ArgumentOutOfRangeException(name, value, null);
        }
    }
}
