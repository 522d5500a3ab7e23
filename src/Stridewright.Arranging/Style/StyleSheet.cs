using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Figures as they are gathered, each beside its reference.</summary>
internal sealed class StyleSheet(IReadOnlyDictionary<string, double[]> reference)
{
    private static readonly double[] Percents = [0.05, 0.25, 0.5, 0.75, 0.95];
    private string _section = "";

    public List<StyleFigure> Figures { get; } = [];

    /// <summary>What comes from now on belongs to this section.</summary>
    public void Open(string section) => _section = section;

    /// <summary>True where a reference is published for a figure.</summary>
    public bool Knows(string key) => reference.ContainsKey(key);

    public void Share(string key, string words, int part, int whole)
    {
        if (whole > 0)
        {
            Add(key, words, StyleUnit.Share, [(double)part / whole]);
        }
    }

    public void Add(string key, string words, StyleUnit unit, double[] values) =>
        Figures.Add(
            new(key, words, unit, values.ToValueList(), reference.GetValueOrDefault(key, []).ToValueList())
            {
                Section = _section,
            }
        );

    /// <summary>Percentiles, interpolated linearly.</summary>
    /// <param name="percents">Which, as shares; null: the 5th, 25th, 50th, 75th and 95th.</param>
    public void Spread(string key, string words, StyleUnit unit, List<int> values, double[]? percents = null)
    {
        if (values.Count == 0)
        {
            return;
        }
        values.Sort();
        Add(key, words, unit, [.. (percents ?? Percents).Select(At)]);

        double At(double percent)
        {
            var place = (values.Count - 1) * percent;
            var low = (int)place;
            return values[low] + (values[Math.Min(low + 1, values.Count - 1)] - values[low]) * (place - low);
        }
    }
}
