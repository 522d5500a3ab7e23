using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Writes bar lines, repeats and numbers of endings (ABC 2.1, 4.8 to 4.10), the counterpart of
/// <see cref="AbcBarSigns"/>.</summary>
internal sealed class AbcBarLines
{
    private ValueList<int> _ending = [];

    /// <summary>The signs between two bars, or after the last.</summary>
    /// <param name="next">Marks of the bar after it where that bar begins on the same line; else null.</param>
    public string Between(BarMarks marks, BarMarks? next)
    {
        var signs = new List<string>();
        if (marks.RepeatEnd > 0)
        {
            signs.Add(new string(':', marks.RepeatEnd - 1) + "|" + (marks.FinalBarAfter ? "]" : ""));
        }
        else if (marks.FinalBarAfter)
        {
            signs.Add("|]");
        }
        if (marks.DoubleBarAfter)
        {
            signs.Add("||");
        }
        if (signs.Count > 0)
        {
            _ending = [];
        }
        if (next?.RepeatStart == true)
        {
            var joins = signs.Count == 0 || (signs.Count == 1 && marks.RepeatEnd > 0 && !marks.FinalBarAfter);
            signs = joins ? [(signs.Count > 0 ? signs[0] : "|") + ":"] : [.. signs, "|:"];
            _ending = [];
        }
        return signs.Count == 0 ? "|" : string.Join(' ', signs);
    }

    /// <summary>The sign before a bar that begins a line.</summary>
    public string AtLineStart(BarMarks marks)
    {
        _ending = marks.RepeatStart ? [] : _ending;
        return marks.RepeatStart ? "|:" : "";
    }

    /// <summary>A part begins, which ends any ending.</summary>
    public void BeginPart() => _ending = [];

    /// <summary>The number of the ending that begins with a bar; where one is over without a sign, a bar line that is
    /// not seen.</summary>
    public string Ending(BarMarks marks)
    {
        if (marks.Ending.Equals(_ending))
        {
            return "";
        }
        var over = _ending.Count > 0 ? "[|]" : "";
        _ending = marks.Ending;
        return string.Join(
            ' ',
            new[] { over, _ending.Count > 0 ? "[" + string.Join(',', _ending) : "" }.Where(s => s.Length > 0)
        );
    }
}
