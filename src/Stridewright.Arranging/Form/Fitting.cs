using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A form for a tune, and the tempo that it is to be set at.</summary>
/// <param name="BeatsPerMinute">Null: the usual one.</param>
internal sealed record Fitted(FormLine? Form, double? BeatsPerMinute, string? Refusal = null);

/// <summary>
/// Chooses the form where the brief leaves it open, and fits it to the time or the number of bars asked for: strains more or
/// fewer, the introduction and the tag with or without, and at last the tempo bent by a little.
/// </summary>
internal sealed class Fitting(Tune tune, Brief brief, Feel feel, Metre metre)
{
    /// <summary>Playing times may be this far off, in seconds.</summary>
    public const double Within = 10;

    private const int OftenHeard = 8;

    /// <summary>Largest bend of the tempo.</summary>
    private const double Bend = 0.06;

    /// <summary>Bars of 2/4 of the usual form, at the least and at the most, at the first two levels, the next and the
    /// last: printed rags have 148 with all repeats (4 + 9 × 16).</summary>
    private static readonly (int Least, int Most)[] UsualBars = [(28, 72), (44, 112), (60, 152)];

    private readonly Strains _strains = Strains.Of(tune);
    private readonly int _level = Math.Max(
        brief.LeftLevel,
        tune.Bars.Any(b => b.Notes.Count > 0) ? brief.RightLevel : 0
    );

    /// <summary>Nothing is asked of the form but what it says itself.</summary>
    public static bool IsSettled(Brief brief) =>
        brief is { Seconds: null, MostBars: null } && brief.Form is not { IsUsual: true };

    /// <summary>What the fitting did to a form that somebody wrote, and strains that come again very often.</summary>
    public static IEnumerable<string> Remarks(FormLine? asked, FormLine? made)
    {
        var parts = made?.Parts ?? [];
        var gone = (asked is { IsUsual: false } ? asked.Parts : [])
            .Select(p => p.Name)
            .Distinct()
            .Except(parts.Select(p => p.Name))
            .ToList();
        if (gone.Count > 0)
        {
            yield return FormMessages.LeftOut(gone);
        }
        var often = parts.Where(p => p.HasLetter).GroupBy(p => p.Letter).MaxBy(strain => strain.Count());
        if (often?.Count() > OftenHeard)
        {
            yield return FormMessages.HeardOften(often.Key.ToString(), often.Count());
        }
    }

    /// <param name="pace">Tempo that the setting was found to need; null: the one wanted.</param>
    public Fitted Fit(double? pace)
    {
        if (brief.Seconds is { } seconds)
        {
            return ToTime(seconds, pace);
        }
        return brief.MostBars is { } bars ? ToBars(bars) : new Fitted(UsualForm(), pace);
    }

    private FormLine UsualForm()
    {
        var dressing = Dressing();
        var (least, most) = UsualBars[(_level - 1) / 2];
        var order = StrainOrder.Usual(_strains, _level);
        int Bars(IReadOnlyList<FormPart> o) => Measure(dressing.Line(o, true, HasTag)).Bars;
        while (order.Count > 1 && Bars(order) > most)
        {
            order = StrainOrder.Shorter(order);
        }
        while (_strains.All.Count == 1 && Bars(order) < least && order.Count < 8)
        {
            order = StrainOrder.Longer(order);
        }
        return dressing.Line(order, true, HasTag);
    }

    private bool HasTag => _level > 2;

    private Dressing Dressing() => new(_level, brief.Raggedness, feel, _strains);

    private Fitted ToTime(double seconds, double? pace)
    {
        var wanted = pace ?? brief.BeatsPerMinute ?? Feels.Tempo(feel, _level);
        var slowest = brief.BeatsPerMinute is null ? wanted * (1 - Bend) : wanted;
        // What turned out too fast is not made faster again.
        var fastest = brief.BeatsPerMinute is null && pace is null ? wanted * (1 + Bend) : wanted;
        var unit = Feels.BeatUnit(Feels.SettingMetre(feel, metre)).Length.ToQuarters();
        double Lasts(FormLine? form, double tempo) => Measure(form).Quarters * 60 / (tempo * unit);
        (FormLine? Form, double Tempo, double Cost)? best = null;
        double? shorter = null,
            longer = null;
        foreach (var form in Forms(f => Lasts(f, fastest) < seconds + Within))
        {
            var tempo = Math.Clamp(Lasts(form, wanted) * wanted / seconds, slowest, fastest);
            tempo = Rounded(tempo, slowest, fastest);
            var lasts = Lasts(form, tempo);
            if (Math.Abs(lasts - seconds) > Within - 0.5)
            {
                shorter = lasts < seconds ? Math.Max(lasts, shorter ?? 0) : shorter;
                longer = lasts > seconds ? Math.Min(lasts, longer ?? double.MaxValue) : longer;
                continue;
            }
            var cost =
                3 * Math.Abs(Math.Log(tempo / wanted)) / Bend + Math.Abs(lasts - seconds) / Within + Plainness(form);
            if (best is null || cost < best.Value.Cost)
            {
                best = (form, tempo, cost);
            }
        }
        return best is { } found
            ? new Fitted(found.Form, found.Tempo)
            : new Fitted(null, null, FormMessages.NoLength(seconds, shorter, longer));
    }

    // To whole beats where there are any between.
    private static double Rounded(double tempo, double slowest, double fastest)
    {
        var whole = Math.Round(tempo);
        return whole >= slowest && whole <= fastest ? whole : tempo;
    }

    // What a form lacks of a whole one.
    private static double Plainness(FormLine? form) =>
        form is null
            ? 0
            : (form.Parts.Any(p => p.Kind == PartKind.Intro) ? 0 : 1)
                + (form.Parts.Any(p => p.Kind == PartKind.Tag) ? 0 : 0.5)
                + (form.Parts.Any(p => p.Kind == PartKind.Half) ? 1.5 : 0);

    private Fitted ToBars(int bars)
    {
        FormLine? best = null;
        var (most, least) = (0, int.MaxValue);
        foreach (var form in Forms(f => Measure(f).Bars < bars).OfType<FormLine>())
        {
            var count = Measure(form).Bars;
            least = Math.Min(least, count);
            if (count <= bars && count > most)
            {
                (best, most) = (form, count);
            }
        }
        return best is null ? new Fitted(null, null, FormMessages.NoRoom(bars, least)) : new Fitted(best, null);
    }

    private IEnumerable<FormLine?> Forms(Func<FormLine, bool> goesOn) =>
        brief.Form is { IsUsual: true } ? Lengths.OfUsual(Dressing(), goesOn)
        : brief.Form is { } line ? Lengths.OfLine(line, goesOn)
        : Enumerable.Repeat<FormLine?>(null, 1);

    // Quarters played, repeats counted, and bars printed.
    private (double Quarters, int Bars) Measure(FormLine? form)
    {
        var bars = Forming.Apply(tune, brief with { Form = form }).Tune.Bars;
        var scale = LatticeReader.ScaleOf(tune with { Bars = bars }, feel);
        var order = Timeline.PlayOrder(bars.Select(b => b.Marks).ToList());
        var whole = Feels.SettingMetre(feel, metre).BarLength.ToQuarters();
        return (
            order.Sum(i => bars[i].Length.ToQuarters()) * scale.ToQuarters() / 4,
            (int)Math.Round(bars.Sum(b => b.Length.ToQuarters()) * scale.ToQuarters() / 4 / whole)
        );
    }
}
