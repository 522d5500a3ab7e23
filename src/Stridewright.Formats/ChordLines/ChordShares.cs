using Stridewright.Music;

namespace Stridewright.Formats.ChordLines;

/// <summary>
/// Where the chords of a bar begin: at strokes of the left hand (bass–chord–bass–chord in 2/4 and 4/4,
/// bass–chord–chord in 3/4, bass and chord in each half of 6/8; common practice), strong places first.
/// </summary>
internal sealed class ChordShares
{
    private static readonly Dictionary<(int Count, int Unit), (int Parts, int[][] Places)> Table = new()
    {
        [(2, 4)] = (
            4,
            [
                [0],
                [0, 2],
                [0, 2, 3],
                [0, 1, 2, 3],
            ]
        ),
        [(4, 4)] = (
            4,
            [
                [0],
                [0, 2],
                [0, 2, 3],
                [0, 1, 2, 3],
            ]
        ),
        [(3, 4)] = (
            3,
            [
                [0],
                [0, 2],
                [0, 1, 2],
            ]
        ),
        [(6, 8)] = (
            6,
            [
                [0],
                [0, 3],
                [0, 3, 5],
                [0, 2, 3, 5],
            ]
        ),
    };

    private readonly ScoreTime[][] _places;

    private ChordShares(ScoreTime[][] places) => _places = places;

    /// <summary>Most chords in a bar.</summary>
    public int Most => _places.Length;

    /// <summary>Null for a metre that chord lines are not read in.</summary>
    public static ChordShares? Of(Metre metre) =>
        Table.TryGetValue((metre.Count, metre.Unit), out var bar)
            ? new([.. bar.Places.Select(p => p.Select(i => metre.BarLength * i / bar.Parts).ToArray())])
            : null;

    /// <summary>Beginnings of this many chords; null for more than there is room for.</summary>
    public ScoreTime[]? Places(int chords) => chords <= Most ? _places[chords - 1] : null;
}
