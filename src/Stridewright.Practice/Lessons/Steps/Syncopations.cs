using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>Kinds of syncopation in the order in which they are learned: those of the short-long-short figure in studies of
/// printed rags (Volk and de Haas 2013, Kirlin 2020).</summary>
internal enum SyncopationKind
{
    /// <summary>Held through a place within the half bar.</summary>
    Untied,

    /// <summary>Held through the middle of the bar; in bars of three through a beat.</summary>
    OverMid,

    /// <summary>Held through the bar line.</summary>
    OverBar,
}

/// <summary>A stroke that comes before the stronger place through which it sounds.</summary>
/// <param name="Index">Among the strokes.</param>
/// <param name="Place">That stronger place, from the start of the score.</param>
internal readonly record struct Syncopation(int Index, SyncopationKind Kind, ScoreTime Place);

/// <summary>Finds syncopated strokes, and puts them on the places that they anticipate.</summary>
internal static class Syncopations
{
    private static readonly ScoreTime Finest = new(1, 64);

    /// <summary>Those of a line, in time order: strokes on a weak place that sound through the next stronger one (after
    /// Longuet-Higgins and Lee 1984).</summary>
    public static IEnumerable<Syncopation> In(Score score, IReadOnlyList<LineStroke> strokes)
    {
        var (bar, start) = (0, ScoreTime.Zero);
        for (var i = 0; i < strokes.Count; i++)
        {
            while (bar + 1 < score.Bars.Count && strokes[i].Start >= start + score.Bars[bar].Length)
            {
                start += score.Bars[bar++].Length;
            }
            var at = strokes[i].Start - start;
            var written = score.Bars[bar];
            // A pick-up lacks the beginning of its bar.
            var lead =
                bar == 0 && written.Length < written.Metre.BarLength
                    ? written.Metre.BarLength - written.Length
                    : default;
            if (Stronger(written.Metre, lead + at) is { } place && strokes[i].End > start + place - lead)
            {
                yield return new Syncopation(i, KindOf(written.Metre, place), start + place - lead);
            }
        }
    }

    /// <summary>The line with the syncopations of one kind on the places that they anticipate; what sounds before them is held
    /// on to there.</summary>
    public static List<LineStroke> OnTheBeat(Score score, IReadOnlyList<LineStroke> strokes, SyncopationKind kind)
    {
        var moved = strokes.ToList();
        var end = score.Bars.Aggregate(ScoreTime.Zero, (sum, bar) => sum + bar.Length);
        foreach (var found in In(score, strokes).Where(s => s.Kind == kind && s.Place < end))
        {
            var i = found.Index;
            if (i > 0 && moved[i - 1].End == moved[i].Start)
            {
                moved[i - 1] = moved[i - 1] with { End = found.Place };
            }
            moved[i] = moved[i] with { Start = found.Place };
        }
        return moved;
    }

    // The next place stronger than a weak one, from the start of the bar; null for a beat.
    private static ScoreTime? Stronger(Metre metre, ScoreTime at)
    {
        if (at.IsMultipleOf(metre.Beat))
        {
            return null;
        }
        var stronger = metre.Beat;
        for (var part = metre.Beat / (metre.IsCompound ? 3 : 2); part >= Finest; part /= 2)
        {
            if (at.IsMultipleOf(part))
            {
                break;
            }
            stronger = part;
        }
        var count = at.Per(stronger);
        return stronger * (count.Numerator / count.Denominator + 1);
    }

    private static SyncopationKind KindOf(Metre metre, ScoreTime place)
    {
        var middle = metre.BarLength / 2;
        var halves = middle.IsMultipleOf(metre.Beat);
        return place.IsMultipleOf(metre.BarLength) ? SyncopationKind.OverBar
            : place.IsMultipleOf(halves ? middle : metre.Beat) ? SyncopationKind.OverMid
            : SyncopationKind.Untied;
    }
}
