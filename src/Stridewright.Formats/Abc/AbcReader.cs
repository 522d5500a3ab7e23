using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Reads tunes in ABC notation. Source: the ABC music standard 2.1 (December 2011), with the older and looser ways of
/// writing that real tune books hold. Whatever the input, there is a result with findings and no exception, and time
/// and memory are bounded by the size of the input, which is limited.
/// </summary>
public static class AbcReader
{
    /// <summary>
    /// Reads every tune of a book. Each finding names its line and column, and the bar where there is one. The value is
    /// null, with an error, when there is no tune at all. Tunes are read at sounding pitch. Of several voices it is the one
    /// that is called like a tune (voice, melody, lead …), else the first with words, else the first with chord symbols,
    /// else the first with notes, percussion aside; of notes together the top one. Ornaments are left out.
    /// </summary>
    /// <param name="part">Another voice, by its name (<c>name=</c>), subname, id or number from 1; a tune without it is
    /// left out with an error.</param>
    public static Reading<ValueList<Tune>> Read(TextReader source, string? part = null)
    {
        ArgumentNullException.ThrowIfNull(source);
        var findings = new AbcFindings();
        var text = ReadAll(source);
        if (text is null)
        {
            findings.Add(Severity.Error, default, AbcMessages.TooLarge(AbcLimits.Size >> 20));
            return new(null, findings.ToDiagnostics());
        }
        var tunes = ReadTunes(AbcLine.Split(text), part, findings);
        if (tunes.Count == 0)
        {
            findings.FailLeftOut();
            if (!findings.HasError)
            {
                findings.AddFirst(Severity.Error, AbcMessages.NoTune);
            }
        }
        return new(tunes.Count == 0 ? null : tunes.ToValueList(), findings.ToDiagnostics());
    }

    /// <summary>
    /// Text of a stream: UTF-8, or UTF-16 where a byte order mark says so; else Latin-1, with a note. The value is null,
    /// with an error, when the stream holds more than 16 MB.
    /// </summary>
    public static Reading<string> Decode(Stream source)
    {
        ArgumentNullException.ThrowIfNull(source);
        using var bytes = new MemoryStream();
        var buffer = new byte[81920];
        for (var count = source.Read(buffer); count > 0; count = source.Read(buffer))
        {
            bytes.Write(buffer, 0, count);
            if (bytes.Length > AbcLimits.Size)
            {
                return new(null, [new(Severity.Error, Place.Whole, AbcMessages.TooLarge(AbcLimits.Size >> 20))]);
            }
        }
        var all = bytes.GetBuffer().AsSpan(0, (int)bytes.Length);
        if (all.StartsWith<byte>([0xFF, 0xFE]))
        {
            return new(Encoding.Unicode.GetString(all[2..]), []);
        }
        if (all.StartsWith<byte>([0xFE, 0xFF]))
        {
            return new(Encoding.BigEndianUnicode.GetString(all[2..]), []);
        }
        try
        {
            return new(new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(all), []);
        }
        catch (DecoderFallbackException)
        {
            return new(Encoding.Latin1.GetString(all), [new(Severity.Note, Place.Whole, AbcMessages.NotUtf8)]);
        }
    }

    // Null when there is more than the limit.
    private static string? ReadAll(TextReader source)
    {
        var text = new StringBuilder();
        var buffer = new char[8192];
        for (var count = source.Read(buffer); count > 0; count = source.Read(buffer))
        {
            text.Append(buffer, 0, count);
            if (text.Length > AbcLimits.Size)
            {
                return null;
            }
        }
        return text.ToString();
    }

    // Blocks of lines between blank lines: a tune, the header of the whole book, or free text.
    private static List<Tune> ReadTunes(List<AbcLine> lines, string? part, AbcFindings findings)
    {
        var tunes = new List<Tune>();
        var bookHeader = new List<AbcLine>();
        var at = 0;
        while (at < lines.Count)
        {
            if (lines[at].IsBlank)
            {
                at++;
                continue;
            }
            var end = at;
            while (end < lines.Count && !lines[end].IsBlank && (end == at || lines[end].Field != 'X'))
            {
                end++;
            }
            var block = lines.GetRange(at, end - at);
            var isTune =
                block.Any(l => l.Field is 'X' or 'K') && (block[0].Field is not null || block.Any(l => l.Field == 'X'));
            if (isTune && tunes.Count >= AbcLimits.Tunes)
            {
                findings.Warn(new(block[0].Number), AbcMessages.TooManyTunes(AbcLimits.Tunes));
                break;
            }
            if (isTune && ReadTune(bookHeader, block, part, findings) is { } tune)
            {
                tunes.Add(tune);
            }
            else if (
                !isTune
                && tunes.Count == 0
                && bookHeader.Count == 0
                && block.Count <= AbcLimits.HeaderLines
                && block.TrueForAll(l => l.Field is not null)
            )
            {
                bookHeader = block;
            }
            else if (!isTune && block.Exists(l => l.LooksLikeMusic))
            {
                findings.Warn(new(block.Find(l => l.LooksLikeMusic)!.Number), AbcMessages.OutsideTune);
            }
            at = end;
        }
        return tunes;
    }

    private static Tune? ReadTune(List<AbcLine> bookHeader, List<AbcLine> block, string? part, AbcFindings findings)
    {
        findings.NextTune();
        var tune = new AbcTuneReader(findings, new AbcSpot(block[0].Number));
        foreach (var line in bookHeader.Concat(block))
        {
            tune.Read(line);
        }
        if (!tune.HasReference)
        {
            findings.Add(Severity.Note, new(block[0].Number), AbcMessages.NoReference);
        }
        return tune.Finish(part);
    }
}
