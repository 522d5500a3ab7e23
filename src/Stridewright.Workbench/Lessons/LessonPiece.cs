using Stridewright.Arranging;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>A piece to be learned: a score as it stands, or a setting with the tune it is of.</summary>
internal sealed record LessonPiece(Score Score, Tune? Tune, Arrangement? Arrangement)
{
    /// <summary>Reads one; else null and at least one problem. A score on two staves is taken as it stands, of anything else the
    /// tune is set.</summary>
    public static LessonPiece? Read(
        ITools tools,
        LessonRequest request,
        Func<Brief?, Brief> briefOf,
        List<Problem> problems,
        out ValueList<Diagnostic> findings,
        out bool isRefused,
        CancellationToken cancellation
    )
    {
        (findings, isRefused) = ([], false);
        var named = new NamedFile(request.Piece, problems);
        if (named.Bytes(WorkbenchMessages.FolderForFile, cancellation) is not { } bytes)
        {
            return null;
        }
        if (InputKinds.Of(request.Piece, bytes) == InputKind.MusicXml && Written(tools, bytes) is { } written)
        {
            findings = written.Diagnostics;
            return new(WithIds(written.Value!), null, null);
        }
        var read = TuneInput.Read(tools, new InputFile(request.Piece, request.Piece), bytes, part: null);
        findings = read.Findings.Where(f => f.Severity != Severity.Error).ToValueList();
        if (read.Tunes is not [var tune])
        {
            named.Fail(
                read.Findings,
                read.Tunes.Count > 1
                    ? WorkbenchMessages.OneTuneToLearn(read.Tunes.Count)
                    : WorkbenchMessages.NoTuneInside
            );
            return null;
        }
        var result = tools.Arrange(tune, briefOf(read.Stored?.Brief), cancellation);
        if (Passed.Of(tools, result, out var place, out var reason) is not var (arrangement, _))
        {
            problems.Add(new Problem(request.Piece, null, place, reason));
            isRefused = true;
            return null;
        }
        return new(arrangement.Score, tune, arrangement);
    }

    // A score in which the left hand has something to play; a lead sheet is a tune.
    private static Reading<Score>? Written(ITools tools, byte[] bytes)
    {
        using var stream = new MemoryStream(bytes, writable: false);
        var reading = tools.ReadMusicXmlScore(stream);
        return reading.Value is { Bars.Count: > 0 } score && Timeline.Of(score).Any(s => s.Hand == Hand.Left)
            ? reading
            : null;
    }

    // Bars of other people's scores have no ids; those of the pages are found by them.
    private static Score WithIds(Score score) =>
        score.Bars.Any(b => b.Id.Length > 0)
            ? score
            : score with
            {
                Bars = score
                    .Bars.Select((b, i) => b with { Id = FormattableString.Invariant($"b{i + 1}") })
                    .ToValueList(),
            };
}
