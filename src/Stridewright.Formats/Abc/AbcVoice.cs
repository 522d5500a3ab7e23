using Stridewright.Formats.Parts;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>One voice of a tune while it is being read: what holds now, and the bars so far.</summary>
internal sealed class AbcVoice(AbcFindings findings)
{
    private readonly List<Pitch> _graces = [];
    private AbcLayer? _layer; // the second layer of a bar (&) at hand
    private AbcBar? _bar;
    private ChordSymbol? _chord;
    private bool _chordIsCarried;
    private ScoreTime? _brokenNext;
    private (int For, int Of, int Left) _tuplet;
    private bool _repeatStart;
    private ValueList<int> _ending = [];
    private string? _section;
    private AbcNote? _last;
    private bool _full;
    private AbcClef? _toldClef;

    public PartLabel Label { get; set; } = new(1, "", "", "");

    public List<AbcBar> Bars { get; } = [];

    public required ScoreTime Unit { get; set; }

    /// <summary>As written.</summary>
    public required AbcKey Key { get; set; }

    public required AbcClef Clef { get; set; }

    public required Metre? Metre { get; set; }

    public required AbcScope Scope { get; init; }

    public required CommonGrid Grid { get; init; }

    /// <summary>Notes of the music line before a line of words, with their bars.</summary>
    public List<(AbcNote Note, AbcBar Bar)> Line { get; } = [];

    /// <summary>Lines of words under that music line so far.</summary>
    public int Verses { get; set; }

    public bool HasNotes { get; private set; }

    /// <summary>True when there is at least one chord symbol.</summary>
    public bool HasChords => ChordCount > 0;

    public int ChordCount => Bars.Sum(b => b.Notes.Count(n => n.Chord is not null) + b.LayerChords.Count);

    public bool HasLyrics => Bars.Exists(b => b.Notes.Exists(n => n.Lyrics.Count > 0));

    /// <summary>The bar being read, or the one that the next note will begin.</summary>
    public AbcBar Current => _bar ??= new AbcBar();

    /// <summary>Adds a note, or a rest where there is no pitch. <paramref name="times"/> is in unit lengths.</summary>
    public void Add(AbcSpot spot, Pitch? pitch, ScoreTime times, bool tie)
    {
        if (_full)
        {
            return;
        }
        var bar = Current;
        if (_layer is not null)
        {
            if (pitch is not null && !_layer.HasNotes)
            {
                findings.Once(Severity.Note, spot, AbcMessages.Overlay, bar);
            }
            _layer.Add(pitch is not null, OnGrid(Unit * times, spot, bar));
            return;
        }
        if (bar.Notes.Count == 0)
        {
            SetMarks(bar, spot);
        }
        if (bar.Notes.Count >= AbcLimits.NotesPerBar)
        {
            if (!bar.IsCutShort)
            {
                findings.Once(Severity.Warning, spot, AbcMessages.TooManyNotes(AbcLimits.NotesPerBar), bar);
                bar.IsCutShort = true;
            }
            return;
        }
        var length = Unit * times;
        if (_brokenNext is { } factor)
        {
            length *= factor;
            _brokenNext = null;
        }
        if (_tuplet.Left > 0)
        {
            length = length * _tuplet.For / _tuplet.Of;
            _tuplet.Left--;
        }
        var note = new AbcNote
        {
            Pitch = pitch is { } written ? Sounding(written) : null,
            Written = pitch,
            Length = OnGrid(length, spot, bar),
            Tie = tie && pitch is not null,
            Graces = pitch is null ? [] : _graces.ToValueList(),
            Chord = _chord,
            Spot = spot,
        };
        _graces.Clear();
        _chord = null;
        _last = note;
        bar.Notes.Add(note);
        if (pitch is not null)
        {
            HasNotes = true;
            Line.Add((note, bar));
        }
    }

    /// <summary>Whole bars of rest.</summary>
    public void AddBarsOfRest(AbcSpot spot, int count)
    {
        var length = (Metre?.BarLength ?? ScoreTime.Whole).Per(Unit);
        for (var i = 0; i < count && !_full; i++)
        {
            CloseBar();
            Add(spot, null, length, false);
        }
    }

    /// <summary>A written pitch as it sounds.</summary>
    public Pitch Sounding(Pitch written) => Clef.Semitones == 0 ? written : written.Plus(Clef.Transposing(Key.Key));

    /// <summary>The written pitch of a letter here: by its own accidental, else the bar's, else the key's.</summary>
    public Pitch PitchOf(Step step, int octave, int? accidental)
    {
        octave += Clef.Octaves + Clef.ClefOctaves;
        if (accidental is { } own)
        {
            Current.Accidentals.Set(step, octave, own, Scope);
            return new Pitch(step, own, octave);
        }
        // A tie over the bar line carries its accidental with it.
        if (
            _bar is null or { Notes.Count: 0 }
            && _last is { Tie: true, Written: { } tied }
            && tied.Step == step
            && tied.Octave == octave
        )
        {
            return tied;
        }
        return new Pitch(step, _bar?.Accidentals.Of(step, octave, Scope) ?? Key.AlterOf(step), octave);
    }

    public void AddGrace(Pitch pitch)
    {
        if (_graces.Count < AbcLimits.Graces && _layer is null)
        {
            _graces.Add(Sounding(pitch));
        }
    }

    public void AddChord(AbcSpot spot, ChordSymbol chord)
    {
        if (_layer is not null)
        {
            _layer.Chord ??= chord.IsNoChord ? chord : chord.Plus(Clef.Transposing(Key.Key));
            return;
        }
        // A symbol just before a bar line gives way to one after it.
        if (_chord is null || _chordIsCarried)
        {
            (_chord, _chordIsCarried) = (chord.IsNoChord ? chord : chord.Plus(Clef.Transposing(Key.Key)), false);
            return;
        }
        findings.Once(Severity.Note, spot, AbcMessages.DoubledChord, _bar);
    }

    public void Tie()
    {
        if (_last is { Pitch: not null } && _layer is null)
        {
            _last.Tie = true;
        }
    }

    /// <summary>Broken rhythm: the note before and the note after share their time unevenly.</summary>
    /// <param name="marks">How many marks stand together, 1 to 3.</param>
    /// <param name="longFirst">True for &gt;.</param>
    public void Break(AbcSpot spot, int marks, bool longFirst)
    {
        if (_layer is not null)
        {
            return;
        }
        if (_bar is not { Notes: [.., { IsBroken: false } before] })
        {
            findings.Warn(spot, AbcMessages.BrokenWithoutNote, _bar);
            return;
        }
        before.IsBroken = true;
        var small = new ScoreTime(1, 1L << marks);
        var large = new ScoreTime(2, 1) - small;
        before.Length = OnGrid(before.Length * (longFirst ? large : small), spot, _bar);
        _brokenNext = longFirst ? small : large;
    }

    /// <summary>The next <paramref name="notes"/> notes: <paramref name="of"/> in the time of <paramref name="inTime"/>.</summary>
    public void Tuplet(AbcSpot spot, int of, int inTime, int notes)
    {
        if (_layer is not null)
        {
            return;
        }
        if (_tuplet.Left > 0)
        {
            findings.Warn(spot, AbcMessages.TupletRunsOut, _bar);
        }
        _tuplet = (inTime, of, notes);
    }

    /// <summary>A second layer of the bar begins (&amp;): of one that holds only rests the chord symbols are read, any other
    /// is left out.</summary>
    public void BeginLayer()
    {
        CloseLayer();
        _layer = new AbcLayer();
    }

    /// <summary>An ending is over.</summary>
    public void EndEnding() => _ending = [];

    /// <summary>A bar line with what it says about repeats.</summary>
    public void BarLine(int repeatEnd, bool repeatStart, bool isDouble, bool isFinal)
    {
        CloseBar();
        if (Bars.Count > 0)
        {
            Bars[^1].RepeatEnd = Math.Max(Bars[^1].RepeatEnd, repeatEnd);
            Bars[^1].DoubleAfter |= isDouble;
            Bars[^1].FinalAfter |= isFinal;
        }
        _repeatStart |= repeatStart;
        if (repeatEnd > 0 || repeatStart || isDouble || isFinal)
        {
            _ending = [];
        }
    }

    /// <summary>An ending begins here; in the middle of a bar it splits it.</summary>
    public void Ending(AbcSpot spot, ValueList<int> numbers)
    {
        CloseBar();
        if (
            Bars is [.., { Ending.Count: > 0, RepeatEnd: 0 } before]
            && !_repeatStart
            && numbers.Count > 0
            && numbers.Min() > before.Ending.Max()
            && _ending.Count > 0
        )
        {
            before.RepeatEnd = 2;
            findings.Warn(spot, AbcMessages.EndingNotClosed);
        }
        _ending = numbers;
    }

    /// <summary>A part begins here; in the middle of a bar it splits it.</summary>
    public void Section(string label)
    {
        CloseBar();
        _ending = [];
        _section = label;
    }

    private void CloseLayer()
    {
        if (_layer is { HasNotes: false } && _bar is { Notes.Count: > 0 })
        {
            _bar.LayerChords.AddRange(_layer.Chords);
        }
        _layer = null;
    }

    public void CloseBar()
    {
        CloseLayer();
        if (_bar is { Notes.Count: > 0 })
        {
            Bars.Add(_bar);
            _full = Bars.Count >= AbcLimits.Bars;
        }
        _chordIsCarried = _chord is not null;
        _bar = null;
    }

    /// <summary>True once no more bars are taken in.</summary>
    public bool IsFull => _full;

    // What holds when the bar's first note comes; fields and marks may stand before it.
    private void SetMarks(AbcBar bar, AbcSpot spot)
    {
        bar.Spot = spot;
        bar.Metre = Metre;
        bar.Key = Key.Key.Plus(Clef.Transposing(Key.Key));
        if (Clef.Semitones != 0 && Clef != _toldClef)
        {
            findings.Add(Severity.Note, spot, AbcMessages.Transposing, bar);
            _toldClef = Clef;
        }
        bar.Ending = _ending;
        bar.RepeatStart = _repeatStart;
        bar.Section = _section;
        _repeatStart = false;
        _section = null;
    }

    private ScoreTime OnGrid(ScoreTime length, AbcSpot spot, AbcBar bar)
    {
        var fitted = Grid.Fit(length, out var rounded);
        if (rounded)
        {
            findings.Warn(spot, AbcMessages.RoundedLength, bar);
        }
        return ScoreTime.Max(fitted, CommonGrid.Smallest);
    }
}
