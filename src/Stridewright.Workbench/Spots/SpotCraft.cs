using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench;

/// <summary>What work on single bars is made of, whoever asks for it.</summary>
internal static class SpotCraft
{
    private const int MostNameLetters = 80;

    /// <summary>Index of the bar with a printed number; −1: there is none.</summary>
    public static int BarOf(Arrangement arrangement, string number)
    {
        for (var i = 0; i < arrangement.Score.Bars.Count; i++)
        {
            if (arrangement.Score.Bars[i].Number == number)
            {
                return i;
            }
        }
        return -1;
    }

    /// <summary>Ways under the names they are asked for by, such as <c>rhythm-2</c>.</summary>
    public static List<(string Name, OtherWay Way)> Named(ValueList<OtherWay> ways) =>
        [
            .. ways.GroupBy(w => w.Kind)
                .SelectMany(kind =>
                    kind.Select((w, i) => (FormattableString.Invariant($"{Words.Of(w.Kind)}-{i + 1}"), w))
                ),
        ];

    public static WayFound Found(string name, OtherWay way) =>
        new(
            name,
            way.Dearer / 1000.0,
            way.Changes,
            way.OtherBars,
            way.EffortBefore,
            way.EffortAfter,
            way.Style.Select(s => new StyleMoved(s.Words, Words.Of(s.Unit), s.Before, s.After, s.Reference))
                .ToValueList()
        );

    public static ValueList<KeptSpot> KeptSpots(Arrangement arrangement, ValueList<KeptBar> kept) =>
        kept.Select(k => new KeptSpot(arrangement.Score.Bars[k.Bar].Number, Words.Of(k.Hand))).ToValueList();

    /// <summary>The figures at hand with bars of one hand of a setting under a name; null: there is no such figure.</summary>
    /// <param name="bars">Null: one.</param>
    /// <param name="hand"><c>right</c>; else the left.</param>
    /// <param name="kind">Word of its kind; null: none.</param>
    public static ValueList<FigureText>? WithFigure(
        Arrangement arrangement,
        ValueList<FigureText> figures,
        string? name,
        int bar,
        int? bars,
        string? hand,
        string? kind,
        out Diagnostic? fault
    )
    {
        var (title, count) = ((name ?? "").Trim(), bars ?? 1);
        FigureKind? wanted = kind is not null && OwnFigures.Kinds.TryGetValue(kind, out var known) ? known : null;
        var refusal =
            title.Length is 0 or > MostNameLetters || title.Any(char.IsControl) ? WorkbenchMessages.NoFigureName
            : count is < 1 or > OwnFigure.MostBars || bar + count > arrangement.Score.Bars.Count
                ? WorkbenchMessages.FigureBars(count, OwnFigure.MostBars)
            : kind is not null && wanted is null ? WorkbenchMessages.NoSuchKind(kind, OwnFigures.Kinds.Keys)
            : null;
        if (refusal is not null)
        {
            fault = Fault(refusal);
            return null;
        }
        var of = hand == "right" ? Hand.Right : Hand.Left;
        return OwnFigures.Of(arrangement, bar, count, of, wanted, out fault) is not { } figure
            ? null
            : Together(figures, [new FigureText(title, OwnFigures.Write(figure))]);
    }

    /// <summary>Figures at hand with others, which go before those of their names.</summary>
    public static ValueList<FigureText> Together(ValueList<FigureText> figures, ValueList<FigureText> others) =>
        figures.Where(f => !others.Any(o => o.Name == f.Name)).Concat(others).ToValueList();

    /// <summary>What is kept with a figure put at a bar, or where its kind belongs; null: it cannot be put there.</summary>
    /// <param name="bar">Place among the setting's bars; −1: wherever it belongs.</param>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ValueList<KeptBar>? Using(
        Arrangement before,
        ValueList<FigureText> figures,
        string? name,
        int bar,
        out Diagnostic? fault,
        CancellationToken cancellation
    )
    {
        if (figures.FirstOrDefault(f => f.Name == name) is not { } text)
        {
            fault = Fault(WorkbenchMessages.NoSuchFigure(name ?? "", figures.Select(f => f.Name)));
            return null;
        }
        if (OwnFigures.Read(text.Lines, out var unread) is not { } figure)
        {
            fault = Fault(unread!);
            return null;
        }
        if (bar >= 0)
        {
            var put = OwnFigures.At(before, figure, bar, out fault, cancellation);
            return put is null ? null : Reworking.With(before.Brief.Kept, put);
        }
        if (figure.Kind is not { } kind)
        {
            fault = Fault(WorkbenchMessages.NoKind(text.Name, OwnFigures.Kinds.Keys));
            return null;
        }
        var after = OwnFigures.Preferred(before, [figure], out var places, cancellation);
        fault = places.Count > 0 ? null : Fault(WorkbenchMessages.NowhereFor(text.Name, kind));
        return fault is null ? after.Brief.Kept : null;
    }

    /// <summary>The word of a figure's kind; null: it has none.</summary>
    public static string? KindOf(FigureText figure) =>
        OwnFigures.Read(figure.Lines, out _)?.Kind is { } kind ? Words.Of(kind) : null;

    private static Diagnostic Fault(string message) => new(Severity.Error, Place.Whole, message);

    /// <summary>A brief for the setting that came of keeping bars: set again with it, it is the same.</summary>
    public static Brief Keeping(Brief brief, ValueList<KeptBar> kept, Arrangement after) =>
        brief with
        {
            Kept = kept,
            Settled = Reworking.Settled(after),
            // Levels chosen for an effort are settled with the rest.
            LeftLevel = after.Brief.LeftLevel,
            RightLevel = after.Brief.RightLevel,
            MostEffort = null,
        };
}
