using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Reads bar lines, repeats and endings (MusicXML 4.0, <c>barline</c>) and keeps the open ending.</summary>
internal sealed class BarlineReader(Findings findings)
{
    private const int MostTimes = 32;

    private ValueList<int> _ending = [];
    private bool _closes; // the open ending lasts to the end of this bar
    private WrittenBar? _opened;
    private WrittenBar? _openRepeat;

    public void Read(Element barline, WrittenBar bar, WrittenBar? before)
    {
        var place = barline.PlaceIn(bar.Number);
        var left = barline["location"] == "left";
        if (barline.Child("ending") is { } ending)
        {
            ReadEnding(ending, bar, place);
        }
        if (barline.Child("repeat") is { } repeat)
        {
            if (barline["location"] == "middle")
            {
                findings.Warn(place, MusicXmlMessages.RepeatInsideBar);
            }
            else
            {
                ReadRepeat(repeat, bar, place);
            }
        }
        switch (barline.TextOf("bar-style"))
        {
            case "light-light" when left && before is not null:
                before.DoubleBarAfter = true;
                break;
            case "light-light" when !left:
                bar.DoubleBarAfter = true;
                break;
            case "light-heavy" when !left && !barline.Has("repeat"):
                bar.FinalBarAfter = true;
                break;
            default:
                break;
        }
    }

    /// <summary>Marks a bar, read to its end, with the ending that it belongs to.</summary>
    public void Finish(WrittenBar bar)
    {
        bar.Ending = _ending;
        if (bar.RepeatStart)
        {
            _openRepeat ??= bar;
        }
        if (bar.RepeatEnd > 0)
        {
            _openRepeat = null;
        }
        if (_closes || bar.RepeatEnd > 0 || bar.FinalBarAfter)
        {
            _ending = [];
            _closes = false;
            _opened = null;
        }
    }

    /// <summary>Tells what is still open after the last bar, and endings that contradict each other.</summary>
    public void Finish(List<WrittenBar> bars)
    {
        if (_openRepeat is { } repeat)
        {
            findings.Note(repeat.Place, MusicXmlMessages.RepeatNotClosed);
        }
        if (_opened is { } opened && bars[^1] != opened)
        {
            findings.Warn(opened.Place, MusicXmlMessages.EndingNotClosed);
            for (var i = bars.IndexOf(opened) + 1; i < bars.Count; i++)
            {
                bars[i].Ending = [];
            }
        }
        ExtendToRepeats(bars);
        TellDoubleNumbers(bars);
    }

    // A bracket drawn over the first bars of an ending only: what leads to its repeat sign belongs to it.
    private void ExtendToRepeats(List<WrittenBar> bars)
    {
        var from = -1; // the bar after an ending closed without a repeat
        for (var i = 0; i < bars.Count; i++)
        {
            if (bars[i].Ending.Count > 0 || bars[i].RepeatStart)
            {
                from = bars[i].Ending.Count > 0 && bars[i].RepeatEnd == 0 ? i + 1 : -1;
            }
            else if (bars[i].RepeatEnd > 0)
            {
                if (from > 0 && i + 1 < bars.Count && bars[i + 1].Ending.Count > 0)
                {
                    findings.Note(bars[i].Place, MusicXmlMessages.EndingReachesRepeat);
                    for (var j = from; j <= i; j++)
                    {
                        bars[j].Ending = bars[from - 1].Ending;
                    }
                }
                from = -1;
            }
        }
    }

    private void TellDoubleNumbers(List<WrittenBar> bars)
    {
        var taken = new HashSet<int>();
        for (var i = 0; i < bars.Count; i++)
        {
            if (bars[i].Ending.Count == 0)
            {
                taken.Clear();
            }
            else if (i == 0 || !bars[i].Ending.Equals(bars[i - 1].Ending))
            {
                if (bars[i].Ending.Any(n => !taken.Add(n)))
                {
                    findings.Warn(bars[i].Place, MusicXmlMessages.EndingTwice);
                }
            }
        }
    }

    private void ReadEnding(Element ending, WrittenBar bar, Place place)
    {
        if (ending["type"] != "start")
        {
            _closes = true;
            return;
        }
        var numbers = Numbers(ending["number"] ?? "");
        if (numbers.Count == 0)
        {
            findings.Warn(place, MusicXmlMessages.EndingWithoutNumber(Element.Clean(ending["number"])));
            return;
        }
        _ending = numbers;
        _closes = false;
        _opened = bar;
    }

    private void ReadRepeat(Element repeat, WrittenBar bar, Place place)
    {
        if (repeat["direction"] == "forward")
        {
            bar.RepeatStart = true;
            CloseBefore(bar);
            return;
        }
        bar.RepeatEnd = 2;
        if (repeat["times"] is { } text)
        {
            if (
                int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var times)
                && times is >= 1 and <= MostTimes
            )
            {
                bar.RepeatEnd = Math.Max(2, times);
            }
            else
            {
                findings.Warn(place, MusicXmlMessages.BadTimes(Element.Clean(text)));
            }
        }
    }

    // What a repeat begins afresh belongs to no ending before it.
    private void CloseBefore(WrittenBar bar)
    {
        if (_opened is { } opened && opened != bar)
        {
            findings.Note(opened.Place, MusicXmlMessages.EndingReachesNextRepeat);
            (_ending, _opened, _closes) = ([], null, false);
        }
    }

    // "1", "1, 2" or, as some write, "1." and "1-3".
    private static ValueList<int> Numbers(string text)
    {
        var numbers = new SortedSet<int>();
        foreach (var part in text.Split([',', ' ', '.'], 40, StringSplitOptions.RemoveEmptyEntries))
        {
            var ends = part.Split('-');
            if (
                ends.Length <= 2
                && int.TryParse(ends[0], NumberStyles.None, CultureInfo.InvariantCulture, out var low)
                && int.TryParse(ends[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var high)
                && low >= 1
                && high <= MostTimes
            )
            {
                numbers.UnionWith(Enumerable.Range(low, Math.Max(0, high - low + 1)));
            }
        }
        return numbers.ToValueList();
    }
}
