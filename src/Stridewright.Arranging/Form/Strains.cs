using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A tune's sections by letter, in the order in which they first appear; the whole tune where none is
/// named.</summary>
/// <param name="All">Bars of each section as written, with its repeats and endings.</param>
/// <param name="Order">Indices of the sections in written order.</param>
internal sealed record Strains(IReadOnlyList<IReadOnlyList<TuneBar>> All, IReadOnlyList<int> Order)
{
    /// <summary>Key of the beginning.</summary>
    public Key Home => All[0][0].Key;

    public static Strains Of(Tune tune)
    {
        var names = tune.Bars.Select(b => b.Section).OfType<string>().Distinct().ToList();
        var parts = new Dictionary<string, List<TuneBar>>();
        List<TuneBar>? open = names.Count == 0 ? parts[""] = [] : null;
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
        var order = tune.Bars.Select(b => b.Section).OfType<string>().Select(n => names.IndexOf(n)).DefaultIfEmpty(0);
        return new Strains([.. parts.Values], [.. order]);
    }

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
