using Stridewright.Music;

namespace Stridewright.Practice.Listening.Reporting;

/// <summary>What a mark on the score means.</summary>
public enum MarkKind
{
    Missing,
    Wrong,
    Extra,
    Early,
    Late,
    Hesitation,
    Spread,
}

/// <summary>A mark at a note of the score.</summary>
/// <param name="Bar">Index among the bars in playing order.</param>
/// <param name="NoteId">Null: it is about the bar.</param>
/// <param name="Words">What the mark means here.</param>
public sealed record TakeMark(MarkKind Kind, int Bar, Hand? Hand, string? NoteId, string Words);

/// <summary>Puts every fault that was heard at its note, under the limits of the remarks.</summary>
internal sealed class MarkMaking(Alignment alignment, TakeReport report)
{
    private readonly ExpectedScore _score = alignment.Score;
    private readonly List<TakeMark> _marks = [];

    public ValueList<TakeMark> Done() =>
        _marks.OrderBy(m => m.Bar).ThenBy(m => m.Hand).ThenBy(m => m.Kind).ToValueList();

    public MarkMaking Notes(IReadOnlyList<WrongNote> wrong)
    {
        var replaced = wrong.ToDictionary(w => w.Expected);
        foreach (var (index, note) in Missing.Notes(alignment, report))
        {
            var isWrong = replaced.TryGetValue(index, out var other);
            var words = isWrong
                ? ListeningMessages.ForNote(alignment.Take.Notes[other!.Played].Key, note.Key)
                : ListeningMessages.NotPlayed(note.Key);
            Add(isWrong ? MarkKind.Wrong : MarkKind.Missing, note, words);
        }
        foreach (var bar in report.Bars.Where(b => b.Extra > 0))
        {
            _marks.Add(new(MarkKind.Extra, bar.Index, null, null, ListeningMessages.ExtraKeys(bar.Extra)));
        }
        return this;
    }

    public MarkMaking Strokes(
        IEnumerable<Anticipation> anticipations,
        IEnumerable<Hesitation> hesitations,
        HandStrokes strokes
    )
    {
        foreach (var a in anticipations)
        {
            if (Listener.IsFlattened(a))
            {
                Add(MarkKind.Late, Top(a.Stroke), ListeningMessages.OntoTheBeat);
            }
            else if (Listener.IsTooEarly(a))
            {
                Add(MarkKind.Early, Top(a.Stroke), ListeningMessages.ComesTooEarly);
            }
        }
        foreach (var h in hesitations)
        {
            Add(MarkKind.Hesitation, Top(h.After), ListeningMessages.Lost(h.Beats));
        }
        foreach (var s in strokes.Right.Concat(strokes.Left))
        {
            if (!s.Rolled && s.Spread > Thresholds.Spread.Value)
            {
                Add(MarkKind.Spread, Top(s), ListeningMessages.NotTogether(s.Spread));
            }
        }
        return this;
    }

    private static ExpectedNote Top(HandStroke stroke) => stroke.Notes.MaxBy(n => n.Key)!;

    private void Add(MarkKind kind, ExpectedNote note, string words) =>
        _marks.Add(new(kind, note.Bar, note.Hand, note.Id, words));
}

/// <summary>What was to be played and was not, where the player came through.</summary>
internal static class Missing
{
    /// <summary>By their index; grace notes, keys that the other voice struck, and a hand that did not play are passed
    /// over.</summary>
    public static IEnumerable<(int Index, ExpectedNote Note)> Notes(Alignment alignment, TakeReport report)
    {
        var score = alignment.Score.Notes;
        var sounding = alignment
            .Pairs.Where(p => p.IsMatch)
            .Select(p => (score[p.Expected!.Value].Beats, score[p.Expected!.Value].Key))
            .ToHashSet();
        return alignment
            .Pairs.Where(p => p.Played is null)
            .Select(p => (Index: p.Expected!.Value, Note: score[p.Expected!.Value]))
            .Where(n => report.Bars[n.Note.Bar].IsPlayed && (report.Alone is null || n.Note.Hand == report.Alone))
            .Where(n => n.Note.Grace == 0 && !sounding.Contains((n.Note.Beats, n.Note.Key)));
    }
}
