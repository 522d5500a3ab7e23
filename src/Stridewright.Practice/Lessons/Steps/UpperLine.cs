using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>One note of a line, ties merged.</summary>
/// <param name="Start">From the start of the score.</param>
internal sealed record LineStroke(ScoreTime Start, ScoreTime End, Pitch Pitch);

/// <summary>A line of single notes, read off a score of one voice and written back.</summary>
internal static class UpperLine
{
    /// <summary>In time order; none sounds into the next.</summary>
    public static List<LineStroke> Of(Score line)
    {
        var struck = Timeline
            .Strike(line, Enumerable.Range(0, line.Bars.Count))
            .Where(s => s.Sounding.End > s.Sounding.Start);
        var strokes = struck
            .GroupBy(s => s.Sounding.Start)
            .Select(g => g.MaxBy(s => s.Sounding.Key)!)
            .OrderBy(s => s.Sounding.Start)
            .Select(s => new LineStroke(s.Sounding.Start, s.Sounding.End, s.Source.Notes[s.Note].Pitch))
            .ToList();
        for (var i = 0; i + 1 < strokes.Count; i++)
        {
            strokes[i] = strokes[i] with { End = ScoreTime.Min(strokes[i].End, strokes[i + 1].Start) };
        }
        return strokes;
    }

    /// <summary>The score with its right hand spelled from these strokes, all else as it was.</summary>
    public static Score Written(Score line, IReadOnlyList<LineStroke> strokes)
    {
        var draft = new List<DraftBar>();
        var (start, next) = (ScoreTime.Zero, 0);
        foreach (var bar in line.Bars)
        {
            var end = start + bar.Length;
            var here = new List<Stroke>();
            for (; next < strokes.Count && strokes[next].Start < end; next++)
            {
                var s = strokes[next];
                here.Add(new Stroke(Hand.Right, 1, s.Start - start, s.End - s.Start, [s.Pitch], "tune"));
            }
            draft.Add(
                new DraftBar
                {
                    Number = bar.Number,
                    Implicit = bar.Implicit,
                    Metre = bar.Metre,
                    Key = bar.Key,
                    Length = bar.Length,
                    Strokes = here.ToValueList(),
                }
            );
            start = end;
        }
        var spelled = Notator.Write(new Draft { Title = line.Title, Bars = draft.ToValueList() });
        return line with
        {
            Bars = line
                .Bars.Select(
                    (bar, i) =>
                        bar with
                        {
                            Voices = spelled.Bars[i].Voices.Where(v => v.Hand == Hand.Right).ToValueList(),
                        }
                )
                .ToValueList(),
        };
    }
}
