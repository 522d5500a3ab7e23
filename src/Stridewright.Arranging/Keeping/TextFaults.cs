using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A line of an arrangement file without the spaces around it.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Column">Of its first character, from 1.</param>
internal readonly record struct TextLine(int Number, int Column, string Text)
{
    public static TextLine Of(string text, int number)
    {
        var trimmed = text.Trim();
        return new(number, text.IndexOf(trimmed, StringComparison.Ordinal) + 1, trimmed);
    }

    /// <summary>The first word, and what stands behind it with its column.</summary>
    public (string Word, TextLine Behind) Split()
    {
        var end = 0;
        while (end < Text.Length && !char.IsWhiteSpace(Text[end]))
        {
            end++;
        }
        var rest = Of(Text[end..], Number);
        return (Text[..end], rest with { Column = Column + end + rest.Column - 1 });
    }
}

/// <summary>The faults of a file, of which the first ones tell enough.</summary>
internal sealed class TextFaults
{
    private const int Most = 20;
    private readonly List<Diagnostic> _found = [];

    public bool Any => _found.Count > 0;

    public ValueList<Diagnostic> ToValueList() => _found.ToValueList();

    public void Add(TextLine at, string message)
    {
        if (_found.Count < Most)
        {
            _found.Add(new Diagnostic(Severity.Error, Place.AtLine(at.Number, at.Column), message));
        }
    }
}
