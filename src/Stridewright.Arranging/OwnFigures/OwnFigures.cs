using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Takes figures from settings, puts them into others, and writes them as the lines of an arrangement file.</summary>
public static class OwnFigures
{
    /// <summary>Bars of one hand of a setting as a figure.</summary>
    /// <param name="first">Place among the setting's bars, from 0.</param>
    /// <param name="bars">1 to <see cref="OwnFigure.MostBars"/>.</param>
    /// <param name="fault">Why there is none: a bar without a chord.</param>
    public static OwnFigure? Of(Arrangement arrangement, int first, int bars, Hand hand, out Diagnostic? fault)
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
                if (ChordAt(solution.Lattice, bar, stroke.At) is not { } chord)
                {
                    fault = NoChord(solution.Lattice.Bars[bar]);
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
        return new OwnFigure(hand, bars, strokes.ToValueList());
    }

    /// <summary>A figure put over the chords of another place, as bars to be kept there. A right hand's figure strikes no note
    /// of the tune: those of its bars are left out.</summary>
    /// <param name="first">Place among the setting's bars, from 0.</param>
    /// <param name="fault">Why it cannot be there: the setting ends before it, or a bar has no chord.</param>
    public static ValueList<KeptBar>? At(Arrangement arrangement, OwnFigure figure, int first, out Diagnostic? fault)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var solution = Reworking.Of(arrangement);
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        fault = null;
        var lattice = solution.Lattice;
        if (first + figure.Bars > lattice.Bars.Length)
        {
            fault = new Diagnostic(
                Severity.Error,
                Place.Whole,
                FigureMessages.TooLong(figure.Bars, lattice.Bars.Length - first)
            );
            return null;
        }
        var kept = new List<KeptBar>();
        for (var bar = 0; bar < figure.Bars; bar++)
        {
            var strokes = new List<KeptStroke>();
            foreach (var stroke in figure.Strokes.Where(s => s.Bar == bar))
            {
                if (ChordAt(lattice, first + bar, stroke.At) is not { } chord)
                {
                    fault = NoChord(lattice.Bars[first + bar]);
                    return null;
                }
                var pitches = stroke.Tones.Select(t => t.Over(chord, figure.Hand)).Distinct().Order().ToValueList();
                var role = figure.Hand == Hand.Right ? "fill" : stroke.Role;
                strokes.Add(
                    new KeptStroke(stroke.At, stroke.Length, pitches, role, stroke.Rolled, [], stroke.Voice, null)
                );
            }
            var (start, end) = (lattice.Bars[first + bar].Start, lattice.Bars[first + bar].End);
            var tune = Enumerable
                .Range(0, lattice.Notes.Length)
                .Where(i =>
                    figure.Hand == Hand.Right && lattice.Notes[i].Start >= start && lattice.Notes[i].Start < end
                );
            kept.Add(new KeptBar(first + bar, figure.Hand, strokes.ToValueList()) { LeftOut = tune.ToValueList() });
        }
        return kept.ToValueList();
    }

    /// <summary>A figure as lines: its hand and bars, and a line for each stroke such as <c>1 0+1/8 bass 1 8</c>: bar from 1,
    /// place and length in whole notes, what it is for, tones.</summary>
    public static ValueList<string> Write(OwnFigure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var head = string.Create(CultureInfo.InvariantCulture, $"{Words.Of(figure.Hand)} {figure.Bars}");
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
        if (
            fault is not null
            || lines[0].Split(' ') is not [("left" or "right") and var hand, var count]
            || KeptText.Number(count, OwnFigure.MostBars) is not { } bars
        )
        {
            fault ??= FigureMessages.NoLine(lines[0]);
            return null;
        }
        var strokes = new List<OwnFigureStroke>();
        foreach (var line in lines.Skip(1))
        {
            if (Stroke(line, bars) is not { } stroke)
            {
                fault = FigureMessages.NoLine(line);
                return null;
            }
            strokes.Add(stroke);
        }
        return new OwnFigure(
            hand == "left" ? Hand.Left : Hand.Right,
            bars,
            strokes.OrderBy(s => s.Bar).ThenBy(s => s.At).ToValueList()
        );
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

    private static ChordSymbol? ChordAt(Lattice lattice, int bar, ScoreTime at)
    {
        var chord = lattice.ChordAt(lattice.Bars[bar].Start + (int)at.Round(lattice.Tick)).Chord;
        return chord.IsNoChord ? null : chord;
    }

    private static Diagnostic NoChord(LatticeBar bar) =>
        new(Severity.Error, Place.AtBar(bar.Number), FigureMessages.NoChord);
}
