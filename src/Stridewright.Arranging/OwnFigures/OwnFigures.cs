using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Takes figures from settings, puts them into others, and writes them as the lines of an arrangement file.</summary>
public static class OwnFigures
{
    /// <summary>Kinds by the words they are written with.</summary>
    public static IReadOnlyDictionary<string, FigureKind> Kinds { get; } =
        Enum.GetValues<FigureKind>().ToDictionary(Words.Of);

    /// <summary>Bars of one hand of a setting as a figure.</summary>
    /// <param name="first">Place among the setting's bars, from 0.</param>
    /// <param name="bars">1 to <see cref="OwnFigure.MostBars"/>.</param>
    /// <param name="kind">Where it belongs; a fill or a run of the right hand is taken without the tune's notes.</param>
    /// <param name="fault">Why there is none: a bar without a chord, or nothing beside the tune.</param>
    public static OwnFigure? Of(
        Arrangement arrangement,
        int first,
        int bars,
        Hand hand,
        FigureKind? kind,
        out Diagnostic? fault
    )
    {
        var solution = Reworking.Of(arrangement);
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfLessThan(bars, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bars, OwnFigure.MostBars);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(first + bars, solution.Lattice.Bars.Length);
        fault = null;
        var strokes = new List<OwnFigureStroke>();
        for (var bar = first; bar < first + bars; bar++)
        {
            foreach (var stroke in Spots.Of(solution, bar, hand).Strokes)
            {
                if (Preferring.GoesBesideTheTune(kind, hand) && stroke.Tune is not null)
                {
                    continue;
                }
                if (FigurePlacing.ChordAt(solution.Lattice, bar, stroke.At) is not { } chord)
                {
                    fault = FigurePlacing.NoChord(solution.Lattice.Bars[bar]);
                    return null;
                }
                strokes.Add(
                    new OwnFigureStroke(
                        bar - first,
                        stroke.At,
                        stroke.Length,
                        stroke.Pitches.Select(p => FigureTone.Of(p, chord, hand)).ToValueList(),
                        stroke.Role,
                        stroke.Rolled,
                        stroke.Voice
                    )
                );
            }
        }
        if (strokes.Count == 0)
        {
            fault = new(Severity.Error, Place.AtBar(solution.Lattice.Bars[first].Number), FigureMessages.NothingToTake);
            return null;
        }
        return new OwnFigure(hand, bars, strokes.ToValueList())
        {
            Kind = kind,
            BarLength = solution.Lattice.Tick * solution.Lattice.Bars[first].Length,
            LeadsBy = kind == FigureKind.Run ? Preferring.LeadsBy(solution.Lattice, first + bars - 1) : null,
        };
    }

    /// <summary>A setting with figures put wherever their kind belongs, those of one kind and hand in turn; what cannot be
    /// played there is left out. Figures without a kind are put nowhere.</summary>
    /// <param name="bars">Places of the bars where figures begin, from 0.</param>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static Arrangement Preferred(
        Arrangement arrangement,
        IEnumerable<OwnFigure> figures,
        out ValueList<int> bars,
        CancellationToken cancellation = default
    ) => Preferring.Put(arrangement, figures, out bars, cancellation);

    /// <summary>A figure put over the chords of another place, as bars to be kept there: in its own octave, or where these
    /// hands cannot play that, in the one below or above. A right hand's figure strikes no note of the tune: those of its
    /// bars are left out; but a fill or a run stands beside them.</summary>
    /// <param name="first">Place among the setting's bars, from 0.</param>
    /// <param name="fault">Why it cannot be there: the setting ends before it, or a bar has no chord.</param>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ValueList<KeptBar>? At(
        Arrangement arrangement,
        OwnFigure figure,
        int first,
        out Diagnostic? fault,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(figure);
        var solution = Reworking.Of(arrangement);
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        var placed = FigurePlacing.Over(solution, figure, first, 0, out fault);
        return placed is null ? null : FigurePlacing.Played(arrangement, figure, first, cancellation)?.Bars ?? placed;
    }

    /// <summary>A figure as lines: its hand and bars, where given its kind, the length of its bars and the step of the harmony
    /// after it, such as <c>left 2 run of 1/2 to 5</c>; and a line for each stroke such as <c>1 0+1/8 bass 1 8</c>: bar from
    /// 1, place and length in whole notes, what it is for, tones.</summary>
    public static ValueList<string> Write(OwnFigure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var kind = figure.Kind is { } k ? " " + Words.Of(k) : "";
        var length = figure.BarLength is { } l ? $" of {l}" : "";
        var leads = figure.LeadsBy is { } by ? FormattableString.Invariant($" to {by}") : "";
        var head = FormattableString.Invariant($"{Words.Of(figure.Hand)} {figure.Bars}{kind}{length}{leads}");
        return figure
            .Strokes.Select(s =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{s.Bar + 1} {s.At}+{s.Length} {s.Role} {string.Join(' ', s.Tones)}{(s.Rolled ? " rolled" : "")}{(s.Voice == 2 ? " lower" : "")}"
                )
            )
            .Prepend(head)
            .ToValueList();
    }

    /// <summary>Reads such lines; null with the first line that is none.</summary>
    public static OwnFigure? Read(ValueList<string> lines, out string? fault)
    {
        ArgumentNullException.ThrowIfNull(lines);
        fault = lines.Count == 0 ? FigureMessages.Empty : null;
        if (fault is not null || Head(lines[0]) is not { } figure)
        {
            fault ??= FigureMessages.NoLine(lines[0]);
            return null;
        }
        var strokes = new List<OwnFigureStroke>();
        foreach (var line in lines.Skip(1))
        {
            if (Stroke(line, figure.Bars) is not { } stroke)
            {
                fault = FigureMessages.NoLine(line);
                return null;
            }
            strokes.Add(stroke);
        }
        return figure with { Strokes = strokes.OrderBy(s => s.Bar).ThenBy(s => s.At).ToValueList() };
    }

    private static OwnFigure? Head(string line)
    {
        if (
            line.Split(' ') is not [("left" or "right") and var hand, var count, .. var rest]
            || KeptText.Number(count, OwnFigure.MostBars) is not { } bars
        )
        {
            return null;
        }
        var figure = new OwnFigure(hand == "left" ? Hand.Left : Hand.Right, bars, []);
        if (rest is [var word, .. var others] && Kinds.TryGetValue(word, out var kind))
        {
            (figure, rest) = (figure with { Kind = kind }, others);
        }
        if (rest is ["of", var length, .. var after])
        {
            if (StrokeReader.Span($"0+{length}") is not var (_, time))
            {
                return null;
            }
            (figure, rest) = (figure with { BarLength = time }, after);
        }
        return rest switch
        {
            [] => figure,
            ["to", "0"] => figure with { LeadsBy = 0 },
            ["to", var by] when KeptText.Number(by, 11) is { } semitones => figure with { LeadsBy = semitones },
            _ => null,
        };
    }

    private static OwnFigureStroke? Stroke(string line, int bars)
    {
        var words = line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).ToList();
        var lower = words.Remove("lower");
        var rolled = words.Remove("rolled");
        if (
            words.Count < 4
            || KeptText.Number(words[0], bars) is not { } bar
            || StrokeReader.Span(words[1]) is not var (at, length)
        )
        {
            return null;
        }
        var tones = words.Skip(3).Select(FigureTone.Read).ToList();
        return tones.Any(t => t is null) || words[2].Any(c => c is not (>= 'a' and <= 'z' or '-'))
            ? null
            : new(bar - 1, at, length, tones.Select(t => t!.Value).ToValueList(), words[2], rolled, lower ? 2 : 1);
    }
}
