using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A tune as it is written, ties and triplets and all, cut into the bars of a setting: in their lengths, in the setting's
/// note values. What runs over a new bar line is tied.
/// </summary>
internal static class TuneBars
{
    /// <summary>One list of events for every bar of the lattice, each filling its bar.</summary>
    public static IReadOnlyList<ValueList<ScoreEvent>> Of(Tune tune, Lattice lattice)
    {
        var bars = lattice.Bars.Select(Empty(lattice)).ToArray();
        var notes = bars.Select(_ => new List<TuneNote>()).ToArray();
        var start = ScoreTime.Zero;
        var at = 0;
        foreach (var source in tune.Bars)
        {
            foreach (var note in source.Notes)
            {
                Cut(note, (start + note.At) * lattice.Scale);
            }
            start += source.Length;
        }
        var sheet = LeadSheet.Of(
            tune with
            {
                Bars = bars.Select((b, i) => b with { Notes = notes[i].ToValueList() }).ToValueList(),
            }
        );
        return [.. sheet.Bars.Select(b => b.Voices[0].Events)];

        void Cut(TuneNote note, ScoreTime place)
        {
            var left = note.Length * lattice.Scale;
            for (var isFirst = true; left > ScoreTime.Zero; isFirst = false)
            {
                while (at + 1 < bars.Length && place >= StartOf(at + 1))
                {
                    at++;
                }
                var here = ScoreTime.Min(left, StartOf(at) + bars[at].Length - place);
                if (here <= ScoreTime.Zero)
                {
                    return; // Beyond the last bar.
                }
                left -= here;
                notes[at]
                    .Add(
                        note with
                        {
                            At = place - StartOf(at),
                            Length = here,
                            TiedToNext = left > ScoreTime.Zero || note.TiedToNext,
                            Graces = isFirst ? note.Graces : [],
                            Lyrics = isFirst ? note.Lyrics : [],
                        }
                    );
                place += here;
            }
        }

        ScoreTime StartOf(int bar) => lattice.Tick * lattice.Bars[bar].Start;
    }

    private static Func<LatticeBar, TuneBar> Empty(Lattice lattice) =>
        bar => new TuneBar
        {
            Number = bar.Number,
            Metre = bar.Metre,
            Key = bar.Key,
            Length = lattice.Tick * bar.Length,
        };
}
