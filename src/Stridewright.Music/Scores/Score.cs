namespace Stridewright.Music;

/// <summary>The hand that plays; staff 1 is the right hand's, staff 2 the left's.</summary>
public enum Hand
{
    Right,
    Left,
}

/// <summary>A piano score as written: on two staves, or the left hand alone on one.</summary>
public sealed record Score
{
    public required string Title { get; init; }

    public string? Composer { get; init; }

    /// <summary>A line under the title, such as the level and feel.</summary>
    public string? Subtitle { get; init; }

    /// <summary>The left hand stands alone, on one staff in the bass clef; no bar has a voice of the right hand.</summary>
    public bool LeftHandOnly { get; init; }

    /// <summary>The right hand stands alone, on one staff in the treble clef; no bar has a voice of the left hand.</summary>
    public bool RightHandOnly { get; init; }

    public required ValueList<ScoreBar> Bars { get; init; }

    /// <summary>Notes that stand on a page after the music, the first one numbered 1; <see cref="Direction.Footnote"/>
    /// says where they belong.</summary>
    public ValueList<string> Footnotes { get; init; } = [];
}

/// <summary>One bar of a score.</summary>
public sealed record ScoreBar
{
    public required string Number { get; init; }

    /// <summary>Not counted: a pick-up or the second part of a bar split by a repeat.</summary>
    public bool Implicit { get; init; }

    public required Metre Metre { get; init; }

    public required Key Key { get; init; }

    public required ScoreTime Length { get; init; }

    public ValueList<PlacedChord> Chords { get; init; } = [];

    public ValueList<Direction> Directions { get; init; } = [];

    public BarMarks Marks { get; init; } = BarMarks.None;

    /// <summary>Voices, each filling the bar; right hand first.</summary>
    public ValueList<ScoreVoice> Voices { get; init; } = [];

    /// <summary>What the small staff above shows, filling the bar: read along, not played, and no part of either hand.
    /// Empty in every bar of a score without that staff.</summary>
    public ValueList<ScoreEvent> Above { get; init; } = [];

    /// <summary>Id of the bar, such as <c>b12</c>; empty in scores of others.</summary>
    public string Id { get; init; } = "";
}

/// <summary>One voice of one staff in one bar: events in time order that fill the bar without gap or overlap.</summary>
public sealed record ScoreVoice(Hand Hand, int Number, ValueList<ScoreEvent> Events);

/// <summary>A chord, a single note or a rest.</summary>
/// <param name="At">Place in the bar.</param>
/// <param name="Length">Sounding length.</param>
/// <param name="Value">Printed value.</param>
public sealed record ScoreEvent(ScoreTime At, ScoreTime Length, NoteValue Value)
{
    /// <summary>Notes, lowest first; empty for a rest.</summary>
    public ValueList<ScoreNote> Notes { get; init; } = [];

    /// <summary>A rest that is not printed.</summary>
    public bool Hidden { get; init; }

    /// <summary>A rest that fills the bar whatever its length.</summary>
    public bool WholeBarRest { get; init; }

    /// <summary>Played from the lowest note up, one after the other.</summary>
    public bool Rolled { get; init; }

    public bool Staccato { get; init; }

    public bool Accent { get; init; }

    /// <summary>Crushed notes before it.</summary>
    public ValueList<ScoreNote> Graces { get; init; } = [];

    /// <summary>Beam state per level, eighth beam first.</summary>
    public ValueList<BeamState> Beams { get; init; } = [];

    public ValueList<Lyric> Lyrics { get; init; } = [];
}

/// <summary>One note head.</summary>
public sealed record ScoreNote(Pitch Pitch, string Id = "")
{
    public bool TieStart { get; init; }

    public bool TieStop { get; init; }

    /// <summary>Finger 1 (thumb) to 5; null: not printed.</summary>
    public int? Finger { get; init; }

    /// <summary>Finger that takes over while the note is held; null: none does, or none is printed.</summary>
    public int? NextFinger { get; init; }
}

/// <summary>What a beam does at a note.</summary>
public enum BeamState
{
    Begin,
    Continue,
    End,
    ForwardHook,
    BackwardHook,
}

/// <summary>A printed value: a power-of-two part of a whole note (1 whole, 4 quarter, …; 0 breve), dots, and a
/// tuplet's ratio where there is one.</summary>
public readonly record struct NoteValue(int Part, int Dots = 0, int Actual = 1, int Normal = 1)
{
    public ScoreTime Length
    {
        get
        {
            var plain = Part == 0 ? new ScoreTime(2, 1) : new ScoreTime(1, Part);
            var dotted = plain * new ScoreTime((2L << Dots) - 1, 1L << Dots);
            return dotted * new ScoreTime(Normal, Actual);
        }
    }
}

/// <summary>Words or a tempo above or below the staves.</summary>
/// <param name="At">Place in the bar.</param>
public sealed record Direction(ScoreTime At)
{
    public string? Words { get; init; }

    /// <summary>Beats per minute of <see cref="BeatUnit"/>; null: no tempo here.</summary>
    public double? BeatsPerMinute { get; init; }

    /// <summary>The beat that the tempo counts.</summary>
    public NoteValue BeatUnit { get; init; } = new(4);

    /// <summary>Name of the section that begins here, such as <c>A</c>; null: none.</summary>
    public string? Section { get; init; }

    /// <summary>Dynamic such as <c>mf</c>.</summary>
    public string? Dynamic { get; init; }

    /// <summary>The sustain pedal goes down (true) or up; null: it stays.</summary>
    public bool? Pedal { get; init; }

    /// <summary>Numbers of the footnotes that belong here, such as <c>3</c> or <c>3, 4</c>, printed small under the
    /// staves; null: none.</summary>
    public string? Footnote { get; init; }

    /// <summary>Swung pairs: long to short as <c>5:3</c>; null: nothing said; 1:1 straight.</summary>
    public (int Long, int Short)? Swing { get; init; }

    /// <summary>Tempo in quarter notes per minute, where one is given.</summary>
    public double? QuartersPerMinute => BeatsPerMinute * BeatUnit.Length.ToQuarters();
}
