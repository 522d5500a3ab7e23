using System.Globalization;
using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Printed values: from a note's <c>type</c>, and for lengths that carry none.</summary>
internal static class NoteValues
{
    /// <summary>The value that an element prints (type, dots, time-modification); null when it names none.</summary>
    public static NoteValue? Read(Element note)
    {
        if (PartOf(note.TextOf("type")) is not { } part)
        {
            return null;
        }
        var dots = Math.Min(note.All("dot").Count(), 4);
        var ratio = note.Child("time-modification");
        return Count(ratio?.TextOf("actual-notes")) is { } actual && Count(ratio?.TextOf("normal-notes")) is { } normal
            ? new NoteValue(part, dots, actual, normal)
            : new NoteValue(part, dots);
    }

    /// <summary>The part of a whole note of a type such as <c>16th</c>; null for one that is not known.</summary>
    public static int? PartOf(string? type) =>
        type switch
        {
            "breve" => 0,
            "whole" => 1,
            "half" => 2,
            "quarter" => 4,
            "eighth" => 8,
            "16th" => 16,
            "32nd" => 32,
            "64th" => 64,
            "128th" => 128,
            "256th" => 256,
            "512th" => 512,
            "1024th" => 1024,
            _ => null,
        };

    /// <summary>
    /// Values that together make up a length, longest first. A divisor that is no power of two becomes a tuplet's ratio.
    /// </summary>
    public static IEnumerable<NoteValue> Filling(ScoreTime length)
    {
        var actual = length.Denominator >> BitOperations.TrailingZeroCount(length.Denominator);
        var normal = actual == 1 ? 1L : (long)(BitOperations.RoundUpToPowerOf2((ulong)actual) / 2);
        var left = length * actual / normal; // now made of halves of halves
        for (var part = 1; part <= 1024 && !left.IsZero; part *= 2)
        {
            var piece = new ScoreTime(1, part);
            while (left >= piece)
            {
                left -= piece;
                yield return new NoteValue(part, 0, (int)actual, (int)normal);
            }
        }
        if (!left.IsZero)
        {
            yield return new NoteValue(1024, 0, (int)actual, (int)normal);
        }
    }

    /// <summary>The one value nearest to a length: exact where dots or a ratio can express it.</summary>
    public static NoteValue Nearest(ScoreTime length)
    {
        var first = Filling(length).FirstOrDefault(new NoteValue(4));
        for (var dots = 0; dots <= 3; dots++)
        {
            var dotted = first with { Dots = dots };
            if (dotted.Length == length)
            {
                return dotted;
            }
        }
        return first;
    }

    private static int? Count(string? text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is >= 1 and <= 128
            ? count
            : null;
}
