using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What a hand reaches in one manner, in intervals.</summary>
/// <param name="Semitones">Every interval up to this one lies so from every key.</param>
/// <param name="Partly">Wider ones that lie so from some keys only, narrower first.</param>
public sealed record ReachRow(Stretch Manner, int Semitones, ValueList<PartlyReached> Partly);

/// <summary>An interval that a hand reaches from some keys.</summary>
/// <param name="From">Names of the lower keys, such as <c>C</c>.</param>
public sealed record PartlyReached(int Semitones, ValueList<string> From);

/// <summary>What a hand reaches comfortably, at all, and with strain.</summary>
public static class ReachTable
{
    /// <summary>A row for each manner but out of reach, the easiest first.</summary>
    public static ValueList<ReachRow> Of(Reach reach)
    {
        ArgumentNullException.ThrowIfNull(reach);
        return new[] { Stretch.Comfortable, Stretch.Possible, Stretch.Strained }
            .Select(manner => Row(reach, manner))
            .ToValueList();
    }

    /// <summary>An interval by name, such as <c>minor tenth</c>.</summary>
    /// <param name="semitones">0 to 24; beyond, a number of semitones.</param>
    public static string NameOf(int semitones) => HandsMessages.IntervalName(semitones);

    private static ReachRow Row(Reach reach, Stretch manner)
    {
        var every = 0;
        while (every < 24 && From(every + 1).Count == 12)
        {
            every++;
        }
        var partly = Enumerable
            .Range(every + 1, 24 - every)
            .Select(n => new PartlyReached(n, From(n).Select(HandsMessages.NoteName).ToValueList()))
            .Where(p => p.From.Count > 0);
        return new(manner, every, partly.ToValueList());

        List<int> From(int semitones) =>
            [.. Enumerable.Range(60, 12).Where(key => reach.Of(key, key + semitones) <= manner)];
    }
}
