using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads a form's line, from left to right up to the first fault.</summary>
internal sealed class FormReader(string text)
{
    /// <summary>Begins the word for a part's raggedness, as in <c>rag:0.8</c>.</summary>
    public const string Rag = "rag:";

    private static readonly string[] Dynamics = ["pp", "p", "mp", "mf", "f", "ff"];
    private string? _fault;
    private int _at;

    /// <summary>Null with a fault that names the place.</summary>
    public FormLine? Read(out string? fault)
    {
        var parts = new List<FormPart>();
        while (_fault is null && SkipSpace())
        {
            if (Part() is { } part)
            {
                parts.Add(part);
                if (parts.Count > FormLine.MostParts)
                {
                    Fault(FormMessages.TooMany(FormLine.MostParts, part.Place));
                }
            }
        }
        if (!parts.Any(p => p.HasLetter))
        {
            Fault(FormMessages.NoStrain);
        }
        fault = _fault;
        return fault is null ? new FormLine(parts.ToValueList()) : null;
    }

    private bool SkipSpace()
    {
        while (_at < text.Length && char.IsWhiteSpace(text[_at]))
        {
            _at++;
        }
        return _at < text.Length;
    }

    private FormPart? Part()
    {
        var start = _at;
        while (_at < text.Length && !char.IsWhiteSpace(text[_at]) && text[_at] != '(')
        {
            _at++;
        }
        var name = text[start.._at];
        if (Named(name, start + 1) is not { } part)
        {
            return Fault(FormMessages.NoPart(name, start + 1));
        }
        if (_at == text.Length || text[_at] != '(')
        {
            return part;
        }
        var open = _at + 1;
        var close = text.IndexOf(')', open);
        if (close < 0)
        {
            return Fault(FormMessages.NotClosed(open));
        }
        _at = close + 1;
        if (_at < text.Length && !char.IsWhiteSpace(text[_at]))
        {
            return Fault(FormMessages.NotApart(_at + 1));
        }
        foreach (var given in text[open..close].Split(','))
        {
            var word = given.Trim();
            var place = open + given.Length - given.TrimStart().Length + 1;
            if (Treated(part, word) is not { } treated)
            {
                return Fault(FormMessages.NoManner(word, place));
            }
            if (!Fits(treated))
            {
                return Fault(FormMessages.NotHere(word, place));
            }
            part = treated;
            open += given.Length + 1;
        }
        return part;
    }

    private static FormPart? Named(string name, int place)
    {
        var repeated = name.Length > 1 && name[^1] == '*';
        var part = (repeated ? name[..^1] : name) switch
        {
            "intro" => new(PartKind.Intro, place),
            "vamp" => new(PartKind.Vamp, place),
            "tag" => new(PartKind.Tag, place),
            "end" => new(PartKind.End, place),
            [>= 'A' and <= 'Z' and var letter] => new(PartKind.Strain, place, letter),
            ['t', 'r', 'i', 'o', ':', >= 'A' and <= 'Z' and var letter] => new(PartKind.Trio, place, letter),
            ['h', 'a', 'l', 'f', ':', >= 'A' and <= 'Z' and var letter] => new(PartKind.Half, place, letter),
            _ => (FormPart?)null,
        };
        return !repeated ? part
            : part?.Kind is PartKind.Strain or PartKind.Trio ? part with { Repeated = true }
            : null;
    }

    // Null for a word that says nothing here.
    private static FormPart? Treated(FormPart part, string word)
    {
        var treatment = part.Treatment;
        var withLevel = word.EndsWith('?');
        var manner = withLevel ? word[..^1] : word;
        if (Manners.Left.TryGetValue(manner, out var left))
        {
            return part with { Treatment = treatment with { Left = left }, LeftWithLevel = withLevel };
        }
        if (Manners.Right.TryGetValue(manner, out var right))
        {
            return part with { Treatment = treatment with { Right = right }, RightWithLevel = withLevel };
        }
        if (word.StartsWith(Rag, StringComparison.Ordinal))
        {
            var isShare = double.TryParse(
                word.AsSpan(Rag.Length),
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out var share
            );
            return isShare && share <= 1 ? part with { Treatment = treatment with { Raggedness = share } } : null;
        }
        return word switch
        {
            "high" => part with { Treatment = treatment with { Lift = 1 } },
            "thin" => part with { Treatment = treatment with { Fullness = -1 } },
            "thick" => part with { Treatment = treatment with { Fullness = 1 } },
            "pedal" => part with { Treatment = treatment with { Pedal = true } },
            "breaks" => part with { Breaks = true },
            "run" => part with { Run = true },
            "turnaround" => part with { Turnaround = true },
            "segue" => part with { Segue = true },
            _ when Dynamics.Contains(word) => part with { Treatment = treatment with { Dynamic = word } },
            _ => null,
        };
    }

    private static bool Fits(FormPart part) =>
        (!part.Run || part.Kind == PartKind.Intro) && (!(part.Turnaround || part.Segue) || part.HasLetter);

    private FormPart? Fault(string message)
    {
        _fault ??= message;
        return null;
    }
}
