using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Where in a piece a figure belongs.</summary>
public enum FigureKind
{
    /// <summary>The last bars before the first strain, where a form has an introduction.</summary>
    Introduction,

    /// <summary>A gap that the tune leaves; the tune is struck as it was.</summary>
    Fill,

    /// <summary>The end of a phrase, where the same step of the harmony follows.</summary>
    Run,

    /// <summary>The last bars of the piece.</summary>
    Ending,
}

/// <summary>A few bars of one hand worth keeping, stored relative to the chords they stood over.</summary>
/// <param name="Strokes">In time order; <see cref="OwnFigureStroke.Bar"/> counts from 0.</param>
public sealed record OwnFigure(Hand Hand, int Bars, ValueList<OwnFigureStroke> Strokes)
{
    /// <summary>Most bars of a figure.</summary>
    public const int MostBars = 8;

    /// <summary>Null: it stands where it is put.</summary>
    public FigureKind? Kind { get; init; }

    /// <summary>Length of the bars that it was taken from; null: not known, it may stand in any.</summary>
    public ScoreTime? BarLength { get; init; }

    /// <summary>Semitones, 0 to 11, from the root of its last chord up to the root that followed; null: none did.</summary>
    public int? LeadsBy { get; init; }
}

/// <summary>Keys struck together in a figure.</summary>
/// <param name="Tones">Above the root of the chord there, lowest first.</param>
public sealed record OwnFigureStroke(
    int Bar,
    ScoreTime At,
    ScoreTime Length,
    ValueList<FigureTone> Tones,
    string Role,
    bool Rolled,
    int Voice
);

/// <summary>A tone as it lies from its chord's root, the root in the hand's own octave (C2 to B2 for the left hand, C5 to B5
/// for the right).</summary>
/// <param name="Steps">Letters up from the root; below zero: down.</param>
/// <param name="Passing">Null: the chord's own tone, whatever its kind makes of it; else the semitones from the root.</param>
public readonly record struct FigureTone(int Steps, int? Passing)
{
    private static readonly int[] MajorScale = [0, 2, 4, 5, 7, 9, 11];

    /// <summary>The tone of a pitch over a chord.</summary>
    public static FigureTone Of(Pitch pitch, ChordSymbol chord, Hand hand)
    {
        var interval = Interval.Between(Root(chord, hand), pitch);
        var inOctave = new Interval(Modulo(interval.Steps, 7), interval.Semitones - 12 * Octaves(interval.Steps));
        return new(interval.Steps, chord.Intervals.Contains(inOctave) ? null : interval.Semitones);
    }

    /// <summary>The pitch over another chord: its own third for a third, and so on.</summary>
    public Pitch Over(ChordSymbol chord, Hand hand)
    {
        var (steps, octaves) = (Modulo(Steps, 7), Octaves(Steps));
        var semitones = MajorScale[steps];
        foreach (var interval in chord.Intervals)
        {
            semitones = interval.Steps == steps ? interval.Semitones : semitones;
        }
        return Root(chord, hand).Plus(new Interval(Steps, Passing ?? semitones + 12 * octaves));
    }

    /// <summary>Such as <c>1</c>, <c>5</c>, <c>10</c> of the chord, <c>~b9</c> or <c>~#4</c> beside it, <c>-5</c> below the
    /// root: a fifth down.</summary>
    public override string ToString()
    {
        var number = Steps >= 0 ? Steps + 1 : Steps - 1;
        var alter = Passing is { } semitones ? semitones - (MajorScale[Modulo(Steps, 7)] + 12 * Octaves(Steps)) : 0;
        var sign = new string(alter < 0 ? 'b' : '#', Math.Abs(alter));
        return FormattableString.Invariant($"{(Passing is null ? "" : "~")}{sign}{number}");
    }

    /// <summary>Reads what <see cref="ToString"/> writes; null where a text is no tone.</summary>
    public static FigureTone? Read(string text)
    {
        var rest = text.AsSpan();
        var passing = rest.StartsWith("~");
        rest = passing ? rest[1..] : rest;
        var alter = 0;
        while (passing && rest.Length > 0 && rest[0] is 'b' or '#')
        {
            alter += rest[0] == 'b' ? -1 : 1;
            rest = rest[1..];
        }
        if (
            !int.TryParse(
                rest,
                System.Globalization.NumberStyles.AllowLeadingSign,
                System.Globalization.CultureInfo.InvariantCulture,
                out var number
            )
            || number is 0 or < -40 or > 40
            || Math.Abs(alter) > 3
        )
        {
            return null;
        }
        var steps = number > 0 ? number - 1 : number + 1;
        return new(steps, passing ? MajorScale[Modulo(steps, 7)] + 12 * Octaves(steps) + alter : null);
    }

    private static Pitch Root(ChordSymbol chord, Hand hand)
    {
        var tone = chord.Root;
        var octave = hand == Hand.Left ? 2 : 5;
        return Pitch.At(12 * (octave + 1) + tone.PitchClass, tone);
    }

    private static int Octaves(int steps) => (steps - Modulo(steps, 7)) / 7;

    private static int Modulo(int value, int by) => (value % by + by) % by;
}
