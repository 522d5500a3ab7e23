using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Makes a piano score: a note goes to the hand of its staff, a voice that crosses the staves is split, and each voice
/// is filled up with rests that are not printed. One part alone on one staff in the bass clef is a left hand alone.
/// </summary>
internal sealed class ScoreBuilder(ScoreFile file, Findings findings)
{
    private const int MostLanes = 8; // overlapping lines of one written voice on one staff

    private readonly Dictionary<(string Voice, int Staff), List<WrittenNote>> _graces = [];
    private bool _leftHandOnly;
    private ScoreTies _ties = null!; // set before bars are built
    private Dictionary<string, int> _home = []; // staff on which a voice mostly stands

    public Score? Build()
    {
        if (Bars() is not { } bars)
        {
            return null;
        }
        if (!bars.Exists(b => b.Notes.Exists(n => n.Sounds)))
        {
            findings.Fail(Place.Whole, MusicXmlMessages.NoNotes);
            return null;
        }
        BarFitting.Apply(bars, findings);
        _ties = new ScoreTies(bars, findings);
        _home = bars.SelectMany(b => b.Notes)
            .GroupBy(n => n.Voice)
            .ToDictionary(g => g.Key, g => g.CountBy(n => n.Staff).MaxBy(c => c.Value).Key);
        var built = bars.Select((b, i) => BarOf(b, i)).ToValueList();
        foreach (var left in _graces.Values.Where(g => g.Count > 0))
        {
            findings.Note(left[0].Place, MusicXmlMessages.GraceWithoutNote);
        }
        return new Score
        {
            Title = file.Title,
            Composer = file.Composer,
            Subtitle = file.Subtitle,
            LeftHandOnly = _leftHandOnly,
            Bars = built,
        };
    }

    private List<WrittenBar>? Bars()
    {
        var sounding = file.Parts.Where(p => p.HasNotes).ToList();
        if (sounding.Count == 0)
        {
            findings.Fail(Place.Whole, MusicXmlMessages.NoNotes);
            return null;
        }
        var piano = sounding.Find(p => p.HasTwoStaves);
        _leftHandOnly = piano is null && file.Parts.Count(p => !p.IsCue) == 1 && sounding[0].IsInBassClef;
        if (piano is null && sounding.Count != 2 && !_leftHandOnly)
        {
            findings.Fail(sounding[0].Place, MusicXmlMessages.NotTwoStaves(sounding.Count));
            return null;
        }
        var first = piano ?? sounding[0];
        var bars = PartReader.Read(first, findings);
        if (_leftHandOnly)
        {
            findings.Note(Place.Whole, MusicXmlMessages.LeftHandOnly);
        }
        else if (piano is null)
        {
            findings.Note(Place.Whole, MusicXmlMessages.TwoParts(sounding[0].Name, sounding[1].Name));
            AddLeft(bars, PartReader.Read(sounding[1], findings));
        }
        else if (file.Parts.Count > 1)
        {
            findings.Note(piano.Place, MusicXmlMessages.ScorePart(piano.Name, file.Parts.Count));
        }
        if (bars.SelectMany(b => b.Notes).FirstOrDefault(n => n.Staff > 2) is { } third)
        {
            findings.Warn(third.Place, MusicXmlMessages.MoreThanTwoStaves);
        }
        Borrowing.Take(file, first, bars, findings);
        return bars;
    }

    private static void AddLeft(List<WrittenBar> right, List<WrittenBar> left)
    {
        foreach (var (to, from) in right.Zip(left))
        {
            to.Notes.AddRange(from.Notes.Select(n => n with { Staff = 2, Voice = "left " + n.Voice }));
            to.Extent = ScoreTime.Max(to.Extent, from.Extent);
        }
    }

    private ScoreBar BarOf(WrittenBar bar, int index)
    {
        var events = Events(bar, index);
        return new ScoreBar
        {
            Number = bar.Number,
            Implicit = bar.Implicit,
            Metre = bar.Metre!.Value, // both supplied by BarFitting
            Key = bar.Key!.Value,
            Length = bar.Length,
            Chords = bar.Chords.Select(c => new PlacedChord(c.At, c.Chord)).ToValueList(),
            Directions = bar
                .Directions.Select(d => d with { At = ScoreTime.Min(d.At, bar.Length) })
                .OrderBy(d => d.At)
                .ToValueList(),
            Marks = bar.Marks,
            Voices = [.. _leftHandOnly ? [] : VoicesOf(Hand.Right, events, bar), .. VoicesOf(Hand.Left, events, bar)],
            Id = bar.Id,
        };
    }

    private List<(string Voice, Hand Hand, WrittenNote First, ScoreEvent Event)> Events(WrittenBar bar, int index)
    {
        var events = new List<(string, Hand, WrittenNote, ScoreEvent)>();
        foreach (var group in Strikes(bar.Notes))
        {
            var first = group[0];
            var hand = first.Staff == 1 && !_leftHandOnly ? Hand.Right : Hand.Left;
            var waiting = Waiting(first);
            if (first.Grace)
            {
                waiting.AddRange(group.Where(n => n.Pitch is not null));
                continue;
            }
            var length = ScoreTime.Min(first.Length, bar.Length - first.At);
            if (length <= ScoreTime.Zero)
            {
                continue; // a rest for the bar, written longer than the bar
            }
            var made = EventOf(group, length, bar, index);
            if (made.Notes.Count > 0)
            {
                made = made with { Graces = waiting.Select(g => NoteOf(g)).ToValueList() };
                waiting.Clear();
            }
            events.Add((first.Voice, hand, first, made));
        }
        return events;
    }

    private List<WrittenNote> Waiting(WrittenNote note)
    {
        if (!_graces.TryGetValue((note.Voice, note.Staff), out var waiting))
        {
            _graces[(note.Voice, note.Staff)] = waiting = [];
        }
        return waiting;
    }

    // Notes struck together on one staff; a chord over both staves makes one strike for each.
    private static IEnumerable<List<WrittenNote>> Strikes(List<WrittenNote> notes)
    {
        var from = 0;
        while (from < notes.Count)
        {
            var to = from + 1;
            while (to < notes.Count && notes[to].InChord)
            {
                to++;
            }
            foreach (var onStaff in notes[from..to].GroupBy(n => Math.Min(n.Staff, 2)))
            {
                yield return onStaff.ToList();
            }
            from = to;
        }
    }

    private ScoreEvent EventOf(List<WrittenNote> group, ScoreTime length, WrittenBar bar, int index)
    {
        var first = group[0];
        var notes = group
            .Where(n => n.Pitch is not null)
            .OrderBy(n => n.Pitch!.Value)
            .Select(n => NoteOf(n) with { TieStart = _ties.Starts(n, index), TieStop = _ties.Stops(n, index) })
            .ToValueList();
        var fillsBar = first.At.IsZero && length == bar.Length;
        return new ScoreEvent(first.At, length, first.Value ?? NoteValues.Nearest(length))
        {
            Notes = notes,
            Hidden = notes.Count == 0 && first.Hidden,
            WholeBarRest = notes.Count == 0 && fillsBar && (first.WholeBar || first.Value is null),
            Rolled = group.Exists(n => n.Rolled),
            Staccato = group.Exists(n => n.Staccato),
            Accent = group.Exists(n => n.Accent),
            Beams = first.Beams,
            Lyrics = group.Select(n => n.Lyrics).FirstOrDefault(l => l.Count > 0) ?? [],
        };
    }

    private static ScoreNote NoteOf(WrittenNote note) =>
        new(note.Pitch!.Value, note.Id) { Finger = note.Finger, NextFinger = note.NextFinger };

    private List<ScoreVoice> VoicesOf(
        Hand hand,
        List<(string Voice, Hand Hand, WrittenNote First, ScoreEvent Event)> events,
        WrittenBar bar
    )
    {
        var homeStaff = hand == Hand.Right ? 1 : 2;
        var voices = new List<ScoreVoice>();
        var written = events
            .Where(e => e.Hand == hand)
            .GroupBy(e => e.Voice)
            .OrderBy(g => Math.Min(_home[g.Key], 2) == homeStaff ? 0 : 1)
            .ThenBy(g => int.TryParse(g.Key, CultureInfo.InvariantCulture, out var number) ? number : int.MaxValue)
            .ThenBy(g => g.Key, StringComparer.Ordinal);
        foreach (var voice in written)
        {
            foreach (var lane in Lanes(voice.OrderBy(e => e.Event.At).Select(e => (e.First.Place, e.Event))))
            {
                voices.Add(new ScoreVoice(hand, voices.Count + 1, Filled(lane, bar.Length).ToValueList()));
            }
        }
        if (voices.Count == 0)
        {
            var rest = new ScoreEvent(ScoreTime.Zero, bar.Length, new NoteValue(1)) { WholeBarRest = true };
            voices.Add(new ScoreVoice(hand, 1, [rest]));
        }
        return voices;
    }

    // What overlaps inside one written voice takes a line of its own; a rest among it needs none.
    private List<List<ScoreEvent>> Lanes(IEnumerable<(Place Place, ScoreEvent Event)> events)
    {
        var lanes = new List<List<ScoreEvent>>();
        foreach (var (place, made) in events)
        {
            if (lanes.Find(l => l[^1].At + l[^1].Length <= made.At) is { } free)
            {
                free.Add(made);
            }
            else if (lanes.Count == MostLanes)
            {
                findings.Warn(place, MusicXmlMessages.TooManyLines);
            }
            else if (lanes.Count == 0 || made.Notes.Count > 0)
            {
                lanes.Add([made]);
            }
        }
        return lanes;
    }

    private static IEnumerable<ScoreEvent> Filled(List<ScoreEvent> lane, ScoreTime barLength)
    {
        var at = ScoreTime.Zero;
        foreach (var made in lane)
        {
            foreach (var rest in Gap(at, made.At))
            {
                yield return rest;
            }
            yield return made;
            at = made.At + made.Length;
        }
        foreach (var rest in Gap(at, barLength))
        {
            yield return rest;
        }
    }

    private static IEnumerable<ScoreEvent> Gap(ScoreTime from, ScoreTime to)
    {
        foreach (var value in NoteValues.Filling(to - from))
        {
            // The last piece of an odd length may print longer than it lasts.
            var length = ScoreTime.Min(value.Length, to - from);
            yield return new ScoreEvent(from, length, value) { Hidden = true };
            from += length;
        }
    }
}
