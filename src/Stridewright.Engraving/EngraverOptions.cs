using System.Text.Json;

namespace Stridewright.Engraving;

/// <summary>The engraver's options for a page setup; its lengths are tenths of a millimetre and half staff spaces.</summary>
internal static class EngraverOptions
{
    public static byte[] For(PageSetup setup)
    {
        Check(setup.SideMargin, 5, 40, nameof(setup.SideMargin));
        Check(setup.EndMargin, 5, 40, nameof(setup.EndMargin));
        Check(setup.StaffHeight, 4, 9, nameof(setup.StaffHeight));
        return JsonSerializer.SerializeToUtf8Bytes(
            new Dictionary<string, object>
            {
                ["inputFrom"] = "musicxml",
                ["pageWidth"] = Tenths(setup.Width),
                ["pageHeight"] = Tenths(setup.Height),
                ["pageMarginLeft"] = Tenths(setup.SideMargin),
                ["pageMarginRight"] = Tenths(setup.SideMargin),
                ["pageMarginTop"] = Tenths(setup.EndMargin),
                ["pageMarginBottom"] = Tenths(setup.EndMargin),
                // A staff is eight half spaces high.
                ["unit"] = setup.StaffHeight * 10 / 8,
                ["svgViewBox"] = true,
                ["header"] = setup.Header ? "auto" : "none",
                ["footer"] = "none",
                ["justifyVertically"] = true,
            }
        );
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
