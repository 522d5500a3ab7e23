using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Where a tune's bars do not simply follow each other, and where a short bar lies in its metre.</summary>
internal static class BarSeams
{
    /// <summary>The written order is not the played one before this bar: a repeat or an ending begins or ends.</summary>
    public static bool TurnBefore(Tune tune, int index) =>
        index == 0
        || tune.Bars[index].Marks.RepeatStart
        || tune.Bars[index - 1].Marks.RepeatEnd > 0
        || !tune.Bars[index].Marks.Ending.Equals(tune.Bars[index - 1].Marks.Ending);

    /// <summary>A strain begins with this bar.</summary>
    public static bool StrainBefore(Tune tune, int index)
    {
        if (index == 0)
        {
            return true;
        }
        var before = tune.Bars[index - 1].Marks;
        return tune.Bars[index].Marks.RepeatStart
            || tune.Bars[index].Section is not null
            || before.DoubleBarAfter
            || (before.RepeatEnd > 0 && tune.Bars[index].Marks.Ending.Count == 0);
    }

    /// <summary>A short bar here lacks its beginning, not its end.</summary>
    public static bool IsPickUp(Tune tune, int index) =>
        StrainBefore(tune, index) || tune.Bars[index - 1].Length < tune.Bars[index - 1].Metre.BarLength;

    /// <summary>What of the metre's bar is missing before this bar's first place.</summary>
    public static ScoreTime Lead(Tune tune, int index)
    {
        var missing = tune.Bars[index].Metre.BarLength - tune.Bars[index].Length;
        return missing > ScoreTime.Zero && IsPickUp(tune, index) ? missing : ScoreTime.Zero;
    }
}
