using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The twelve keys as they are practised: round by fourths, each tonic's chord leading to the next (F, Bb, Eb, …), from
/// the tune's own key on (common practice).
/// </summary>
public static class TwelveKeys
{
    /// <summary>
    /// Tonics in order. Of the two ways to spell a key the one with fewer accidentals in its signature is taken, of six
    /// flats and six sharps the flats; the first stays as the tune has it.
    /// </summary>
    public static ValueList<Tone> From(Key key) =>
        Enumerable
            .Range(0, 12)
            .Select(fourths => fourths == 0 ? key.Tonic : Spelled(key.Tonic.PlusFifths(-fourths), key.Mode))
            .ToValueList();

    private static Tone Spelled(Tone tonic, Mode mode) =>
        Enumerable
            .Range(-4, 9)
            .Select(turns => tonic.PlusFifths(12 * turns))
            .OrderBy(tone => Math.Abs(new Key(tone, mode).Signature))
            .ThenBy(tone => tone.Fifths)
            .First();
}
