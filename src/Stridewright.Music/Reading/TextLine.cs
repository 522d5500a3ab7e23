using System.Globalization;

namespace Stridewright.Music;

/// <summary>A line of a text file of ours without the spaces around it.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Column">Of its first character, from 1.</param>
public readonly record struct TextLine(int Number, int Column, string Text)
{
    public static TextLine Of(string text, int number)
    {
        ArgumentNullException.ThrowIfNull(text);
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

    /// <summary>The number behind a file's first words, such as 1 in <c>stridewright arrangement 1</c>; null: the line is
    /// none such.</summary>
    public int? VersionBehind(string firstWords)
    {
        ArgumentNullException.ThrowIfNull(firstWords);
        var version = Text.StartsWith(firstWords + " ", StringComparison.Ordinal)
            ? Text[firstWords.Length..].Trim()
            : "";
        return version.Length is > 0 and <= 9 && version.All(char.IsAsciiDigit)
            ? int.Parse(version, CultureInfo.InvariantCulture)
            : null;
    }
}

/// <summary>The faults of a text file, of which the first ones tell enough.</summary>
public sealed class TextFaults
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

/// <summary>Text of others inside a sentence of ours.</summary>
public static class Quoted
{
    /// <summary>The text in one line and at no great length.</summary>
    public static string Short(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        const int most = 40;
        var clean = string.Concat(text.Take(most).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
        return text.Length > most ? clean + "…" : clean;
    }
}
