using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Takes the notes out of any piano score, asking no more of it than what is struck when: staves and voices may be any
/// number, bars may be as long as they like, and nothing has to fit a voice. Upper staves are the right hand's.
/// </summary>
internal sealed class NotesBuilder(ScoreFile file, Findings findings)
{
    public ScoreNotes? Build()
    {
        var sounding = file.Parts.Where(p => p.HasNotes && !p.IsPercussion).ToList();
        if (sounding.Count == 0)
        {
            findings.Fail(Place.Whole, MusicXmlMessages.NoNotes);
            return null;
        }
        var piano = sounding.Find(p => p.HasTwoStaves);
        var taken = piano is null ? sounding : [piano];
        if (taken.Count < file.Parts.Count(p => !p.IsCue))
        {
            findings.Note(taken[0].Place, MusicXmlMessages.ScorePart(taken[0].Name, file.Parts.Count));
        }
        var bars = PartReader.Read(taken[0], findings);
        Borrowing.Take(file, taken[0], bars, findings);
        if (piano is null)
        {
            SetHand(bars, isLeft: taken.Count == 1 && taken[0].IsInBassClef);
        }
        foreach (var (part, index) in taken.Skip(1).Select((p, i) => (p, i + 1)))
        {
            Add(bars, part, isLeft: taken.Count == 2 || part.IsInBassClef, index);
        }
        if (!bars.Exists(b => b.Notes.Exists(n => n.Sounds)))
        {
            findings.Fail(Place.Whole, MusicXmlMessages.NoNotes);
            return null;
        }
        BarFitting.Apply(bars, findings, asWritten: true);
        return new ScoreNotes { Title = file.Title, Bars = bars.Select(BarOf).ToValueList() };
    }

    private static void SetHand(List<WrittenBar> bars, bool isLeft)
    {
        foreach (var bar in bars)
        {
            for (var i = 0; i < bar.Notes.Count; i++)
            {
                bar.Notes[i] = bar.Notes[i] with { Staff = isLeft ? 2 : 1 };
            }
        }
    }

    private void Add(List<WrittenBar> to, ScorePart part, bool isLeft, int index)
    {
        var read = PartReader.Read(part, findings);
        SetHand(read, isLeft);
        foreach (var (bar, from) in to.Zip(read))
        {
            bar.Notes.AddRange(
                from.Notes.Select(n => n with { Voice = FormattableString.Invariant($"{index}.{n.Voice}") })
            );
            bar.Extent = ScoreTime.Max(bar.Extent, from.Extent);
        }
    }

    private static NotesBar BarOf(WrittenBar bar) =>
        new()
        {
            Number = bar.Number,
            Implicit = bar.Implicit,
            Metre = bar.Metre!.Value, // supplied by BarFitting
            Length = bar.Length,
            Marks = bar.Marks,
            Routes = bar.Routes,
            Directions = bar.Directions.OrderBy(d => d.At).ToValueList(),
            Notes = bar
                .Notes.Where(n => n.Pitch is not null)
                .Select(n => new WrittenKey(
                    n.At,
                    n.Length,
                    n.Pitch!.Value.Midi,
                    n.Staff == 1 ? Hand.Right : Hand.Left,
                    n.Voice,
                    n.Id
                )
                {
                    Grace = n.Grace,
                    TieStart = n.TieStart,
                    TieStop = n.TieStop,
                    Rolled = n.Rolled,
                    Accent = n.Accent,
                    Ornamented = n.Ornamented,
                })
                .OrderBy(n => n.At)
                .ThenByDescending(n => n.Grace)
                .ToValueList(),
        };
}
