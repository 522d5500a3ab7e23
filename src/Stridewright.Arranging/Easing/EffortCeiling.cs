using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The fullest setting whose effort stays within a ceiling: the highest level that does as it is; or the one above it, when
/// that does after its hardest bars have gone without tenths, then inner notes, then octaves, then all but single notes.
/// </summary>
internal sealed class EffortCeiling(Func<Brief, ArrangeResult> arrange)
{
    private readonly List<(int Level, ArrangeResult Result)> _within = [];

    /// <exception cref="OperationCanceledException">Where <c>arrange</c> was cancelled.</exception>
    public ArrangeResult Under(Brief brief, double ceiling)
    {
        ArrangeResult? refused = null;
        for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
        {
            var at = brief with { LeftLevel = level, RightLevel = level };
            var result = arrange(at);
            if (result.Arrangement is not { } made)
            {
                // Other levels may still be playable.
                refused ??= result;
                continue;
            }
            if (Effort(made) <= ceiling)
            {
                _within.Add((level, result));
                continue;
            }
            if (Eased(at, made, ceiling) is { } eased)
            {
                return eased;
            }
            return _within.Count > 0 ? _within[^1].Result : TooHard(at, made, ceiling);
        }
        return _within.Count > 0 ? _within[^1].Result : refused!;
    }

    private static double Effort(Arrangement arrangement) => arrangement.Verdict.Effort.Overall;

    // The first rung that suffices for all bars, and of them the fewest, hardest first.
    private ArrangeResult? Eased(Brief at, Arrangement full, double ceiling)
    {
        var hardest = full
            .Verdict.Effort.Bars.OrderByDescending(b => b.Value)
            .ThenBy(b => b.Bar)
            .Select(b => b.Bar)
            .ToList();
        for (var ease = Ease.Tenths; ease <= Ease.TwoNotes; ease++)
        {
            if (At(hardest.Count, ease) is not { } enough)
            {
                continue;
            }
            var (low, high) = (0, hardest.Count);
            while (high - low > 1)
            {
                var middle = (low + high) / 2;
                if (At(middle, ease) is { } fewer)
                {
                    (high, enough) = (middle, fewer);
                }
                else
                {
                    low = middle;
                }
            }
            return enough with { Arrangement = Told(full, enough.Arrangement!, ceiling) };
        }
        return null;

        // The hardest bars go without this, the others without what comes before it.
        ArrangeResult? At(int bars, Ease ease)
        {
            var eased = hardest.Select((bar, i) => new EasedBar(bar, i < bars ? ease : ease - 1));
            var settled = Reworking.Settled(full) with
            {
                Eased = eased.Where(e => e.Ease != Ease.None).OrderBy(e => e.Bar).ToValueList(),
            };
            var result = arrange(full.Brief with { Settled = settled });
            return result.Arrangement is { } made && Effort(made) <= ceiling ? result : null;
        }
    }

    private static Arrangement Told(Arrangement full, Arrangement eased, double ceiling)
    {
        var conceded = Concessions.Of(full, eased);
        var notes = conceded.Select(c => ArrangingMessages.Conceded(c.Ease, c.Bars, ceiling));
        return eased with
        {
            Conceded = conceded,
            Notes = [.. eased.Notes, .. notes.Select(n => new Diagnostic(Severity.Note, Place.Whole, n))],
        };
    }

    // The easiest there is asks too much: at which tempo it would not, if at any.
    private ArrangeResult TooHard(Brief at, Arrangement easiest, double ceiling)
    {
        double? slower = null;
        for (var share = 0.9; share >= 0.5 && slower is null; share -= 0.1)
        {
            var beats = Math.Floor(easiest.BeatsPerMinute * share);
            var result = arrange(at with { BeatsPerMinute = Math.Max(Brief.SlowestBeats, beats) });
            slower = result.Arrangement is { } made && Effort(made) <= ceiling ? made.BeatsPerMinute : null;
        }
        return Arranger.Refused(ArrangingMessages.AboveCeiling(ceiling, Effort(easiest), slower));
    }
}
