using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>Makes a tune of a part of a file, bar by bar.</summary>
internal sealed class MidiTuneBuilder
{
    private readonly MidiContents _file;
    private readonly List<Diagnostic> _findings;
    private readonly BarPlan _plan;
    private readonly List<(ScoreTime At, Key Key)> _keys;
    private readonly bool _hasMetre;

    public MidiTuneBuilder(MidiContents file, List<Diagnostic> findings)
    {
        _file = file;
        _findings = findings;
        var metres = file.Tracks.SelectMany(t => t.Metres).ToList();
        _hasMetre = metres.Count > 0;
        _plan = new BarPlan(metres, file.TicksPerQuarter);
        _keys = file
            .Tracks.SelectMany(t => t.Keys)
            .OrderBy(k => k.Tick)
            .Select(k => (new ScoreTime(k.Tick, 4L * file.TicksPerQuarter), k.Key))
            .ToList();
    }

    public Tune? Build(MidiPart melody, IReadOnlyList<MidiPart> parts)
    {
        var grid = new BeatGrid(_plan, _file.TicksPerQuarter, melody.Strokes.Select(s => s.Tick));
        var top = new TopLine(grid, _file.TicksPerQuarter);
        var line = top.Of(melody.Strokes);
        var place = MidiTuneReader.PlaceOf(line[0].Stroke);
        if (top.LeftOut > 0)
        {
            Note(place, MidiMessages.TopLine(top.LeftOut));
        }
        SayMoved(line, grid);
        if (!_hasMetre)
        {
            Note(place, MidiMessages.DefaultMetre);
        }
        if (_keys.Count == 0)
        {
            _keys.Add((ScoreTime.Zero, KeyGuess.Of(line)));
            Note(place, MidiMessages.GuessedKey(_keys[0].Key.ToString()));
        }
        var harmony = new Harmony(_file, _plan, KeyAt);
        var chords = harmony.Read(melody, parts);
        if (chords.Count > 0)
        {
            Note(place, MidiMessages.ChordsTaken(harmony.Source, chords.Count));
        }
        if (harmony.Unknown > 0)
        {
            Note(place, MidiMessages.ChordsUnknown(harmony.Unknown));
        }
        var tempo = _file.Tracks.SelectMany(t => t.Tempi).Where(MidiLimits.Believes).MinBy(t => t.Tick);
        return new Tune
        {
            Title = Title(),
            QuartersPerMinute = tempo is null ? null : Math.Round(60e6 / tempo.MicrosecondsPerQuarter, 2),
            Bars = Bars(line, chords, Lyrics(melody, line), place),
        };
    }

    private void Note(Place place, string message) => _findings.Add(new(Severity.Note, place, message));

    // The first track's name is the piece's, unless there is a part of that name among others.
    private string Title()
    {
        var first = _file.Tracks[0];
        var isPart = first.Strokes.Count > 0 && _file.Tracks.Skip(1).Any(t => t.Strokes.Count > 0);
        return isPart || first.Name.Length == 0 ? MidiMessages.Untitled : first.Name;
    }

    private void SayMoved(List<LineNote> line, BeatGrid grid)
    {
        var moved = line.Select(n => (Note: n, By: Math.Abs((grid.Time(n.Stroke.Tick) - n.Start).ToQuarters())))
            .Where(n => n.By > 0.5 / _file.TicksPerQuarter)
            .ToList();
        if (moved.Count > 0)
        {
            var most = moved.MaxBy(n => n.By);
            Note(MidiTuneReader.PlaceOf(most.Note.Stroke), MidiMessages.Moved(moved.Count, line.Count, most.By));
        }
    }

    private Key KeyAt(ScoreTime time)
    {
        // The last change at or before the time; before the first change its key holds already.
        var (low, high) = (0, _keys.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            (low, high) = _keys[middle].At <= time ? (middle, high) : (low, middle - 1);
        }
        return _keys[low].Key;
    }

    private Dictionary<int, Lyric> Lyrics(MidiPart melody, List<LineNote> line)
    {
        var lyrics =
            melody.Track.Lyrics.Count > 0 ? melody.Track.Lyrics : _file.Tracks.MaxBy(t => t.Lyrics.Count)!.Lyrics;
        return MidiLyrics.Place(lyrics, line, _file.TicksPerQuarter);
    }

    private ValueList<TuneBar> Bars(
        List<LineNote> line,
        List<TimedChord> chords,
        Dictionary<int, Lyric> lyrics,
        Place place
    )
    {
        var bar = FirstBar(line, chords, place);
        var end = line[^1].End;
        var isPickUp = bar.End - bar.Start < bar.Metre.BarLength;
        var bars = new List<TuneBar>();
        var (note, chord) = (0, 0);
        while (bar.Start < end && bars.Count < MidiLimits.Bars)
        {
            var key = KeyAt(bar.Start);
            var notes = new List<TuneNote>();
            while (note < line.Count && line[note].Start < bar.End)
            {
                var (from, to) = (ScoreTime.Max(line[note].Start, bar.Start), ScoreTime.Min(line[note].End, bar.End));
                var starts = from == line[note].Start;
                var spelling = KeyAt(line[note].Start);
                notes.Add(
                    new TuneNote(from - bar.Start, to - from, Pitch(line[note].Stroke.Key, spelling))
                    {
                        TiedToNext = line[note].End > bar.End,
                        Graces = starts ? line[note].Graces.Select(g => Pitch(g, spelling)).ToValueList() : [],
                        Lyrics = starts && lyrics.TryGetValue(note, out var lyric) ? [lyric] : [],
                    }
                );
                if (line[note].End > bar.End)
                {
                    break;
                }
                note++;
            }
            var symbols = new List<PlacedChord>();
            for (; chord < chords.Count && chords[chord].At < bar.End; chord++)
            {
                symbols.Add(new(ScoreTime.Max(chords[chord].At, bar.Start) - bar.Start, chords[chord].Chord));
            }
            bars.Add(
                new TuneBar
                {
                    Number = MidiMessages.Number(bars.Count + (isPickUp ? 0 : 1)),
                    Metre = bar.Metre,
                    Key = key,
                    Length = bar.End - bar.Start,
                    Notes = notes.ToValueList(),
                    // Those from before the first bar fall together there: the last one sounds on.
                    Chords = symbols.GroupBy(c => c.At).Select(g => g.Last()).ToValueList(),
                }
            );
            bar = _plan.At(bar.End);
        }
        if (bar.Start < end)
        {
            _findings.Add(new(Severity.Warning, place, MidiMessages.TooManyBars(MidiLimits.Bars)));
            bars[^1] = WithoutTie(bars[^1]);
        }
        bars[^1] = bars[^1] with { Marks = new BarMarks { FinalBarAfter = true } };
        return bars.ToValueList();
    }

    // The bar that the tune begins in. It is a pick-up, and begins with its first note, when at least half of it is
    // silent before.
    private PlannedBar FirstBar(List<LineNote> line, List<TimedChord> chords, Place place)
    {
        var first = _plan.At(line[0].Start);
        var silent = 0;
        for (var bar = _plan.At(ScoreTime.Zero); bar.Start < first.Start; bar = _plan.At(bar.End))
        {
            silent++;
        }
        if (silent > 0)
        {
            Note(place, MidiMessages.SilentBars(silent));
        }
        var silence = line[0].Start - first.Start;
        var hasChord = chords.Exists(c => c.At >= first.Start && c.At < line[0].Start);
        return silence * 2 >= first.End - first.Start && !hasChord ? first with { Start = line[0].Start } : first;
    }

    private static Pitch Pitch(int midi, Key key) => Music.Pitch.At(midi, key.Spell(midi));

    private static TuneBar WithoutTie(TuneBar bar) =>
        bar.Notes.Count == 0
            ? bar
            : bar with
            {
                Notes = [.. bar.Notes.SkipLast(1), bar.Notes[^1] with { TiedToNext = false }],
            };
}
