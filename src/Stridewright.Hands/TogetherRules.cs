using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Both hands on one keyboard: shared keys, keys that are not there, and crossing, which is only remarked.</summary>
internal static class TogetherRules
{
    public static void Check(Passage passage, FaultList faults)
    {
        foreach (var sounding in passage.Soundings.Where(s => s.Key is < Keyboard.LowestKey or > Keyboard.HighestKey))
        {
            var limit = sounding.Key < Keyboard.LowestKey ? Keyboard.LowestKey : Keyboard.HighestKey;
            faults.Add(FaultKind.OffKeyboard, sounding, sounding.Key, limit, HandsMessages.OffKeyboard(sounding));
        }
        foreach (var key in passage.Soundings.GroupBy(s => s.Key))
        {
            ScoreTime[] free = [ScoreTime.Zero, ScoreTime.Zero];
            foreach (var sounding in key)
            {
                var (own, other) = sounding.Hand == Hand.Right ? (0, 1) : (1, 0);
                if (free[other] > sounding.Start)
                {
                    faults.Add(FaultKind.SharedKey, sounding, 2, 1, HandsMessages.SharedKey(sounding));
                }
                free[own] = ScoreTime.Max(free[own], sounding.End);
            }
        }
    }

    /// <summary>One note for each bar in which the left hand strikes above what the right strikes with it.</summary>
    public static ValueList<Diagnostic> Crossings(Passage passage, List<Onset> right, List<Onset> left)
    {
        var rightAt = right.ToDictionary(o => o.Start);
        return left.Where(l => rightAt.TryGetValue(l.Start, out var r) && l.High > r.Low)
            .DistinctBy(l => l.Bar)
            .Select(l => new Diagnostic(
                Severity.Note,
                Music.Place.AtBar(passage.Bars[l.Bar].Number),
                HandsMessages.Crossing(l, rightAt[l.Start])
            ))
            .ToValueList();
    }
}
