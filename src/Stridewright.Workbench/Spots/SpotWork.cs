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
        if (Stored(cancellation) is not { } stored)
        {
            return null;
        }
        var result = tools.Arrange(stored.Tune, stored.File.Brief, cancellation);
        if (result.Arrangement is not { } before)
        {
            return Fail(result.Refusal);
        }
        var bar = -1;
        if (request.Bar is { } number && (bar = BarOf(before, number)) < 0)
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
            var ways = Named(OtherWays.Of(before, bar, each, cancellation));
            return Report() with
            {
                Ways = ways.Select(w => Found(w.Name, w.Way)).ToValueList(),
                Kept = KeptSpots(before, stored.File.Brief.Kept),
            };
        }
        return Kept(before, bar, cancellation) is not { } kept ? null : Saved(stored, before, kept, cancellation);
    }

    // The bars that are to be kept from now on; null: that cannot be.
    private ValueList<KeptBar>? Kept(Arrangement before, int bar, CancellationToken cancellation)
    {
        var kept = before.Brief.Kept;
        var hands = BothHands.Where(h => request.Hand is null || Words.Of(h) == request.Hand).ToList();
        switch (request.Action)
        {
            case SpotAction.Keep:
                return With(kept, hands.Select(h => Reworking.Spot(before, bar, h)));
            case SpotAction.Release:
                return kept.Where(k => bar >= 0 && k.Bar != bar || !hands.Contains(k.Hand)).ToValueList();
            case SpotAction.Choose:
                var ways = Named(OtherWays.Of(before, bar, OtherWays.Most, cancellation));
                if (ways.FirstOrDefault(w => w.Name == request.Way).Way is { } way)
                {
                    return With(kept, [way.Spot]);
                }
                Fail("", WorkbenchMessages.NoSuchWay(request.Way ?? "", ways.Select(w => w.Name)));
                return null;
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
                return edited is null ? null : With(kept, edited);
        }
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
        var brief = stored.File.Brief with { Kept = kept, Settled = Reworking.Settled(after) };
        var bytes = SavedArrangement.Of(tools, stored.Tune, brief, stored.File.Figures, out var problem);
        var path = Path.GetFullPath(request.File);
        var outputs = new OutputFiles(Path.GetDirectoryName(path)!, replace: true, []);
        if (bytes is null || outputs.TryWrite([new OutputFile(path, bytes)], cancellation, out problem) is null)
        {
            return Fail("", problem);
        }
        var changed = Enumerable
            .Range(0, after.Score.Bars.Count)
            .Where(b =>
                BothHands.Any(h => !Reworking.Spot(before, b, h).Strokes.Equals(Reworking.Spot(after, b, h).Strokes))
            )
            .Select(b => after.Score.Bars[b].Number);
        return Report() with
        {
            Kept = KeptSpots(after, kept),
            Changed = changed.ToValueList(),
            Remarks = after.Notes.Select(ReportOf.Remark).ToValueList(),
        };
    }

    private StoredArrangement? Stored(CancellationToken cancellation)
    {
        if (!File.Exists(request.File))
        {
            Fail("", WorkbenchMessages.NotFound);
            return null;
        }
        if (InputBytes.TryRead(request.File, cancellation, out var problem) is not { } bytes)
        {
            Fail("", problem);
            return null;
        }
        if (InputKinds.Of(request.File, bytes) != InputKind.Arrangement)
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

    private static ValueList<KeptBar> With(ValueList<KeptBar> kept, IEnumerable<KeptBar> added)
    {
        var now = added.ToList();
        return kept.Where(k => !now.Exists(n => n.Bar == k.Bar && n.Hand == k.Hand))
            .Concat(now)
            .OrderBy(k => k.Bar)
            .ThenBy(k => k.Hand)
            .ToValueList();
    }

    private static int BarOf(Arrangement arrangement, string number)
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

    private static List<(string Name, OtherWay Way)> Named(ValueList<OtherWay> ways) =>
        [
            .. ways.GroupBy(w => w.Kind)
                .SelectMany(kind =>
                    kind.Select((w, i) => (FormattableString.Invariant($"{Words.Of(w.Kind)}-{i + 1}"), w))
                ),
        ];

    private static WayFound Found(string name, OtherWay way) =>
        new(
            name,
            way.Dearer / 1000.0,
            way.Changes,
            way.OtherBars,
            way.EffortBefore,
            way.EffortAfter,
            way.Style.Select(s => new StyleMoved(s.Words, s.Before, s.After, s.Reference)).ToValueList()
        );

    private static ValueList<KeptSpot> KeptSpots(Arrangement arrangement, ValueList<KeptBar> kept) =>
        kept.Select(k => new KeptSpot(arrangement.Score.Bars[k.Bar].Number, Words.Of(k.Hand))).ToValueList();

    private SpotReport? Fail(Diagnostic? refusal) => Fail(refusal?.Place.ToString() ?? "", refusal?.Message ?? "");

    private SpotReport? Fail(string place, string message)
    {
        _problems.Add(new Problem(request.File, null, place, message));
        return null;
    }
}
