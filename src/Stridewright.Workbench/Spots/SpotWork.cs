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
                return Reworking.With(kept, hands.Select(h => Reworking.Spot(before, bar, h)));
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
                    return Reworking.With(kept, [way.Spot]);
                }
                Fail("", WorkbenchMessages.NoSuchWay(request.Way ?? "", ways.Select(w => w.Name)));
                return null;
            case SpotAction.Use:
                var source = request.Source is { } other ? Stored(other, cancellation) : stored;
                if (source is null)
                {
                    return null;
                }
                var figures = source.File.Figures;
                var put = SpotCraft.Using(before, figures, request.Figure, bar, out var unfit, cancellation);
                if (put is null)
                {
                    Fail(unfit);
                }
                return put;
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
                return edited is null ? null : Reworking.With(kept, edited);
        }
    }

    private SpotReport? WithFigure(
        StoredArrangement stored,
        Arrangement before,
        int bar,
        CancellationToken cancellation
    )
    {
        var figures = SpotCraft.WithFigure(
            before,
            stored.File.Figures,
            request.Figure,
            bar,
            request.Bars,
            request.Hand,
            request.FigureKind,
            out var fault
        );
        if (figures is null)
        {
            return Fail(fault);
        }
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
        var stored = StoredArrangement.At(tools, file, out var problems, cancellation);
        _problems.AddRange(problems);
        return stored;
    }

    private SpotReport? Fail(Diagnostic? refusal) => Fail(refusal?.Place.ToString() ?? "", refusal?.Message ?? "");

    private SpotReport? Fail(string place, string message)
    {
        _problems.Add(new Problem(request.File, null, place, message));
        return null;
    }
}
