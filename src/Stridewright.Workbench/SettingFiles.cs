using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>All that is written of one setting: the score, the plain tune and the sketch where wanted, and its arrangement
/// file.</summary>
/// <param name="saved">Path of the arrangement file; null: none.</param>
internal sealed class SettingFiles(
    ITools tools,
    ArrangeRequest request,
    ScoreFiles files,
    OutputNames names,
    string? saved
)
{
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public SettingMade Of(
        string name,
        TuneJob job,
        Brief brief,
        Arrangement arrangement,
        CancellationToken cancellation
    )
    {
        var score = request.Notes ? tools.WithNotes(arrangement) : arrangement.Score;
        var turns = FreeHands.After(score);
        var wish = new PageWish(request.Paper) { Turns = turns, MostPages = request.Pages };
        var contents = files.Of(
            name,
            tools.ToMusicXml(score),
            score,
            wish,
            cancellation,
            out var pages,
            out var problem
        );
        if (contents is not null && request.Plain)
        {
            var plain = tools.Plain(job.Tune);
            var sheet = files.Of(
                names.Take(name + ".plain"),
                tools.ToMusicXml(plain),
                LeadSheet.Of(plain),
                new PageWish(request.Paper),
                cancellation,
                out _,
                out problem
            );
            contents = sheet is null ? null : contents.Concat(sheet);
        }
        var remarks = job.Remarks;
        if (contents is not null && arrangement.Sketch is { } sketch)
        {
            var page = files.Of(
                names.Take(name + ".sketch"),
                tools.ToMusicXml(sketch),
                sketch,
                new PageWish(request.Paper) { OnOnePage = true },
                cancellation,
                out var sketched,
                out problem
            );
            contents = page is null ? null : contents.Concat(page);
            if (sketched is { Svg.Count: > 1 and var count })
            {
                remarks = [.. remarks, new Remark("note", "", WorkbenchMessages.SketchTooLong(count))];
            }
        }
        if (contents is not null && saved is not null)
        {
            var file = SavedArrangement.Of(tools, job.Tune, ToSave(brief, arrangement), job.Figures, out problem);
            contents = file is null ? null : contents.Append(new OutputFile(saved, file));
        }
        return new SettingMade(contents, problem, pages, turns, remarks);
    }

    // The form that was fitted to the pages is the one to be set again, and figures that were put stay where they are.
    private Brief ToSave(Brief brief, Arrangement arrangement)
    {
        var given = request.Pages is null ? brief : brief with { Form = arrangement.Brief.Form };
        return brief.Figures.Count == 0
            ? given
            : SpotCraft.Keeping(given with { Figures = [] }, arrangement.Brief.Kept, arrangement);
    }
}

/// <summary>What is to be written of a setting.</summary>
/// <param name="Contents">Null: it cannot be, for <paramref name="Problem"/>.</param>
/// <param name="Pages">Where some were engraved.</param>
/// <param name="Turns">Bars after which a hand is free.</param>
internal sealed record SettingMade(
    IEnumerable<OutputFile>? Contents,
    string Problem,
    EngravedPages? Pages,
    ValueList<string> Turns,
    ValueList<Remark> Remarks
);
