using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>
/// What two fingers of a hand can have down at once, reckoned here from the printed table of practical spans
/// (Parncutt et al. 1997) and the measured span, on a keyboard of 165.1 mm an octave.
/// </summary>
internal static class HandLimits
{
    private static readonly Dictionary<(int, int), (int Least, int Most)> Practical = new()
    {
        [(1, 2)] = (-5, 10),
        [(1, 3)] = (-4, 12),
        [(1, 4)] = (-3, 14),
        [(1, 5)] = (-1, 15),
        [(2, 3)] = (1, 5),
        [(2, 4)] = (1, 7),
        [(2, 5)] = (2, 10),
        [(3, 4)] = (1, 4),
        [(3, 5)] = (1, 7),
        [(4, 5)] = (1, 5),
    };

    /// <param name="i">Index of a key of the grasp, nearer the thumb's side than <paramref name="j"/>.</param>
    public static bool Fits(Grasp grasp, byte[] fingers, int i, int j, Hand side, double span)
    {
        var (bothStruck, whites) = (
            grasp.IsStruck[i] && grasp.IsStruck[j],
            !Keyboard.IsBlack(grasp.Keys[i]) && !Keyboard.IsBlack(grasp.Keys[j])
        );
        if (fingers[i] == fingers[j])
        {
            var isNeighbour = j == i + 1 && Math.Abs(grasp.Keys[i] - grasp.Keys[j]) <= 2;
            return fingers[i] == 1 && bothStruck && whites && isNeighbour && grasp.IsStruck.Count(s => s) >= 3;
        }
        if (bothStruck && fingers[i] > fingers[j])
        {
            return false;
        }
        var (low, high) = fingers[i] < fingers[j] ? (i, j) : (j, i);
        var sign = side == Hand.Right ? 1 : -1;
        var keyboard = new Keyboard(165.1);
        var mm = sign * (keyboard.X(grasp.Keys[high]) - keyboard.X(grasp.Keys[low]));
        var semitone = 165.1 / 12;
        var (least, most) = Practical[(fingers[low], fingers[high])];
        // As measured, or of it the table's share: 1-5 the span less 4 mm, 2-5 its own span, 6.0 of 8.5 of the other.
        var reach = fingers[low] == 1 ? span * most / 15 - 4 : span * 6.0 / 8.5 * most / 10;
        return Math.Round(mm / semitone) >= least && mm <= reach + 1e-4;
    }
}
