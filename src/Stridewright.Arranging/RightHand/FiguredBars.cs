namespace Stridewright.Arranging;

/// <summary>
/// Bars in which figures may stand. At level 1 one returns per phrase: where the next level has one, rather in the second bar,
/// else there; in another of several settings rather where the earlier ones have none, and in two bars where one does not
/// make it differ enough. From level 2 on that is every bar.
/// </summary>
internal static class FiguredBars
{
    private const int FirstFree = 2;

    // Price of being like the earlier settings from which on a phrase has two.
    private const long PriceOfTwo = 6400;

    /// <param name="fuller">The next level's rhythm; null: it is not known.</param>
    public static bool[] Of(Lattice lattice, Ragged? fuller, Unlike? unlike, int level)
    {
        var figured = new bool[lattice.Bars.Length];
        if (level >= FirstFree)
        {
            Array.Fill(figured, true);
            return figured;
        }
        var onsets = fuller?.Onsets ?? [];
        var patterns = Figures.Patterns(lattice, onsets);
        var ragged = Figures.Ragged(lattice, onsets);
        for (int bar = 0, end; bar < figured.Length; bar = end)
        {
            end = bar + 1;
            while (end < figured.Length && !lattice.Bars[end].StartsPhrase)
            {
                end++;
            }
            var chosen = Enumerable
                .Range(bar, end - bar)
                .Where(b => lattice.Bars[b].StrainBar >= 0)
                .OrderByDescending(b => unlike?.IsRagged(b) != true)
                .ThenByDescending(b => patterns[b] >= 0 && Figures.In(patterns[b], 0xFF).Untied > 0)
                .ThenByDescending(b => ragged[b])
                .ThenByDescending(b => lattice.Bars[b].StrainBar % 4 == 1)
                .Take(unlike is { Price: >= PriceOfTwo } ? 2 : 1);
            foreach (var one in chosen)
            {
                figured[one] = true;
            }
        }
        return figured;
    }
}
