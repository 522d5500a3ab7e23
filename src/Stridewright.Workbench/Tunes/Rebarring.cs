using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Workbench.Tunes;

/// <summary>Cuts a tune into other bars: every note stays where it sounds, what runs over a new bar line is tied. Repeats,
/// sections and bar lines stay where an old bar line is a new one.</summary>
internal static class Rebarring
{
    /// <param name="pickUp">Length of the short first bar; zero: none.</param>
    public static Tune Of(Tune tune, Metre metre, ScoreTime pickUp)
    {
        var total = tune.Bars.Aggregate(ScoreTime.Zero, (sum, bar) => sum + bar.Length);
        var bars = Empty(tune, metre, pickUp, total);
        var starts = new List<ScoreTime>();
        var at = ScoreTime.Zero;
        foreach (var bar in bars)
        {
            starts.Add(at);
            at += bar.Length;
        }
        var notes = bars.Select(_ => new List<TuneNote>()).ToArray();
        var chords = bars.Select(_ => new List<PlacedChord>()).ToArray();
        var start = ScoreTime.Zero;
        foreach (var old in tune.Bars)
        {
            foreach (var chord in old.Chords)
            {
                var index = IndexOf(start + chord.At);
                chords[index].Add(chord with { At = start + chord.At - starts[index] });
            }
            foreach (var note in old.Notes)
            {
                Cut(note, start + note.At);
            }
            Mark(old, start);
            start += old.Length;
        }
        return tune with
        {
            Bars = bars.Select((b, i) => b with { Notes = notes[i].ToValueList(), Chords = chords[i].ToValueList() })
                .ToValueList(),
        };

        int IndexOf(ScoreTime time) => Math.Max(0, starts.FindLastIndex(s => s <= time));

        void Cut(TuneNote note, ScoreTime place)
        {
            var left = note.Length;
            for (var isFirst = true; left > ScoreTime.Zero; isFirst = false)
            {
                var index = IndexOf(place);
                var here = ScoreTime.Min(left, starts[index] + bars[index].Length - place);
                if (here <= ScoreTime.Zero)
                {
                    return;
                }
                left -= here;
                notes[index]
                    .Add(
                        note with
                        {
                            At = place - starts[index],
                            Length = here,
                            TiedToNext = left > ScoreTime.Zero || note.TiedToNext,
                            Graces = isFirst ? note.Graces : [],
                            Lyrics = isFirst ? note.Lyrics : [],
                        }
                    );
                place += here;
            }
        }

        void Mark(TuneBar old, ScoreTime begin)
        {
            var (first, last) = (starts.IndexOf(begin), starts.FindIndex(s => s == begin + old.Length) - 1);
            if (first >= 0)
            {
                bars[first] = bars[first] with
                {
                    Section = old.Section ?? bars[first].Section,
                    Marks = bars[first].Marks with { RepeatStart = old.Marks.RepeatStart },
                };
            }
            last = begin + old.Length == total ? bars.Count - 1 : last;
            if (last >= 0)
            {
                bars[last] = bars[last] with
                {
                    Marks = bars[last].Marks with
                    {
                        RepeatEnd = old.Marks.RepeatEnd,
                        DoubleBarAfter = old.Marks.DoubleBarAfter,
                        FinalBarAfter = old.Marks.FinalBarAfter,
                    },
                };
            }
        }
    }

    private static List<TuneBar> Empty(Tune tune, Metre metre, ScoreTime pickUp, ScoreTime total)
    {
        var bars = new List<TuneBar>();
        var (at, number) = (ScoreTime.Zero, pickUp.IsZero ? 1 : 0);
        while (at < total || bars.Count == 0)
        {
            var length = bars.Count == 0 && !pickUp.IsZero ? pickUp : metre.BarLength;
            bars.Add(
                new TuneBar
                {
                    Number = number.ToString(CultureInfo.InvariantCulture),
                    Metre = metre,
                    Key = tune.Bars[0].Key,
                    Length = length,
                }
            );
            at += length;
            number++;
        }
        return bars;
    }
}
