using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>Names chords by their pitch classes (tones of the kinds: MusicXML 4.0, through <see cref="ChordSymbol"/>).</summary>
internal static class ChordNaming
{
    /// <summary>Keys below this one (E3) are basses; above it the lowest note is a matter of voicing.</summary>
    public const int BassBelow = 52;

    /// <summary>Kinds in the order in which they are tried.</summary>
    private static readonly ChordKind[] Kinds =
    [
        ChordKind.Major,
        ChordKind.Minor,
        ChordKind.Dominant,
        ChordKind.MinorSeventh,
        ChordKind.Diminished,
        ChordKind.Augmented,
        ChordKind.MajorSeventh,
        ChordKind.MajorSixth,
        ChordKind.MinorSixth,
        ChordKind.HalfDiminished,
        ChordKind.DiminishedSeventh,
        ChordKind.SuspendedFourth,
        ChordKind.SuspendedSecond,
        ChordKind.AugmentedSeventh,
        ChordKind.MajorMinor,
        ChordKind.DominantNinth,
        ChordKind.MajorNinth,
        ChordKind.MinorNinth,
    ];

    /// <summary>Pitch classes of each kind on C.</summary>
    private static readonly int[] Sets = [.. Kinds.Select(kind => new ChordSymbol(default, kind).PitchClassSet)];

    /// <summary>
    /// The chord of these pitch classes: all of them and no others, or all but one (left out, or added), the root in the
    /// bass where that can be. Null when there is none, or there are fewer than three pitch classes.
    /// </summary>
    /// <param name="lowest">The lowest key.</param>
    public static ChordSymbol? Name(int set, int lowest, Key key)
    {
        if (BitOperations.PopCount((uint)set) < 3)
        {
            return null;
        }
        (int Price, int Root, ChordKind Kind)? best = null;
        for (var above = 0; above < 12; above++)
        {
            var root = (lowest + above) % 12;
            for (var k = 0; k < Kinds.Length; k++)
            {
                var wrong = BitOperations.PopCount((uint)(On(root, Sets[k]) ^ set));
                // A fault weighs more than any inversion, that more than the order of kinds.
                var price = 1000 * wrong + (above == 0 ? 0 : 100) + k;
                if (wrong <= 1 && (best is null || price < best.Value.Price))
                {
                    best = (price, root, Kinds[k]);
                }
            }
        }
        if (best is not { } found)
        {
            return null;
        }
        var chord = new ChordSymbol(key.Spell(found.Root), found.Kind);
        return found.Root == lowest % 12 || lowest >= BassBelow
            ? chord
            : chord with
            {
                Bass = BassOf(chord, lowest, key),
            };
    }

    /// <summary>A set on C moved up to a root.</summary>
    public static int On(int root, int set) => (set << root | set >> (12 - root)) & 0xFFF;

    private static Tone BassOf(ChordSymbol chord, int lowest, Key key) =>
        chord.Tones.Cast<Tone?>().FirstOrDefault(t => t!.Value.PitchClass == lowest % 12) ?? key.Spell(lowest);
}
