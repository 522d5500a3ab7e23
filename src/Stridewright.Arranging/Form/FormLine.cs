using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A form in one line: parts with spaces between them, as in <c>intro A A(octaves,ff) B* trio:C(high) tag end</c>. A
/// strain is a capital letter, the tune's sections in their order; a star after it repeats it as written. In brackets
/// stands how a part is played (docs/forms.md).
/// </summary>
public sealed record FormLine(ValueList<FormPart> Parts)
{
    /// <summary>Most parts of a line.</summary>
    public const int MostParts = 64;

    /// <summary>The word for <see cref="Usual"/>.</summary>
    public const string UsualWord = "usual";

    /// <summary>A form that the arranger chooses, by the tune's sections and the level.</summary>
    public static FormLine Usual { get; } = new([]);

    /// <summary>The form is still to be chosen.</summary>
    public bool IsUsual => Parts.Count == 0;

    /// <summary>Reads a line. Null with a fault that names the place, counted in characters from 1.</summary>
    public static FormLine? Read(string text, out string? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        fault = null;
        return text.Trim() == UsualWord ? Usual : new FormReader(text).Read(out fault);
    }

    /// <summary>The line that reads as this form.</summary>
    public override string ToString() => IsUsual ? UsualWord : string.Join(' ', Parts);
}
