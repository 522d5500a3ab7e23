using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>One bar of one hand that is held as it is while the rest is worked again.</summary>
/// <param name="Bar">Place among the setting's bars, from 0.</param>
/// <param name="Strokes">What the hand strikes there, in time order; empty: it is silent.</param>
public sealed record KeptBar(int Bar, Hand Hand, ValueList<KeptStroke> Strokes)
{
    /// <summary>Notes of the tune that belong to this bar and are struck nowhere, by their place among all notes of the
    /// piece, from 0. Other notes of the bar that <see cref="Strokes"/> do not have are struck in a bar beside it.</summary>
    public ValueList<int> LeftOut { get; init; } = [];
}

/// <summary>Keys that the hand of a kept bar strikes together.</summary>
/// <param name="At">Place in the bar, from 0.</param>
/// <param name="Length">More than 0; may run over the bar line.</param>
/// <param name="Pitches">Lowest first, at least one.</param>
/// <param name="Role">What it is there for, such as <c>tune</c>, <c>fill</c>, <c>bass</c>, <c>chord</c>: one word.</param>
/// <param name="Rolled">Struck from the lowest key up, one after the other.</param>
/// <param name="Graces">Crushed notes before it.</param>
/// <param name="Voice">1 is the upper voice of its staff, 2 the lower.</param>
/// <param name="Tune">Place of the tune's note that it stands for among all notes of the piece, from 0; null: it stands
/// for none.</param>
public sealed record KeptStroke(
    ScoreTime At,
    ScoreTime Length,
    ValueList<Pitch> Pitches,
    string Role,
    bool Rolled,
    ValueList<Pitch> Graces,
    int Voice,
    int? Tune
);

/// <summary>Keys that are written into a bar.</summary>
/// <param name="At">Place in the bar, from 0.</param>
/// <param name="Length">More than 0; may run over the bar line.</param>
/// <param name="Pitches">Lowest first, at least one.</param>
/// <param name="Rolled">Struck from the lowest key up, one after the other.</param>
public sealed record WrittenStroke(ScoreTime At, ScoreTime Length, ValueList<Pitch> Pitches, bool Rolled)
{
    /// <summary>Reads one as an arrangement file has it: place and length such as <c>3/16</c>, keys such as <c>F#4</c>; null
    /// where it is none, has a key that no piano has or the same one twice.</summary>
    public static WrittenStroke? Read(string at, string length, IEnumerable<string> pitches, bool rolled)
    {
        ArgumentNullException.ThrowIfNull(pitches);
        var keys = pitches.Select(StrokeReader.Key).ToList();
        return
            StrokeReader.Span($"{at}+{length}") is var (from, time)
            && keys.Count is > 0 and <= StrokeReader.MostKeys
            && keys.TrueForAll(k => k is not null)
            && keys.DistinctBy(k => k!.Value.Midi).Count() == keys.Count
            ? new(from, time, keys.Select(k => k!.Value).Order().ToValueList(), rolled)
            : null;
    }
}
