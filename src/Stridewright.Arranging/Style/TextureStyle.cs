using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Registers and textures of the right hand, where in the bar they stand and how long they last.</summary>
internal static class TextureStyle
{
    private static readonly double[] Upper = [0.5, 0.75, 0.95];

    public static void Add(StyleSheet sheet, Score score, List<int> bars, IEnumerable<Sounding> right)
    {
        var onsets = right
            .GroupBy(s => s.Start)
            .OrderBy(g => g.Key)
            .Select(g => (g.First().Bar, g.First().At, Keys: g.Select(s => s.Key).Distinct().Order().ToArray()))
            .ToList();
        sheet.Open(StyleMessages.RegisterSection);
        sheet.Spread("top", StyleMessages.Top, StyleUnit.Key, [.. onsets.Select(o => o.Keys[^1])]);
        sheet.Spread("lowest", StyleMessages.Lowest, StyleUnit.Key, [.. onsets.Select(o => o.Keys[0])]);
        var steps = onsets.Zip(onsets.Skip(1), (a, b) => Math.Abs(b.Keys[^1] - a.Keys[^1])).ToList();
        sheet.Spread("top_step", StyleMessages.TopStep, StyleUnit.Semitones, steps, Upper);
        var row = onsets.Select(o => TextureTally.Kind(o.Keys.Length, o.Keys[^1] - o.Keys[0])).ToArray();
        var tally = new TextureTally();
        tally.Add(row);
        sheet.Open(StyleMessages.TextureSection);
        for (var kind = 0; kind < TextureTally.Kinds.Length; kind++)
        {
            var name = TextureTally.Kinds[kind];
            sheet.Share(name, StyleMessages.Texture(name), tally.Seen[kind], row.Length);
        }
        for (var kind = 0; kind < TextureTally.Kinds.Length; kind++)
        {
            var name = TextureTally.Kinds[kind];
            sheet.Share(name + "_stays", StyleMessages.Stays(name), tally.Kept[kind], tally.Followed[kind]);
        }
        AddPlaces(sheet, score, [.. bars], [.. onsets.Select((o, i) => (o.Bar, o.At, row[i]))]);
    }

    // Shares of single, two notes, octave, octave with inner notes and block at each of the bar's eight units.
    private static void AddPlaces(
        StyleSheet sheet,
        Score score,
        HashSet<int> bars,
        List<(int Bar, ScoreTime At, int Kind)> onsets
    )
    {
        const int Narrow = 5;
        var places = Enumerable.Range(0, 8).Select(_ => new int[Narrow]).ToArray();
        foreach (var (bar, at, kind) in onsets.Where(o => bars.Contains(o.Bar) && o.Kind < Narrow))
        {
            var unit = RhythmStyle.Unit(score, bar);
            if (at.IsMultipleOf(unit))
            {
                places[at.Round(unit)][kind]++;
            }
        }
        for (var place = 0; place < places.Length; place++)
        {
            var sum = (double)places[place].Sum();
            if (sum > 0)
            {
                sheet.Add(
                    FormattableString.Invariant($"place_{place}"),
                    StyleMessages.AtPlace(place + 1),
                    StyleUnit.Share,
                    [.. places[place].Select(n => n / sum)]
                );
            }
        }
    }
}
