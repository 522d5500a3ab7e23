namespace Stridewright.Formats.Abc;

/// <summary>One line of source without its comment. A blank line has no text; a line of comment only is not kept.</summary>
internal sealed record AbcLine(int Number, string Text)
{
    /// <summary>The letter of a field such as <c>K:G</c>; null for anything else.</summary>
    public char? Field =>
        Text.Length > 1 && Text[1] == ':' && char.IsAsciiLetter(Text[0]) && !IsBarAfterNote ? Text[0] : null;

    public string FieldText => Text[2..].Trim();

    public bool IsBlank => Text.Length == 0;

    /// <summary>True when the line has something of a bar line in it.</summary>
    public bool LooksLikeMusic => Field is null && Text.Contains('|', StringComparison.Ordinal);

    // A line of music such as "A:| ..." or "z::..." is no field.
    private bool IsBarAfterNote =>
        Text.Length > 2 && "ABCDEFGabcdefgxz".Contains(Text[0], StringComparison.Ordinal) && Text[2] is '|' or ':';

    /// <summary>
    /// Splits text at any kind of line end (LF, CR LF, CR); drops comments, directives and blocks of typeset text;
    /// joins continued fields (<c>+:</c>) to theirs.
    /// </summary>
    public static List<AbcLine> Split(string text)
    {
        var raw = text.TrimStart('\uFEFF').Split(["\r\n", "\n", "\r"], StringSplitOptions.None);
        var blockEnd = -1;
        var lines = new List<AbcLine>(raw.Length);
        var lastBlockEnd = Array.FindLastIndex(raw, l => l.StartsWith("%%end", StringComparison.Ordinal));
        for (var i = 0; i < raw.Length; i++)
        {
            if (raw[i].StartsWith("%%begin", StringComparison.Ordinal) && i > blockEnd && i < lastBlockEnd)
            {
                blockEnd = Array.FindIndex(raw, i, l => l.StartsWith("%%end", StringComparison.Ordinal));
            }
            // An instruction may stand as a directive (ABC 2.1, 11): %%name value is I:name value.
            var source =
                raw[i].StartsWith("%%propagate-", StringComparison.Ordinal)
                || raw[i].StartsWith("%%" + AbcDirectives.Prefix, StringComparison.Ordinal)
                    ? "I:" + raw[i][2..]
                    : raw[i];
            var line = WithoutComment(source).TrimEnd();
            if (i <= blockEnd || (line.Length == 0 && raw[i].Contains('%', StringComparison.Ordinal)))
            {
                continue;
            }
            if (line.StartsWith("+:", StringComparison.Ordinal) && lines.Count > 0 && lines[^1].Field is not null)
            {
                if (lines[^1].Text.Length > AbcLimits.FieldLength)
                {
                    continue;
                }
                lines[^1] = lines[^1] with { Text = lines[^1].Text.TrimEnd('\\') + " " + line[2..].Trim() };
                continue;
            }
            lines.Add(new AbcLine(i + 1, line));
        }
        return lines;
    }

    // A % begins a comment unless it is escaped (\%).
    private static string WithoutComment(string line)
    {
        for (var at = line.IndexOf('%', StringComparison.Ordinal); at >= 0; at = line.IndexOf('%', at + 1))
        {
            if (at == 0 || line[at - 1] != '\\')
            {
                return line[..at];
            }
        }
        return line;
    }
}
