using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>A shape of the style with the fingering a teacher would write.</summary>
/// <param name="Bar">The hand's strokes, as <see cref="Written"/> reads them.</param>
/// <param name="Fingers">The fingers of each stroke from its lowest key up.</param>
internal sealed record StrideShape(string What, Hand Hand, string Bar, string Fingers, double SpanMm = 205);

/// <summary>
/// Thirty shapes of ragtime and stride, fingered by hand from common practice: triads in both hands as handbooks finger
/// their inversions, the fifth finger for the bass, octaves with the fourth finger on black keys. Written down before
/// the search was; not to be bent to what it gives.
/// </summary>
internal static class StrideShapes
{
    public static readonly StrideShape[] All =
    [
        Left("single bass, chord in root position", "C2/8 C3+E3+G3/8 G2/8 C3+E3+G3/8", "5 531 5 531"),
        Left("single bass, chord in first inversion", "C2/8 E3+G3+C4/8 G1/8 E3+G3+C4/8", "5 531 5 531"),
        Left("single bass, chord in second inversion", "C2/8 G3+C4+E4/8 G1/8 G3+C4+E4/8", "5 521 5 521"),
        Left("root and fifth in F", "F2/8 A3+C4+F4/8 C2/8 A3+C4+F4/8", "5 531 5 531"),
        Left("second inversion in B flat", "Bb1/8 F3+Bb3+D4/8 F2/8 F3+Bb3+D4/8", "5 521 5 521"),
        Left("root position in E flat", "Eb2/8 Eb3+G3+Bb3/8 Bb1/8 Eb3+G3+Bb3/8", "5 531 5 531"),
        Left("dominant seventh without its fifth", "G1/8 B2+F3+G3/8 D2/8 B2+F3+G3/8", "5 521 5 521"),
        Left("seventh chord of four keys", "C2/8 C3+E3+G3+Bb3/8 G1/8 C3+E3+G3+Bb3/8", "5 5321 5 5321"),
        Left("diminished seventh of four keys", "D2/8 B2+D3+F3+Ab3/8 D2/8 B2+D3+F3+Ab3/8", "5 5321 5 5321"),
        Left("bass octaves on white keys", "C2+C3/8 E3+G3+C4/8 G1+G2/8 E3+G3+C4/8", "51 531 51 531"),
        Left("bass octaves on black keys", "Eb2+Eb3/8 G3+Bb3+Eb4/8 Bb1+Bb2/8 G3+Bb3+Eb4/8", "41 531 41 531"),
        Left("bass octaves by semitones", "G1+G2/8 Ab1+Ab2/8 A1+A2/8 Bb1+Bb2/8", "51 41 51 41"),
        Left("bass octave with its fifth", "C2+G2+C3/8 E3+G3+C4/8 C2+G2+C3/8 E3+G3+C4/8", "521 531 521 531"),
        Left("tenths in a large hand", "C2+E3/4 D2+F3/4", "51 51", 230),
        Left("rolled tenth with its fifth", "*F2+C3+A3/4 F3+A3+C4/4", "521 531"),
        Left("bass beside its chord", "C3/8 E3+G3/8 C3/8 E3+G3/8", "5 31 5 31"),
        Left("waltz: bass and the chord twice", "F2/4 F3+A3+C4/4 F3+A3+C4/4", "5 531 531"),
        Left("three chords of a cadence", "C3+E3+G3/4 C3+F3+A3/4 B2+F3+G3/4 C3+E3+G3/4", "531 521 521 531"),
        Left("bass that walks up five keys", "G2/8 A2/8 B2/8 C3/8 D3/8", "5 4 3 2 1"),
        Left("minor chord in first inversion", "D2/8 F3+A3+D4/8 A1/8 F3+A3+D4/8", "5 531 5 531"),
        Right("a triad up its inversions", "C5+E5+G5/4 E5+G5+C6/4 G5+C6+E6/4", "135 125 135"),
        Right("a triad down to its second inversion", "F5+A5+C6/4 C5+F5+A5/4", "135 135"),
        Right("dominant seventh and tonic", "B4+F5+G5/4 C5+E5+G5/4", "145 135"),
        Right("seventh chord of four keys", "C5+E5+G5+Bb5/4", "1235"),
        Right("octave with the third and fifth inside", "C5+E5+G5+C6/4", "1235"),
        Right("octave with the fourth and sixth inside", "C5+F5+A5+C6/4", "1245"),
        Right("octaves with a third inside", "C5+E5+C6/8 D5+F5+D6/8", "125 125"),
        Right("thirds by step", "C5+E5/8 D5+F5/8 E5+G5/8", "13 24 35"),
        Right("sixths by step", "E5+C6/8 F5+D6/8 G5+E6/8", "15 15 15"),
        Right("octaves by step, one on a black key", "C5+C6/8 D5+D6/8 Eb5+Eb6/8 F5+F6/8", "15 15 14 15"),
    ];

    private static StrideShape Left(string what, string bar, string fingers, double spanMm = 205) =>
        new(what, Hand.Left, bar, fingers, spanMm);

    private static StrideShape Right(string what, string bar, string fingers) => new(what, Hand.Right, bar, fingers);
}
