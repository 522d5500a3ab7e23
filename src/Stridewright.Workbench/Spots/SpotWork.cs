using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Lists other ways for a bar of an arrangement file, keeps bars, releases them and takes edited ones back; the rest
/// is worked again around them, and the file holds what came of it.</summary>
internal sealed class SpotWork(ITools tools, SpotRequest request)
{
    private static readonly Hand[] BothHands = [Hand.Right, Hand.Left];
    private readonly List<Problem> _problems = [];

    public SpotReport Run(CancellationToken cancellation)
    {
        try
        {
            return Work(cancellation) ?? Report();
        }
        catch (OperationCanceledException)
        {
            return Report() with { Cancelled = true };
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Fail("", WorkbenchMessages.Internal(fault));
            return Report();
        }
    }

    private SpotReport Report() => new() { File = request.File, Problems = _problems.ToValueList() };

    private SpotReport? Work(CancellationToken cancellation)
    {
        if (Stored(request.File, cancellation) is not { } stored)
        {
            return null;
        }
        var result = tools.Arrange(stored.Tune, stored.File.Brief, cancellation);
        if (result.Arrangement is not { } before)
        {
            return Fail(result.Refusal);
        }
        var bar = -1;
        if (request.Bar is { } number && (bar = SpotCraft.BarOf(before, number)) < 0)
        {
            return Fail("", WorkbenchMessages.NoSuchBar(number, before.Score.Bars[^1].Number));
        }
        if (request.Action == SpotAction.Ways)
        {
            var each = request.Each ?? SpotRequest.UsualEach;
            if (each is < 1 or > OtherWays.Most)
            {
                return Fail("", WorkbenchMessages.Each(each, OtherWays.Most));
            }
            var ways = SpotCraft.Named(OtherWays.Of(before, bar, each, cancellation));
            return Report() with
            {
                Ways = ways.Select(w => SpotCraft.Found(w.Name, w.Way)).ToValueList(),
                Kept = SpotCraft.KeptSpots(before, stored.File.Brief.Kept),
            };
        }
        if (request.Action == SpotAction.Figure)
        {
            return WithFigure(stored, before, bar, cancellation);
        }
        return Kept(stored, before, bar, cancellation) is not { } kept
            ? null
            : Saved(stored, before, kept, cancellation);
    }

    // The bars that are to be kept from now on; null: that cannot be.
    private ValueList<KeptBar>? Kept(
        StoredArrangement stored,
        Arrangement before,
        int bar,
        CancellationToken cancellation
    )
    {
        var kept = before.Brief.Kept;
        var hands = BothHands.Where(h => request.Hand is null || Words.Of(h) == request.Hand).ToList();
        switch (request.Action)
        {
            case SpotAction.Keep:
                return SpotCraft.With(kept, hands.Select(h => Reworking.Spot(before, bar, h)));
            case SpotAction.Release:
                return kept.Where(k => bar >= 0 && k.Bar != bar || !hands.Contains(k.Hand)).ToValueList();
            case SpotAction.Choose:
                // The first ones have the same names, however many are looked for.
                var ways = SpotCraft.Named(OtherWays.Of(before, bar, SpotRequest.UsualEach, cancellation));
                if (!ways.Exists(w => w.Name == request.Way))
                {
                    ways = SpotCraft.Named(OtherWays.Of(before, bar, OtherWays.Most, cancellation));
                }
                if (ways.FirstOrDefault(w => w.Name == request.Way).Way is { } way)
                {
                    return SpotCraft.With(kept, [way.Spot]);
                }
                Fail("", WorkbenchMessages.NoSuchWay(request.Way ?? "", ways.Select(w => w.Name)));
                return null;
            case SpotAction.Use:
                return Figure(stored, cancellation) is { } figure ? Used(before, figure, bar, kept) : null;
            default:
                var score = ScoreInput.Read(tools, request.Edited ?? "", _problems, out _, cancellation);
                if (score is null)
                {
                    return null;
                }
                var edited = Reworking.Edited(before, score, out var fault);
                if (edited is null)
                {
                    _problems.Add(new Problem(request.Edited ?? "", null, fault!.Place.ToString(), fault.Message));
                }
                return edited is null ? null : SpotCraft.With(kept, edited);
        }
    }

    private ValueList<KeptBar>? Used(Arrangement before, OwnFigure figure, int bar, ValueList<KeptBar> kept)
    {
        var put = OwnFigures.At(before, figure, bar, out var fault);
        if (put is null)
        {
            Fail(fault);
        }
        return put is null ? null : SpotCraft.With(kept, put);
    }

    private OwnFigure? Figure(StoredArrangement stored, CancellationToken cancellation)
    {
        var source = request.Source is { } other ? Stored(other, cancellation) : stored;
        if (source is null)
        {
            return null;
        }
        if (source.File.Figures.FirstOrDefault(f => f.Name == request.Figure) is not { } text)
        {
            Fail("", WorkbenchMessages.NoSuchFigure(request.Figure ?? "", source.File.Figures.Select(f => f.Name)));
            return null;
        }
        var figure = OwnFigures.Read(text.Lines, out var fault);
        if (fault is not null)
        {
            Fail("", fault);
        }
        return figure;
    }

    private SpotReport? WithFigure(
        StoredArrangement stored,
        Arrangement before,
        int bar,
        CancellationToken cancellation
    )
    {
        var (name, bars) = ((request.Figure ?? "").Trim(), request.Bars ?? 1);
        if (name.Length == 0 || bars is < 1 or > OwnFigure.MostBars || bar + bars > before.Score.Bars.Count)
        {
            return Fail(
                "",
                name.Length == 0
                    ? WorkbenchMessages.NoFigureName
                    : WorkbenchMessages.FigureBars(bars, OwnFigure.MostBars)
            );
        }
        var hand = request.Hand == "right" ? Hand.Right : Hand.Left;
        if (OwnFigures.Of(before, bar, bars, hand, out var fault) is not { } figure)
        {
            return Fail(fault);
        }
        var figures = stored
            .File.Figures.Where(f => f.Name != name)
            .Append(new FigureText(name, OwnFigures.Write(figure)))
            .ToValueList();
        return Written(stored, stored.File.Brief, figures, cancellation)
            ? Report() with
            {
                Kept = SpotCraft.KeptSpots(before, stored.File.Brief.Kept),
                Figures = figures.Select(f => f.Name).ToValueList(),
            }
            : null;
    }

    private bool Written(
        StoredArrangement stored,
        Brief brief,
        ValueList<FigureText> figures,
        CancellationToken cancellation
    )
    {
        var bytes = SavedArrangement.Of(tools, stored.Tune, brief, figures, out var problem);
        var path = Path.GetFullPath(request.File);
        var outputs = new OutputFiles(Path.GetDirectoryName(path)!, replace: true, []);
        if (bytes is null || outputs.TryWrite([new OutputFile(path, bytes)], cancellation, out problem) is null)
        {
            Fail("", problem);
            return false;
        }
        return true;
    }

    private SpotReport? Saved(
        StoredArrangement stored,
        Arrangement before,
        ValueList<KeptBar> kept,
        CancellationToken cancellation
    )
    {
        var result = Reworking.Rework(before, kept, cancellation);
        if (result.Arrangement is not { } after)
        {
            return Fail(result.Refusal);
        }
        var brief = SpotCraft.Keeping(stored.File.Brief, kept, after);
        if (!Written(stored, brief, stored.File.Figures, cancellation))
        {
            return null;
        }
        var changed = Reworking.Differing(before, after).Select(b => after.Score.Bars[b].Number);
        return Report() with
        {
            Kept = SpotCraft.KeptSpots(after, kept),
            Figures = stored.File.Figures.Select(f => f.Name).ToValueList(),
            Changed = changed.ToValueList(),
            Remarks = after.Notes.Select(ReportOf.Remark).ToValueList(),
        };
    }

    private StoredArrangement? Stored(string file, CancellationToken cancellation)
    {
        if (!File.Exists(file))
        {
            Fail("", WorkbenchMessages.NotFound);
            return null;
        }
        if (InputBytes.TryRead(file, cancellation, out var problem) is not { } bytes)
        {
            Fail("", problem);
            return null;
        }
        if (InputKinds.Of(file, bytes) != InputKind.Arrangement)
        {
            Fail("", WorkbenchMessages.NotAnArrangement);
            return null;
        }
        var reading = StoredArrangement.Read(tools, bytes);
        foreach (var fault in reading.Diagnostics.Where(d => d.Severity == Severity.Error))
        {
            Fail(fault.Place.ToString(), fault.Message);
        }
        return reading.Value;
    }

    private SpotReport? Fail(Diagnostic? refusal) => Fail(refusal?.Place.ToString() ?? "", refusal?.Message ?? "");

    private SpotReport? Fail(string place, string message)
    {
        _problems.Add(new Problem(request.File, null, place, message));
        return null;
    }
}
