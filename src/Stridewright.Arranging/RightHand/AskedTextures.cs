using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Textures that a bar's manner asks for: thirds, sixths, octaves, octaves with inner notes, on every note of the
/// tune that these hands can take so.</summary>
internal static class AskedTextures
{
    /// <summary>Price of a tune note that is not as asked: more than any usual price, less than what the hands forbid.
    /// </summary>
    public const long Otherwise = 20_000;

    /// <summary>True where the manner says how thick a note is.</summary>
    public static bool Names(RightManner manner) =>
        manner
            is RightManner.Thirds
                or RightManner.Sixths
                or RightManner.Octaves
                or RightManner.FullOctaves
                or RightManner.ParallelRun
                or RightManner.ThumbTune;

    /// <summary>The manner that a note is to be thick by: fillers as usual, but for those of a device.</summary>
    public static RightManner For(RightNote note, LatticeBar bar) =>
        note.Use switch
        {
            RightUse.Run => RightManner.ParallelRun,
            RightUse.AfterBeat => RightManner.ThumbTune,
            _ when note.IsFiller => RightManner.Ragged,
            _ => bar.Treatment.Right is RightManner.ParallelRun or RightManner.ThumbTune
                ? RightManner.Ragged
                : bar.Treatment.Right,
        };

    /// <summary>True where a shape is as asked, or nothing is.</summary>
    /// <param name="below">Keys under the top one, lowest first.</param>
    public static bool Fits(RightManner manner, Pitch top, ValueList<Pitch> below) =>
        manner switch
        {
            RightManner.Thirds => below.Count == 1 && top.Midi - below[0].Midi is 3 or 4,
            RightManner.Sixths => below.Count == 1 && top.Midi - below[0].Midi is 8 or 9,
            RightManner.Octaves => below.Count == 1 && top.Midi - below[0].Midi == 12,
            RightManner.ParallelRun => below.Count == 1,
            RightManner.ThumbTune => below.Count == 2,
            RightManner.FullOctaves => below.Count > 1 && top.Midi - below[0].Midi == 12,
            _ => true,
        };

    /// <summary>The third or sixth of the key under a note, for notes that have none of the chord; null: none is asked
    /// for, or the key has none.</summary>
    public static Pitch? InKey(RightManner manner, Pitch top, Key key)
    {
        var (near, far) = manner switch
        {
            RightManner.Thirds => (3, 4),
            RightManner.Sixths => (8, 9),
            _ => (0, 0),
        };
        foreach (var under in near == 0 ? [] : new[] { near, far })
        {
            var tone = key.Spell(top.Midi - under);
            if (key.Contains(tone))
            {
                return Pitch.At(top.Midi - under, tone);
            }
        }
        return null;
    }
}
