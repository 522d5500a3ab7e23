using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Practice.Listening;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Makes a lesson on one piece for one player and writes it: the booklet, the lesson file, each step and drill.</summary>
internal sealed class MakeLesson(ITools tools, LessonRequest request)
{
    private readonly List<Problem> _problems = [];
    private readonly List<Diagnostic> _findings = [];

    public LessonReport Run(CancellationToken cancellation)
    {
        var reader = new BriefReader(tools);
        var player = reader.PlayerOf(request.Player);
        reader.Read(new Wishes { Level = request.Level });
        _problems.AddRange(reader.Faults);
        Within("days", request.Days, LessonWish.FewestDays, LessonWish.MostDays);
        Within("minutes", request.Minutes, LessonWish.FewestMinutes, LessonWish.MostMinutes);
        if (File.Exists(request.OutputFolder))
        {
            _problems.Add(new Problem("out", null, "", WorkbenchMessages.OutIsFile(request.OutputFolder)));
        }
        if (_problems.Count > 0)
        {
            return Report(LessonOutcome.BadWish);
        }
        try
        {
            return Made(player, cancellation);
        }
        catch (OperationCanceledException)
        {
            return Report(LessonOutcome.Cancelled);
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            _problems.Add(new Problem(request.Piece, null, "", WorkbenchMessages.Internal(fault)));
            return Report(LessonOutcome.Unreadable);
        }
    }

    private LessonReport Made(Player? player, CancellationToken cancellation)
    {
        var takes = Takes(cancellation);
        var piece = LessonPiece.Read(
            tools,
            request,
            stored => BriefOf(stored, player),
            _problems,
            out var findings,
            out var isRefused,
            cancellation
        );
        _findings.AddRange(findings);
        if (piece is null || _problems.Count > 0)
        {
            return Report(isRefused ? LessonOutcome.Refused : LessonOutcome.Unreadable);
        }
        var wish = new LessonWish
        {
            Hands = player?.Hands ?? piece.Arrangement?.Brief.Hands ?? new PlayerHands(),
            Player = player?.Name,
            Days = request.Days,
            Minutes = request.Minutes,
            Takes = takes,
        };
        var pages = tools.Engrave(tools.ToMusicXml(piece.Score), Wish(piece.Score), cancellation).Value;
        wish = wish with { PageEnds = PageEnds(piece.Score, pages) };
        var made = piece is { Tune: { } tune, Arrangement: { } setting }
            ? LessonMaker.Of(tune, setting, wish, cancellation)
            : LessonMaker.Of(piece.Score, wish);
        if (made.Lesson is not { } lesson)
        {
            _problems.Add(new Problem(request.Piece, null, made.Refusal!.Place.ToString(), made.Refusal.Message));
            return Report(LessonOutcome.Refused);
        }
        return Written(lesson, ReferenceEquals(lesson.Goal, piece.Score) ? pages : null, cancellation);
    }

    private LessonReport Written(Lesson lesson, EngravedPages? pages, CancellationToken cancellation)
    {
        var name = OutputNames.OfFile(request.Piece);
        var files = new LessonFiles(tools, request, lesson, name);
        var outputs = new OutputFiles(
            request.OutputFolder,
            request.Replace,
            request.Takes.Append(request.Piece).Select(Path.GetFullPath)
        );
        var document = files.Document;
        if (
            files.All(pages, cancellation, out var problem) is not { } contents
            || outputs.TryWrite(contents, cancellation, out problem) is not { } written
        )
        {
            _problems.Add(new Problem("out", null, "", problem));
            return Report(LessonOutcome.Unreadable) with { Lesson = document };
        }
        return Report(LessonOutcome.Written) with { Lesson = document, Outputs = written };
    }

    private Brief BriefOf(Brief? stored, Player? player)
    {
        var wishes = new Wishes { Player = request.Player, Level = request.Level };
        var brief = new BriefReader(tools).Read(wishes, stored);
        // What was settled holds for the brief it was found for.
        return brief with
        {
            Settled = stored is not null && brief == stored ? brief.Settled : null,
            Hands = player?.Hands ?? brief.Hands,
        };
    }

    private ValueList<NamedTake> Takes(CancellationToken cancellation)
    {
        var takes = new List<NamedTake>();
        foreach (var file in request.Takes)
        {
            if (TakeInput.Read(tools, file, _problems, out var findings, cancellation) is { } played)
            {
                takes.Add(new(Path.GetFileName(file), Take.Of(played)));
                _findings.AddRange(findings);
            }
        }
        return takes.ToValueList();
    }

    private PageWish Wish(Score score) => new(request.Paper) { Turns = FreeHands.After(score) };

    private static ValueList<int> PageEnds(Score score, EngravedPages? pages)
    {
        var places = score.Bars.Index().ToDictionary(b => b.Item.Id, b => b.Index, StringComparer.Ordinal);
        return (pages?.PageEnds ?? []).Where(places.ContainsKey).Select(id => places[id]).ToValueList();
    }

    private void Within(string option, int value, int least, int most)
    {
        if (value < least || value > most)
        {
            _problems.Add(new Problem(option, null, "", WorkbenchMessages.NotWithin(value, least, most)));
        }
    }

    private LessonReport Report(LessonOutcome outcome) =>
        new()
        {
            Outcome = outcome,
            File = request.Piece,
            Reading = _findings.Select(ReportOf.Remark).ToValueList(),
            Problems = _problems.ToValueList(),
        };
}
