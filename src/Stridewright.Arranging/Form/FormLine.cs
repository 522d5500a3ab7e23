using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a part of a form is made of.</summary>
public enum PartKind
{
    /// <summary>Four bars before the tune: its own last phrase.</summary>
    Intro,

    /// <summary>Two bars of tonic and dominant, repeated till ready.</summary>
    Vamp,

    /// <summary>One of the tune's sections.</summary>
    Strain,

    /// <summary>A section in the subdominant.</summary>
    Trio,

    /// <summary>The last two bars once more.</summary>
    Tag,

    /// <summary>A closing bar on the tonic.</summary>
    End,
}

/// <summary>One part of a form.</summary>
/// <param name="Letter">Of the section, <c>A</c> to <c>Z</c>; unused where <paramref name="Kind"/> has none.</param>
/// <param name="Place">Where the part begins in its line, from 1.</param>
public sealed record FormPart(PartKind Kind, int Place, char Letter = ' ')
{
    public Treatment Treatment { get; init; } = Treatment.Usual;

    /// <summary>The left hand rests in the last two bars of every eight.</summary>
    public bool Breaks { get; init; }
}

/// <summary>
/// A form in one line: parts with spaces between them, as in <c>intro A A(octaves,ff) B trio:C(high) tag end</c>. A
/// strain is a capital letter, the tune's sections in their order. In brackets stands how a part is played: a manner of
/// either hand, <c>breaks</c>, <c>high</c>, a dynamic from <c>pp</c> to <c>ff</c>.
/// </summary>
public sealed record FormLine(ValueList<FormPart> Parts)
{
    /// <summary>Most parts of a line.</summary>
    public const int MostParts = 64;

    private const string High = "high",
        WithBreaks = "breaks";

    private static readonly string[] Dynamics = ["pp", "p", "mp", "mf", "f", "ff"];

    /// <summary>Reads a line. Null with a fault that names the place, counted in characters from 1.</summary>
    public static FormLine? Read(string text, out string? fault)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = new List<FormPart>();
        fault = null;
        for (var at = 0; at < text.Length && fault is null; )
        {
            if (char.IsWhiteSpace(text[at]))
            {
                at++;
                continue;
            }
            var start = at;
            while (at < text.Length && !char.IsWhiteSpace(text[at]) && text[at] != '(')
            {
                at++;
            }
            var name = text[start..at];
            if (Part(name, start + 1) is not { } part)
            {
                fault = FormMessages.NoPart(name, start + 1);
                break;
            }
            if (at < text.Length && text[at] == '(')
            {
                var close = text.IndexOf(')', at);
                if (close < 0)
                {
                    fault = FormMessages.NotClosed(at + 1);
                    break;
                }
                part = Treated(part, text, at + 1, close, out fault);
                at = close + 1;
            }
            parts.Add(part);
            if (parts.Count > MostParts)
            {
                fault ??= FormMessages.TooMany(MostParts, start + 1);
            }
        }
        fault ??= parts.Any(p => p.Kind is PartKind.Strain or PartKind.Trio) ? null : FormMessages.NoStrain;
        return fault is null ? new FormLine(parts.ToValueList()) : null;
    }

    /// <summary>The line as it is read, with single spaces between its parts.</summary>
    public override string ToString() => string.Join(' ', Parts.Select(Text));

    private static string Text(FormPart part)
    {
        var name = part.Kind switch
        {
            PartKind.Strain => part.Letter.ToString(),
            PartKind.Trio => $"trio:{part.Letter}",
            _ => Words.Of(part.Kind),
        };
        var usual = Treatment.Usual;
        var manners = new List<string>();
        if (part.Treatment.Left != usual.Left)
        {
            manners.Add(Manners.Left.WordOf(part.Treatment.Left));
        }
        if (part.Treatment.Right != usual.Right)
        {
            manners.Add(Manners.Right.WordOf(part.Treatment.Right));
        }
        if (part.Treatment.Dynamic is { } dynamic)
        {
            manners.Add(dynamic);
        }
        if (part.Treatment.Lift > 0)
        {
            manners.Add(High);
        }
        if (part.Breaks)
        {
            manners.Add(WithBreaks);
        }
        return manners.Count == 0 ? name : $"{name}({string.Join(',', manners)})";
    }

    private static FormPart? Part(string name, int place) =>
        name switch
        {
            "intro" => new(PartKind.Intro, place),
            "vamp" => new(PartKind.Vamp, place),
            "tag" => new(PartKind.Tag, place),
            "end" => new(PartKind.End, place),
            [>= 'A' and <= 'Z' and var letter] => new(PartKind.Strain, place, letter),
            ['t', 'r', 'i', 'o', ':', >= 'A' and <= 'Z' and var letter] => new(PartKind.Trio, place, letter),
            _ => null,
        };

    private static FormPart Treated(FormPart part, string text, int from, int to, out string? fault)
    {
        fault = null;
        var at = from;
        foreach (var given in text[from..to].Split(','))
        {
            var word = given.Trim();
            var treatment = part.Treatment;
            if (Manners.Left.TryGetValue(word, out var left))
            {
                part = part with { Treatment = treatment with { Left = left } };
            }
            else if (Manners.Right.TryGetValue(word, out var right))
            {
                part = part with { Treatment = treatment with { Right = right } };
            }
            else if (Dynamics.Contains(word))
            {
                part = part with { Treatment = treatment with { Dynamic = word } };
            }
            else if (word == High)
            {
                part = part with { Treatment = treatment with { Lift = 1 } };
            }
            else if (word == WithBreaks)
            {
                part = part with { Breaks = true };
            }
            else
            {
                fault ??= FormMessages.NoManner(word, at + 1);
            }
            at += given.Length + 1;
        }
        return part;
    }
}
