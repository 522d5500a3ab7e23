namespace Stridewright.Music;

/// <summary>
/// The notes of a score and the order of its bars, whatever its staves, voices and spelling: what is needed to hear whether
/// it was played. Any piano score can be read as this, also one that is no <see cref="Score"/> of ours.
/// </summary>
public sealed record ScoreNotes
{
    public required string Title { get; init; }

    /// <summary>Bars as written.</summary>
    public required ValueList<NotesBar> Bars { get; init; }

    /// <summary>What is to be struck in a score of ours; the small staff above is not.</summary>
    public static ScoreNotes Of(Score score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return new() { Title = score.Title, Bars = score.Bars.Select(BarOf).ToValueList() };
    }

    private static NotesBar BarOf(ScoreBar bar) =>
        new()
        {
            Number = bar.Number,
            Implicit = bar.Implicit,
            Metre = bar.Metre,
            Length = bar.Length,
            Marks = bar.Marks,
            Directions = bar.Directions,
            Notes = bar
                .Voices.SelectMany(v => v.Events.SelectMany(e => NotesOf(v, e)))
                .OrderBy(n => n.At)
                .ThenByDescending(n => n.Grace)
                .ToValueList(),
        };

    private static IEnumerable<WrittenKey> NotesOf(ScoreVoice voice, ScoreEvent e)
    {
        var name = voice.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);
        foreach (var grace in e.Graces)
        {
            yield return new(e.At, ScoreTime.Zero, grace.Pitch.Midi, voice.Hand, name, grace.Id) { Grace = true };
        }
        foreach (var note in e.Notes)
        {
            yield return new(e.At, e.Length, note.Pitch.Midi, voice.Hand, name, note.Id)
            {
                TieStart = note.TieStart,
                TieStop = note.TieStop,
                Rolled = e.Rolled,
                Accent = e.Accent,
            };
        }
    }
}

/// <summary>Where a bar leads, beyond repeats and endings.</summary>
[Flags]
public enum Routes
{
    None = 0,

    /// <summary>The sign that <see cref="DalSegno"/> goes back to stands in it.</summary>
    Segno = 1,

    /// <summary>After it the music goes back to the beginning.</summary>
    DaCapo = 2,

    /// <summary>After it the music goes back to the sign.</summary>
    DalSegno = 4,

    /// <summary>The music ends with it once it has gone back.</summary>
    Fine = 8,

    /// <summary>After it the music goes to the coda once it has gone back.</summary>
    ToCoda = 16,

    /// <summary>The coda begins with it.</summary>
    Coda = 32,
}

/// <summary>One bar of <see cref="ScoreNotes"/>.</summary>
public sealed record NotesBar
{
    public required string Number { get; init; }

    public bool Implicit { get; init; }

    public required Metre Metre { get; init; }

    /// <summary>As long as what it holds.</summary>
    public required ScoreTime Length { get; init; }

    public BarMarks Marks { get; init; } = BarMarks.None;

    public Routes Routes { get; init; }

    public ValueList<Direction> Directions { get; init; } = [];

    /// <summary>By place; of those at one place in the order of the score, grace notes first.</summary>
    public ValueList<WrittenKey> Notes { get; init; } = [];
}

/// <summary>One note head of <see cref="ScoreNotes"/>.</summary>
/// <param name="At">Place in the bar; of a grace note that of the note it leads to.</param>
/// <param name="Length">Zero for a grace note.</param>
/// <param name="Key">MIDI note number.</param>
/// <param name="Id">Of the score; empty where it has none.</param>
public sealed record WrittenKey(ScoreTime At, ScoreTime Length, int Key, Hand Hand, string Voice, string Id)
{
    public bool Grace { get; init; }

    public bool TieStart { get; init; }

    public bool TieStop { get; init; }

    /// <summary>Part of a rolled chord.</summary>
    public bool Rolled { get; init; }

    public bool Accent { get; init; }

    /// <summary>A trill, turn, mordent or tremolo stands on it: more may be struck than is written.</summary>
    public bool Ornamented { get; init; }
}
