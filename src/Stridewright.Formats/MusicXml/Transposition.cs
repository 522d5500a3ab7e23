using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// From written to sounding pitch, staff by staff (MusicXML 4.0, <c>transpose</c>: one without a number is for all staves
/// of the part). In a concert score only octaves may differ (<c>concert-score</c>), and what <c>for-part</c> says is about
/// parts yet to be made from it.
/// </summary>
internal sealed class Transposition(bool isConcert)
{
    private readonly Dictionary<int, Interval> _staves = [];
    private Interval _all = Interval.Unison;

    public Interval Of(int staff) => _staves.GetValueOrDefault(staff, _all);

    /// <summary>Takes over what an <c>attributes</c> element says.</summary>
    public void Read(Element attributes, Place place, Findings findings)
    {
        foreach (var transpose in attributes.All("transpose"))
        {
            var interval = AttributeReader.ReadTranspose(transpose, place, findings);
            if (isConcert && interval.Semitones % 12 != 0)
            {
                findings.Warn(place, MusicXmlMessages.TransposedConcertScore);
                interval = Interval.Unison;
            }
            var number = int.TryParse(transpose["number"], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                ? Math.Clamp(n, 1, 99)
                : (int?)null;
            var before = Of(number ?? 1);
            if (number is { } staff)
            {
                _staves[staff] = interval;
            }
            else
            {
                _staves.Clear();
                _all = interval;
            }
            if (interval != before && interval != Interval.Unison)
            {
                findings.Note(place, MusicXmlMessages.Transposing);
            }
        }
    }
}
