using Stridewright.Engraving;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Pocket;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>The files of a lesson: NAME.lesson.pdf, NAME.lesson.html for a phone, NAME.lesson.json, the piece, and each step and drill in the formats asked
/// for. Where pages cannot be engraved there is neither booklet nor file for a phone.</summary>
internal sealed class LessonFiles(ITools tools, LessonRequest request, Lesson lesson, string name)
{
    public LessonDocument Document { get; } =
        LessonDocumentOf.Lesson(
            lesson,
            name + ".piece.musicxml",
            id =>
                request.Formats.Contains(OutputFormat.MusicXml)
                    ? FormattableString.Invariant($"{name}.{id}.musicxml")
                    : null
        );

    /// <param name="pages">The piece as it was engraved already; null: it was not.</param>
    /// <returns>Null, with the reason, when something cannot be engraved.</returns>
    public IEnumerable<OutputFile>? All(EngravedPages? pages, CancellationToken cancellation, out string problem)
    {
        var files = new List<OutputFile>
        {
            new(name + ".lesson.json", LessonDocumentOf.Bytes(Document)),
            new(name + ".piece.musicxml", tools.ToMusicXml(lesson.Goal)),
        };
        problem = "";
        foreach (var (id, score) in Scores())
        {
            cancellation.ThrowIfCancellationRequested();
            var written = new ScoreFiles(tools, request.Formats).Of(
                name + "." + id,
                tools.ToMusicXml(score),
                score,
                new PageWish(request.Paper),
                cancellation,
                out _,
                out problem
            );
            if (written is null)
            {
                return null;
            }
            files.AddRange(written);
        }
        if (Engraver.IsSupported)
        {
            var booklet = new LessonBooklet(tools, lesson, request.Paper, cancellation).Of(pages, out problem);
            if (booklet is null)
            {
                return null;
            }
            files.Insert(0, new(name + ".lesson.pdf", booklet.Pdf()));
            if (new PocketFile(tools).Write(LessonPocket.Of(lesson), cancellation, out problem) is not { } pocket)
            {
                return null;
            }
            files.Insert(1, new(name + ".lesson.html", pocket));
            if (request.Formats.Contains(OutputFormat.Png))
            {
                files.AddRange(booklet.Svg.Select((_, i) => Picture(booklet, i)));
            }
        }
        return files;
    }

    private OutputFile Picture(EngravedPages booklet, int page) =>
        new(FormattableString.Invariant($"{name}.lesson-page-{page + 1}.png"), booklet.Png(page));

    private IEnumerable<(string Id, Score Score)> Scores() =>
        lesson.Steps.Select(s => (s.Id, s.Score)).Concat(lesson.Drills.Select(d => (d.Id, d.Score)));
}
