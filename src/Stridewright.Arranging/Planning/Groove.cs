using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// When the left hand strikes in a bar: basses on strong beats, chords on weak ones. Places are ticks from the bar's
/// start. Source: march and two-step accompaniment, common practice (bass–chord–bass–chord in 2/4; bass–chord–chord in
/// 3/4; bass and chord in each half of 6/8).
/// </summary>
internal sealed record Groove(ValueList<int> Basses, ValueList<int> Chords)
{
    public static readonly Groove Empty = new([], []);

    /// <summary>The groove of a full bar.</summary>
    /// <param name="metre">Printed metre.</param>
    /// <param name="tick">Length of a tick.</param>
    public static Groove Of(Metre metre, ScoreTime tick)
    {
        var length = (int)metre.BarLength.Per(tick).Numerator;
        var pulse = (int)new ScoreTime(1, metre.Unit).Per(tick).Numerator;
        return (metre.Count, metre.Unit) switch
        {
            (2, 4) => Alternate(length, length / 2),
            (4, 4) or (2, 2) => Alternate(length, length / 2),
            (3, 4) => new([0], [pulse, 2 * pulse]),
            (6, 8) or (9, 8) or (12, 8) => Compound(length, 3 * pulse, 2 * pulse),
            (6, 4) => Compound(length, 3 * pulse, pulse, 2 * pulse),
            (3, 2) => Alternate(length, length / 3),
            _ => ByPulse(metre.Count, pulse),
        };
    }

    /// <summary>The same groove in a bar that lacks its beginning or its end.</summary>
    public Groove Within(int lead, int length) =>
        new(
            Basses.Where(t => t >= lead && t < lead + length).Select(t => t - lead).ToValueList(),
            Chords.Where(t => t >= lead && t < lead + length).Select(t => t - lead).ToValueList()
        );

    private static Groove Alternate(int length, int step) =>
        new(Steps(0, length, step).ToValueList(), Steps(step / 2, length, step).ToValueList());

    private static Groove Compound(int length, int beat, params int[] chords) =>
        new(
            Steps(0, length, beat).ToValueList(),
            Steps(0, length, beat).SelectMany(b => chords.Select(c => b + c)).ToValueList()
        );

    // Odd metres: twos, and a three at the end (5/4 is 2 + 3); bass on the first of each group.
    private static Groove ByPulse(int count, int pulse)
    {
        var basses = new List<int>();
        var chords = new List<int>();
        for (var at = 0; at < count; )
        {
            var group = count - at is 3 or 1 ? count - at : 2;
            basses.Add(at * pulse);
            for (var k = 1; k < group; k++)
            {
                chords.Add((at + k) * pulse);
            }
            at += group;
        }
        return new(basses.ToValueList(), chords.ToValueList());
    }

    private static IEnumerable<int> Steps(int from, int to, int by)
    {
        for (var t = from; t < to; t += Math.Max(1, by))
        {
            yield return t;
        }
    }
}
