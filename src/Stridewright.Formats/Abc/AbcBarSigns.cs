using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Reads bar lines, repeats and numbers of endings (ABC 2.1, 4.8 to 4.10).</summary>
internal static class AbcBarSigns
{
    /// <summary>A bar line of any kind, with the numbers of an ending that stand right after it.</summary>
    public static void ReadBarLine(AbcScanner scan, AbcVoice voice, AbcFindings findings)
    {
        var start = scan.At;
        while (
            scan.Now is '|' or ':'
            || (scan.Now == ']' && scan.At > start && scan.Slice(scan.At - 1, scan.At) == "|")
            || (scan.Now == '[' && scan.Next == '|')
        )
        {
            scan.At++;
        }
        var sign = scan.Since(start);
        var before = sign.Length - sign.TrimStart(':').Length;
        var after = sign.Length - sign.TrimEnd(':').Length;
        var isFinal = sign.Contains("|]", StringComparison.Ordinal) && sign != "[|]";
        var isDouble =
            !isFinal
            && sign != "[|]"
            && (sign.Contains("||", StringComparison.Ordinal) || sign.Contains("[|", StringComparison.Ordinal));
        // Of colons alone, half belong to either side; more than one colon means more repeats (ABC 2.1, 4.8).
        var colons = before == sign.Length ? Math.Max(1, before / 2) : before;
        voice.BarLine(
            before > 0 ? Math.Min(colons + 1, AbcLimits.Times) : 0,
            after > 0,
            isDouble && before + after == 0,
            isFinal
        );
        if (sign == "[|]")
        {
            voice.EndEnding();
        }
        var here = scan.At;
        scan.SkipSpaces();
        if (char.IsAsciiDigit(scan.Now))
        {
            ReadEnding(scan, voice, findings);
        }
        else
        {
            scan.At = here;
        }
    }

    /// <summary>Numbers of an ending: <c>1</c>, <c>1,3</c>, <c>1-3</c>.</summary>
    public static void ReadEnding(AbcScanner scan, AbcVoice voice, AbcFindings findings)
    {
        var spot = scan.Spot;
        var numbers = new SortedSet<int>();
        var from = 0;
        while (char.IsAsciiDigit(scan.Now))
        {
            if (scan.Number(AbcLimits.Times, out _) is not { } number)
            {
                findings.Warn(spot, AbcMessages.BadEnding);
                numbers.Clear();
                break;
            }
            for (var n = from > 0 ? from : number; n <= number; n++)
            {
                numbers.Add(n);
            }
            from = scan.Now == '-' ? number : 0;
            if (scan.Now is ',' or '-' or '.')
            {
                scan.At++;
            }
        }
        voice.Ending(spot, numbers.ToValueList());
    }
}
