using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Measures the style of a two-staff score as written, repeats not unfolded. A note that a tie leads to and a grace note
/// are no onset. Rhythm and left hand are measured in full bars of 2/4 (by sixteenths), 4/4 and 2/2 (by eighths).
/// </summary>
public static class StyleMeasure
{
    private static readonly Metre[] Duple = [Metre.TwoFour, Metre.FourFour, new(2, 2)];

    /// <summary>The style of a score; figures that it gives no material for are left out.</summary>
    public static StyleProfile Of(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        var soundings = Timeline.Of(score).Where(s => s.End > s.Start).ToLookup(s => s.Hand);
        var measured = score
            .Bars.Select((bar, index) => (bar, index))
            .Where(b => IsDuple(b.bar.Metre) && b.bar.Length == b.bar.Metre.BarLength)
            .Select(b => b.index)
            .ToList();
        var metre = score.Bars.GroupBy(b => (b.Metre.Count, b.Metre.Unit)).MaxBy(g => g.Count())?.First().Metre;
        var hasReference = metre is { } main && IsDuple(main);
        var inTwo = metre is { Count: 2, Unit: 4 };
        var sheet = new StyleSheet(hasReference ? StyleReference.Of(inTwo) : new Dictionary<string, double[]>());
        RhythmStyle.Add(sheet, score, measured, [.. soundings[Hand.Right]]);
        TextureStyle.Add(sheet, score, measured, soundings[Hand.Right]);
        LeftHandStyle.Add(sheet, score, measured, soundings[Hand.Left]);
        return new StyleProfile(
            metre?.ToString() ?? "",
            measured.Count,
            !hasReference ? ""
                : inTwo ? StyleReference.InTwo
                : StyleReference.InFour,
            sheet.Figures.ToValueList()
        );
    }

    private static bool IsDuple(Metre metre) => Duple.Any(d => d.Count == metre.Count && d.Unit == metre.Unit);
}
