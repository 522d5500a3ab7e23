using System.Globalization;

namespace Stridewright.Hands;

/// <summary>A length as a player types it: <c>205</c>, <c>205mm</c>, <c>20.5 cm</c>, <c>8.1in</c>, <c>8.1"</c>.</summary>
internal static class LengthText
{
    public const double MmPerInch = 25.4;

    /// <summary>Longest text looked at; a length takes ten characters.</summary>
    private const int LongestText = 40;

    private static readonly (string Unit, double Mm)[] Units =
    [
        ("mm", 1),
        ("cm", 10),
        ("inches", MmPerInch),
        ("inch", MmPerInch),
        ("in", MmPerInch),
        ("\"", MmPerInch),
        ("″", MmPerInch),
    ];

    /// <summary>Millimetres of a text, within limits; else the reason in <paramref name="problem"/>.</summary>
    public static bool TryRead(
        string? text,
        string what,
        string examples,
        (double Least, double Most) range,
        out double mm,
        out string problem
    )
    {
        text = (text ?? "").Trim();
        problem = "";
        if (!TryMm(text, out mm))
        {
            var shown = text.Length > LongestText ? text[..LongestText] + "…" : text;
            problem = HandsMessages.NotALength(shown, what, examples);
        }
        else if (mm < range.Least || mm > range.Most)
        {
            problem = HandsMessages.LengthOutOfRange(text, mm, what, range.Least, range.Most);
        }
        return problem.Length == 0;
    }

    public static bool HasUnit(string text) => UnitOf(text).Unit.Length > 0;

    private static (string Unit, double Mm) UnitOf(string text) =>
        Array.Find(Units, u => text.EndsWith(u.Unit, StringComparison.OrdinalIgnoreCase)) is { Unit: not null } found
            ? found
            : ("", 1);

    private static bool TryMm(string text, out double mm)
    {
        var (unit, factor) = UnitOf(text);
        mm = 0;
        if (
            text.Length > LongestText
            || !double.TryParse(
                text[..^unit.Length].Trim(),
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var number
            )
            || !double.IsFinite(number)
        )
        {
            return false;
        }
        mm = factor == 1 ? number : Math.Round(number * factor, 6); // 8.1 in are 205.74 mm, not 205.73999999999998
        return true;
    }
}
