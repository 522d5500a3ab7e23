using CsCheck;
using Stridewright.Music;

namespace Stridewright.Hands.Tests;

/// <summary>The search against all fingerings, tried one by one.</summary>
public sealed class SearchTests
{
    /// <summary>Strokes of one hand: chords of up to three keys, some of them held over the next strokes in a voice of their
    /// own, rests, repeated keys, leaps.</summary>
    private static Gen<Score> Passages(Hand side) =>
        Gen.Select(Gen.Int[0, 14], Gen.Int[1, 7], Gen.Int[1, 8], Gen.Int[0, 11], Gen.Int[1, 3])
            .Array[2, 5]
            .Select(strokes => Passage(side, strokes));

    private static Score Passage(Hand side, (int At, int Second, int Third, int Kind, int Eighths)[] strokes)
    {
        var upper = new List<ScoreEvent>();
        var lower = new List<ScoreEvent>();
        var time = ScoreTime.Zero;
        foreach (var (at, second, third, kind, eighths) in strokes)
        {
            var key = (side == Hand.Right ? 62 : 40) + at;
            int[] keys =
                kind < 5 ? [key]
                : kind < 7 ? [key, key + second]
                : kind < 8 ? [key, key + second, key + second + third]
                : [];
            if (keys.Length > 0)
            {
                upper.Add(Event(time, ScoreTime.Eighth, keys));
            }
            if (kind >= 9)
            {
                upper.Add(Event(time, ScoreTime.Eighth, [key]));
                lower.Add(Event(time, ScoreTime.Eighth * eighths, [key + (at % 2 == 0 ? second : -second)]));
            }
            time += kind == 8 ? ScoreTime.Quarter : ScoreTime.Eighth;
        }
        time += ScoreTime.Half;
        return new()
        {
            Title = "random",
            Bars =
            [
                new()
                {
                    Number = "1",
                    Metre = Metre.FourFour,
                    Key = default,
                    Length = time,
                    Voices = [new(side, 1, upper.ToValueList()), new(side, 2, lower.ToValueList())],
                },
            ],
        };
    }

    private static ScoreEvent Event(ScoreTime at, ScoreTime length, int[] keys) =>
        new(at, length, new NoteValue(8))
        {
            Notes = keys.Distinct().Order().Select(k => new ScoreNote(Fingered.PitchOf(k))).ToValueList(),
        };

    [Theory]
    [InlineData(Hand.Right, 205)]
    [InlineData(Hand.Left, 205)]
    [InlineData(Hand.Right, 175)]
    [InlineData(Hand.Left, 240)]
    public void The_search_finds_what_trying_all_fingerings_finds(Hand side, int span)
    {
        var held = 0;
        var chords = 0;
        Passages(side)
            .Sample(
                score =>
                {
                    var hands = new PlayerHands { SpanMm = span };
                    var hand = FingerHand.Of(hands, side);
                    var line = new LineCosts(CostTable.Shipped, hand);
                    var passage = new Passage(score, null);
                    var onsets = Onset.Of(passage, side, new Reach(hands, side));
                    var grasps = new GraspMaker(passage, hand, line, FingerMarks.Read(score), []).Of(onsets);
                    // The hand's limits are reckoned anew here; what lies beyond them is not what this compares.
                    if (grasps.Count == 0 || grasps.Exists(g => g.Kind != GraspKind.Within))
                    {
                        return true;
                    }
                    Interlocked.Add(ref held, grasps.Count(g => g.Keys.Length > g.StruckCount));
                    Interlocked.Add(ref chords, grasps.Count(g => g.StruckCount > 1));
                    var all = grasps.Select(g => Legal(g, side, span)).ToList();
                    if (all.Aggregate(1.0, (n, f) => n * f.Count) > 30_000)
                    {
                        return true;
                    }
                    var search = new FingerSearch(line);
                    var (fingers, cost) = search.Solve(grasps, default);
                    return cost == Cost(search, grasps, fingers) && cost == Least(search, grasps, all);
                },
                iter: 200
            );
        Assert.True(held > 30 && chords > 100, $"{held} held, {chords} chords: too few were tried");
    }

    private static int Cost(FingerSearch search, List<Grasp> grasps, byte[][] fingers)
    {
        var sum = new CostSum();
        for (var i = 0; i < grasps.Count; i++)
        {
            search.Explain(grasps, fingers, i, ref sum);
        }
        return sum.Total;
    }

    private static int Least(FingerSearch search, List<Grasp> grasps, List<List<byte[]>> all)
    {
        var least = int.MaxValue;
        var chosen = new byte[grasps.Count][];
        Try(0);
        return least;

        void Try(int at)
        {
            if (at == grasps.Count)
            {
                least = Math.Min(least, Cost(search, grasps, chosen));
                return;
            }
            foreach (var fingers in all[at])
            {
                chosen[at] = fingers;
                Try(at + 1);
            }
        }
    }

    /// <summary>Every choice of fingers for a grasp's keys that a hand can take, from the span table and the rules of order.</summary>
    private static List<byte[]> Legal(Grasp grasp, Hand side, double span)
    {
        var count = grasp.Keys.Length;
        var found = new List<byte[]>();
        for (var code = 0; code < Math.Pow(5, count); code++)
        {
            var fingers = Enumerable.Range(0, count).Select(i => (byte)(code / (int)Math.Pow(5, i) % 5 + 1)).ToArray();
            var fits = true;
            for (var i = 0; i < count && fits; i++)
            {
                for (var j = i + 1; j < count && fits; j++)
                {
                    fits = HandLimits.Fits(grasp, fingers, i, j, side, span);
                }
            }
            if (fits)
            {
                found.Add(fingers);
            }
        }
        return found;
    }
}
