using System.Globalization;

namespace Stridewright.Music;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Something was understood in a way worth telling.</summary>
    Note,

    /// <summary>Something was repaired or left out; the rest stands.</summary>
    Warning,

    /// <summary>What was asked for cannot be had.</summary>
    Error,
}

/// <summary>Where in a source a finding lies; any part may be unknown. Lines and columns count from 1, bytes from 0.</summary>
public readonly record struct Place(
    int? Line = null,
    int? Column = null,
    string? Bar = null,
    long? Byte = null,
    long? Tick = null,
    string? Entry = null
)
{
    public static readonly Place Whole;

    public static Place AtLine(int line, int? column = null) => new(line, column);

    public static Place AtBar(string bar) => new(Bar: bar);

    /// <summary>Text such as <c>line 4, column 12, bar 3</c>; empty when nothing is known.</summary>
    public override string ToString()
    {
        var parts = new List<string>();
        void Add(string word, IFormattable? value)
        {
            if (value is not null)
            {
                parts.Add(word + " " + value.ToString(null, CultureInfo.InvariantCulture));
            }
        }
        if (Entry is not null)
        {
            parts.Add(Entry);
        }
        Add("line", Line);
        Add("column", Column);
        if (Bar is not null)
        {
            parts.Add("bar " + Bar);
        }
        Add("byte", Byte);
        Add("tick", Tick);
        return string.Join(", ", parts);
    }
}

/// <summary>One finding about an input or a result: how bad, where, and what it is and what to do, in a sentence.</summary>
public sealed record Diagnostic(Severity Severity, Place Place, string Message)
{
    public override string ToString() => Place.ToString() is { Length: > 0 } place ? $"{place}: {Message}" : Message;
}

/// <summary>What a reader understood, with its findings. <see cref="Value"/> is null when nothing usable was found;
/// then at least one finding is an error.</summary>
public sealed record Reading<T>(T? Value, ValueList<Diagnostic> Diagnostics)
    where T : class;
