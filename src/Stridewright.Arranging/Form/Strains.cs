using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A tune's sections by letter, in the order in which they first appear: those it names, else those that its repeats
/// set off, else the whole tune.</summary>
/// <param name="All">Bars of each section as written, with its repeats and endings.</param>
/// <param name="Order">Indices of the sections in written order.</param>
internal sealed record Strains(IReadOnlyList<IReadOnlyList<TuneBar>> All, IReadOnlyList<int> Order)
{
    // Strains that are all repeated may be this short; else each has as many bars as a strain of a rag (common practice).
    private const int ShortestRepeated = 8,
        Shortest = 16;

    /// <summary>Key of the beginning.</summary>
    public Key Home => All[0][0].Key;

    public static Strains Of(Tune tune)
    {
        if (tune.Bars.All(b => b.Section is null))
        {
            return SetOff(tune);
        }
        var names = tune.Bars.Select(b => b.Section).OfType<string>().Distinct().ToList();
        var parts = new Dictionary<string, List<TuneBar>>();
        List<TuneBar>? open = null;
        var pickUp = new List<TuneBar>();
        foreach (var bar in tune.Bars)
        {
            if (bar.Section is { } name)
            {
                open = [.. pickUp];
                pickUp.Clear();
                parts.TryAdd(name, open);
            }
            (open ?? pickUp).Add(bar);
        }
        var order = tune.Bars.Select(b => b.Section).OfType<string>().Select(n => names.IndexOf(n));
        return new Strains([.. parts.Values], [.. order]);
    }

    // What repeats set off, and the double bars between; a pick-up or an introduction before it belongs to it. A stretch that
    // is played once and is, bar for bar, one from before is that section again. Double bars alone set off nothing: in a
    // song of 32 bars they stand after eight or sixteen.
    private static Strains SetOff(Tune tune)
    {
        var stretches = new List<List<TuneBar>>();
        var open = new List<TuneBar>();
        for (var i = 0; i < tune.Bars.Count; i++)
        {
            if (BarSeams.StrainBefore(tune, i) && WholeBars(open) >= (stretches.Count == 0 ? ShortestRepeated : 1))
            {
                stretches.Add(open);
                open = [];
            }
            open.Add(tune.Bars[i]);
        }
        stretches.Add(open);
        var isSetOff =
            stretches.TrueForAll(s => IsRepeated(s) && WholeBars(s) >= ShortestRepeated)
            || (stretches.Exists(IsRepeated) && stretches.TrueForAll(s => WholeBars(s) >= Shortest));
        if (!isSetOff)
        {
            return new Strains([tune.Bars], [0]);
        }
        var (all, order) = (new List<IReadOnlyList<TuneBar>>(), new List<int>());
        foreach (var stretch in stretches)
        {
            var known = IsRepeated(stretch) ? -1 : all.FindIndex(s => IsSame(LastTime(s), stretch));
            order.Add(known >= 0 ? known : all.Count);
            if (known < 0)
            {
                all.Add(stretch);
            }
        }
        return new Strains(all, order);
    }

    private static int WholeBars(List<TuneBar> bars) => LastTime(bars).Count(b => b.Length == b.Metre.BarLength);

    private static bool IsRepeated(List<TuneBar> bars) => bars.Exists(b => b.Marks.RepeatEnd > 0);

    private static bool IsSame(List<TuneBar> a, List<TuneBar> b) =>
        a.Count == b.Count
        && a.Zip(b)
            .All(pair => pair.First.Key == pair.Second.Key && Places(pair.First).SequenceEqual(Places(pair.Second)));

    private static IEnumerable<(ScoreTime, Pitch)> Places(TuneBar bar) => bar.Notes.Select(n => (n.At, n.Pitch));

    public bool Has(FormPart part) => part.Letter - 'A' < All.Count;

    /// <summary>A section as it is played once, with its last ending.</summary>
    public List<TuneBar> Once(FormPart part) => LastTime(AsWritten(part));

    /// <summary>A section with its repeats and endings.</summary>
    public IReadOnlyList<TuneBar> AsWritten(FormPart part) => All[part.Letter - 'A'];

    /// <summary>The full bars of the last section, the last one filled up.</summary>
    public List<TuneBar> LastWhole() => Whole(LastTime(All[^1]));

    /// <summary>The full bars of a strain, the last one filled up where it leaves room for a pick-up.</summary>
    public static List<TuneBar> Whole(List<TuneBar> bars)
    {
        var filled = bars.Count > 1 ? bars.SkipLast(1).Append(PickUps.Filled(bars[^1])) : bars;
        var whole = filled.Where(b => b.Length == b.Metre.BarLength).ToList();
        return whole.Count > 0 ? whole : bars;
    }

    /// <summary>The end of a strain, from one of its bars on, in the harmony that has begun there.</summary>
    public static List<TuneBar> From(List<TuneBar> bars, int first)
    {
        var rest = bars[first..];
        var before = bars.Take(first).SelectMany(b => b.Chords).LastOrDefault()?.Chord;
        if (before is not null && rest[0].Chords is not [{ At.IsZero: true }, ..])
        {
            rest[0] = rest[0] with { Chords = [new PlacedChord(ScoreTime.Zero, before), .. rest[0].Chords] };
        }
        return rest;
    }

    private static List<TuneBar> LastTime(IReadOnlyList<TuneBar> bars)
    {
        var last = bars.SelectMany(b => b.Marks.Ending).DefaultIfEmpty(0).Max();
        return [.. bars.Where(b => b.Marks.Ending.Count == 0 || b.Marks.Ending.Contains(last))];
    }
}
