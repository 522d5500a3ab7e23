using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Takes the line that carries the tune out of a file: of its part and voice the top notes.</summary>
internal sealed class TuneBuilder(ScoreFile file, string? asked, Findings findings)
{
    private readonly List<Pitch> _graces = []; // waiting for the note they lean on
    private Place _gracePlace;

    public Tune? Build()
    {
        if (TunePart.Find(file, asked, findings) is not var (part, askedVoice))
        {
            return null;
        }
        var bars = PartReader.Read(part, findings);
        Borrowing.Take(file, part, bars, findings);
        BarFitting.Apply(bars, findings);
        var voice = TuneVoice.Find(part, bars, askedVoice, findings);
        if (voice is null && (askedVoice is not null || !bars.Exists(b => b.Chords.Count > 0)))
        {
            if (!findings.HasError)
            {
                findings.Fail(part.Place, MusicXmlMessages.NoNotes);
            }
            return null;
        }
        var notes = voice is var (name, staff)
            ? Line(bars, staff, name, askedVoice is not null)
            : bars.Select(_ => new List<LineNote>()).ToList();
        TieChecker.Apply(notes, bars, findings);
        return new Tune
        {
            Title = file.Title,
            Composer = file.Composer,
            QuartersPerMinute = bars.SelectMany(b => b.Directions)
                .Select(d => d.QuartersPerMinute)
                .FirstOrDefault(q => q is not null),
            Bars = bars.Select((b, i) => BarOf(b, notes[i])).ToValueList(),
        };
    }

    private static TuneBar BarOf(WrittenBar bar, List<LineNote> notes) =>
        new()
        {
            Number = bar.Number,
            Metre = bar.Metre!.Value, // both supplied by BarFitting
            Key = bar.Key!.Value,
            Length = bar.Length,
            Notes = notes.Select(n => n.Note).ToValueList(),
            Chords = bar.Chords.Select(c => new PlacedChord(c.At, c.Chord)).ToValueList(),
            Marks = bar.Marks,
            Section = bar.Section,
        };

    private List<List<LineNote>> Line(List<WrittenBar> bars, int staff, string voice, bool isAsked)
    {
        var lines = bars.Select(b => LineOf(b, staff, voice, isAsked)).ToList();
        if (_graces.Count > 0)
        {
            findings.Note(_gracePlace, MusicXmlMessages.GraceWithoutNote);
        }
        return lines;
    }

    private List<LineNote> LineOf(WrittenBar bar, int staff, string voice, bool isAsked)
    {
        // Where the voice is silent, the first other one on the staff goes on with the line, unless this one was asked for.
        var taken =
            isAsked || bar.Notes.Exists(n => n.Sounds && n.Staff == staff && n.Voice == voice)
                ? voice
                : bar.Notes.Find(n => n.Sounds && n.Staff == staff)?.Voice ?? voice;
        var strikes = new List<(WrittenNote Top, List<Pitch> Graces, ValueList<Lyric> Lyrics)>();
        var strikeAt = new Dictionary<ScoreTime, int>();
        foreach (var note in bar.Notes.Where(n => n.Staff == staff && n.Voice == taken && n.Pitch is not null))
        {
            if (note.Grace)
            {
                TakeGrace(note);
            }
            else if (strikeAt.TryGetValue(note.At, out var same))
            {
                var (top, graces, lyrics) = strikes[same];
                strikes[same] = (note.Pitch > top.Pitch ? note : top, graces, lyrics.Count > 0 ? lyrics : note.Lyrics);
            }
            else
            {
                strikeAt.Add(note.At, strikes.Count);
                strikes.Add((note, [.. _graces], note.Lyrics));
                _graces.Clear();
            }
        }
        var line = new List<LineNote>();
        strikes.Sort((a, b) => a.Top.At.CompareTo(b.Top.At));
        for (var i = 0; i < strikes.Count; i++)
        {
            var (top, graces, lyrics) = strikes[i];
            var end = ScoreTime.Min(top.End, i + 1 < strikes.Count ? strikes[i + 1].Top.At : bar.Length);
            if (end < top.End)
            {
                findings.Warn(top.Place, MusicXmlMessages.NotesOverlap);
            }
            var note = new TuneNote(top.At, end - top.At, top.Pitch!.Value)
            {
                Graces = graces.ToValueList(),
                Lyrics = lyrics,
            };
            line.Add(new LineNote(note, top));
        }
        return line;
    }

    private void TakeGrace(WrittenNote grace)
    {
        var pitch = grace.Pitch!.Value;
        if (!grace.InChord || _graces.Count == 0)
        {
            _graces.Add(pitch);
        }
        else if (pitch > _graces[^1])
        {
            _graces[^1] = pitch;
        }
        _gracePlace = grace.Place;
    }
}

/// <summary>A note of the line with what was written for it.</summary>
internal sealed record LineNote(TuneNote Note, WrittenNote Written);
