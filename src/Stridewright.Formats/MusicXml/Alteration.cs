using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Reads alterations in semitones; quarter tones are rounded, since a piano has none.</summary>
internal static class Alteration
{
    private const int Most = 3;

    public static int Read(Element holder, string name, Place place, Findings findings)
    {
        if (holder.TextOf(name) is not { } text)
        {
            return 0;
        }
        if (
            !decimal.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var semitones)
            || Math.Abs(semitones) > Most
        )
        {
            findings.Warn(place, MusicXmlMessages.BadAlteration(Element.Clean(text)));
            return 0;
        }
        var whole = decimal.Truncate(semitones);
        if (whole != semitones)
        {
            findings.Warn(place, MusicXmlMessages.QuarterTone);
        }
        return (int)whole;
    }
}
