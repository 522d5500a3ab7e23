using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>A key struck in a take.</summary>
/// <param name="Seconds">From any beginning; rising.</param>
public readonly record struct StruckKey(double Seconds, int Key);

/// <summary>What a take of the leap test gave.</summary>
/// <param name="LeapBitsPerSecond">Bits a second of the fastest part that was landed; the parts before it were too.</param>
/// <param name="StrokesPerSecond">The same of strokes; null: none of these parts was landed.</param>
/// <param name="Sentences">How many of each part were landed.</param>
public sealed record LeapTestResult(
    Hand Hand,
    double LeapBitsPerSecond,
    double? StrokesPerSecond,
    ValueList<string> Sentences
);

/// <summary>
/// Measures a take. The strokes of the test are looked for in the take in their order, whatever stands between. A move is
/// landed where its two strokes follow each other with no other key between, in at most one and a half times the time asked.
/// A part is landed with nine tenths of its moves, and a hand's limit is what it really did in the last part of an unbroken
/// row of landed ones: sum of bits by sum of seconds (Fitts 1954), or strokes by seconds.
/// </summary>
public static class LeapTestReading
{
    /// <summary>Strokes looked at: a take of the test has under two hundred.</summary>
    public const int MostStrokes = 5000;

    private const double LandedShare = 0.9,
        LatestTimes = 1.5;

    /// <summary>Measures a take of either hand's test, whichever it is nearer to; the value is null, with the reason, when it
    /// is no take of the test or its first part was not landed.</summary>
    /// <param name="octaveMm">Octave width of the keyboard.</param>
    public static Reading<LeapTestResult> Measure(IReadOnlyList<StruckKey> take, double octaveMm)
    {
        ArgumentNullException.ThrowIfNull(take);
        if (take.Count > MostStrokes)
        {
            return Failed(PlayerMessages.TakeTooLong(MostStrokes));
        }
        var found = new[] { Hand.Left, Hand.Right }
            .Select(hand => (Hand: hand, Parts: LeapTest.Parts(hand), Found: Align(LeapTest.Parts(hand), take)))
            .MaxBy(f => f.Found.Count(at => at >= 0));
        var (parts, places) = (found.Parts, found.Found);
        var inFirst = places.Take(parts[0].Keys.Count).Count(at => at >= 0);
        if (2 * inFirst < parts[0].Keys.Count)
        {
            return Failed(PlayerMessages.NoTakeOfTest(inFirst, parts[0].Keys.Count));
        }
        var keyboard = new Keyboard(octaveMm);
        var sentences = new List<string>();
        double? leaps = null,
            strokes = null;
        var (first, isLanded, landedLeaps) = (0, true, 0);
        for (var p = 0; p < parts.Count; p++)
        {
            var part = parts[p];
            isLanded |= p > 0 && parts[p - 1].IsLeaps != part.IsLeaps; // strokes are a row of their own
            var (landed, rate) = Landed(part, places.AsSpan(first, part.Keys.Count), take, keyboard);
            first += part.Keys.Count;
            var moves = part.Keys.Count - 1;
            isLanded &= landed >= LandedShare * moves;
            sentences.Add(PlayerMessages.Landed(p + 1, part.IsLeaps, landed, moves, rate));
            landedLeaps = p == 0 ? landed : landedLeaps;
            (leaps, strokes) = (isLanded && part.IsLeaps ? rate : leaps, isLanded && !part.IsLeaps ? rate : strokes);
        }
        return leaps is { } bits
            ? new(new LeapTestResult(found.Hand, bits, strokes, sentences.ToValueList()), [])
            : Failed(PlayerMessages.FirstPartMissed(landedLeaps, parts[0].Keys.Count - 1));
    }

    // Moves landed, and their rate: bits or strokes a second; 0 without any.
    private static (int Landed, double Rate) Landed(
        LeapTestPart part,
        ReadOnlySpan<int> places,
        IReadOnlyList<StruckKey> take,
        Keyboard keyboard
    )
    {
        var (landed, bits, seconds) = (0, 0.0, 0.0);
        for (var i = 1; i < places.Length; i++)
        {
            if (places[i] < 1 || places[i] != places[i - 1] + 1)
            {
                continue;
            }
            var time = take[places[i]].Seconds - take[places[i] - 1].Seconds;
            if (time > 0 && time <= LatestTimes * part.Seconds)
            {
                landed++;
                seconds += time;
                bits += part.IsLeaps ? Leap.Bits(keyboard.Distance(part.Keys[i - 1], part.Keys[i]), keyboard) : 1;
            }
        }
        return (landed, seconds > 0 ? bits / seconds : 0);
    }

    /// <summary>For each stroke of the test its place in the take, or -1: a longest common row, as early in the test as may
    /// be.</summary>
    private static int[] Align(ValueList<LeapTestPart> parts, IReadOnlyList<StruckKey> take)
    {
        int[] test = [.. parts.SelectMany(p => p.Keys)];
        var common = new int[test.Length + 1, take.Count + 1];
        for (var i = test.Length - 1; i >= 0; i--)
        {
            for (var j = take.Count - 1; j >= 0; j--)
            {
                common[i, j] =
                    test[i] == take[j].Key ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }
        var places = new int[test.Length];
        Array.Fill(places, -1);
        for (var (i, j) = (0, 0); i < test.Length && j < take.Count; )
        {
            if (test[i] == take[j].Key)
            {
                places[i++] = j++;
            }
            else if (common[i, j + 1] >= common[i + 1, j])
            {
                j++;
            }
            else
            {
                i++;
            }
        }
        return places;
    }

    private static Reading<LeapTestResult> Failed(string message) =>
        new(null, [new Diagnostic(Severity.Error, Place.Whole, message)]);
}
