using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>A note or rest of a part as written, one per note head.</summary>
internal sealed record WrittenNote
{
    public required Place Place { get; init; }

    public required ScoreTime At { get; init; }

    /// <summary>Zero for a grace note.</summary>
    public required ScoreTime Length { get; init; }

    /// <summary>Sounding pitch; null for a rest.</summary>
    public Pitch? Pitch { get; init; }

    public bool Grace { get; init; }

    /// <summary>Struck with the note before it.</summary>
    public bool InChord { get; init; }

    public required string Voice { get; init; }

    public required int Staff { get; init; }

    public bool TieStart { get; init; }

    public bool TieStop { get; init; }

    public NoteValue? Value { get; init; }

    public bool Hidden { get; init; }

    /// <summary>A rest for the bar, whatever its length.</summary>
    public bool WholeBar { get; init; }

    public bool Rolled { get; init; }

    public bool Staccato { get; init; }

    /// <summary>A trill, turn, mordent or tremolo stands on it.</summary>
    public bool Ornamented { get; init; }

    public bool Accent { get; init; }

    public int? Finger { get; init; }

    public int? NextFinger { get; init; }

    public ValueList<BeamState> Beams { get; init; } = [];

    public ValueList<Lyric> Lyrics { get; init; } = [];

    public string Id { get; init; } = "";

    public ScoreTime End => At + Length;

    /// <summary>A struck note with a length of its own.</summary>
    public bool Sounds => Pitch is not null && !Grace;
}

/// <summary>A chord symbol as written, before it is placed inside its bar.</summary>
internal sealed record WrittenChord(Place Place, ScoreTime At, ChordSymbol Chord);

/// <summary>One bar of a part while it is read.</summary>
internal sealed class WrittenBar
{
    public required Place Place { get; init; }

    public required string Number { get; init; }

    public bool Implicit { get; init; }

    public string Id { get; init; } = "";

    /// <summary>Null until a time signature was given, and without one (senza misura).</summary>
    public Metre? Metre { get; set; }

    public bool SenzaMisura { get; set; }

    /// <summary>Null until a key signature was given.</summary>
    public Key? Key { get; set; }

    /// <summary>How far notes, rests and forward moves reach.</summary>
    public ScoreTime Extent { get; set; }

    /// <summary>Settled by <see cref="BarFitting"/>.</summary>
    public ScoreTime Length { get; set; }

    public List<WrittenNote> Notes { get; } = [];

    public List<WrittenChord> Chords { get; } = [];

    public List<Direction> Directions { get; } = [];

    public string? Section { get; set; }

    public Routes Routes { get; set; }

    public bool RepeatStart { get; set; }

    public int RepeatEnd { get; set; }

    public ValueList<int> Ending { get; set; } = [];

    public bool DoubleBarAfter { get; set; }

    public bool FinalBarAfter { get; set; }

    /// <summary>Takes over the repeats and endings of the same bar in another part.</summary>
    public void TakeForm(WrittenBar other) =>
        (RepeatStart, RepeatEnd, Ending, DoubleBarAfter, FinalBarAfter) = (
            other.RepeatStart,
            other.RepeatEnd,
            other.Ending,
            DoubleBarAfter || other.DoubleBarAfter,
            FinalBarAfter || other.FinalBarAfter
        );

    public BarMarks Marks =>
        !RepeatStart && RepeatEnd == 0 && Ending.Count == 0 && !DoubleBarAfter && !FinalBarAfter
            ? BarMarks.None
            : new BarMarks
            {
                RepeatStart = RepeatStart,
                RepeatEnd = RepeatEnd,
                Ending = Ending,
                DoubleBarAfter = DoubleBarAfter,
                FinalBarAfter = FinalBarAfter,
            };
}
