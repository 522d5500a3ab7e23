namespace Stridewright.Arranging;

/// <summary>Orders of strains from short to long: how a form shrinks and grows.</summary>
internal static class StrainOrder
{
    /// <summary>The usual order of a tune's sections: as written where the tune itself brings one back (a song), else as
    /// in a rag (A A B B A C C D D, Rags and Ragtime 1978), simpler at the first levels.</summary>
    public static IReadOnlyList<FormPart> Usual(Strains strains, int level)
    {
        var count = strains.All.Count;
        if (strains.Order.Count > count)
        {
            return [.. strains.Order.Select(i => Part((char)('A' + i)))];
        }
        var line = (count, level) switch
        {
            (1, <= 2) => "AA",
            (1, <= 4) => "AAA",
            (1, _) => "AAAA",
            (2, <= 2) => "ABA",
            (2, <= 4) => "AABA",
            (2, _) => "AABBAbA",
            (3, <= 2) => "ABAC",
            (3, <= 4) => "AABBAC",
            (3, _) => "AABBAcc",
            (_, <= 2) => "ABAcd",
            (_, <= 4) => "AABAccd",
            _ => "AABBAccdd",
        };
        var more = Enumerable.Range(4, Math.Clamp(count - 4, 0, 'Z' - 'D')).Select(i => Part((char)('A' + i)));
        return [.. line.Select(c => Part(char.ToUpperInvariant(c), char.IsLower(c))), .. more];
    }

    /// <summary>A strain less: a repetition, else the section that came last, else a return.</summary>
    public static IReadOnlyList<FormPart> Shorter(IReadOnlyList<FormPart> order)
    {
        for (var i = order.Count - 1; i > 0; i--)
        {
            if (Alike(order[i], order[i - 1]))
            {
                return Without(order, i - 1);
            }
        }
        var letters = order.Select(p => p.Letter).Distinct().Order().ToList();
        var last = letters.Count > 2 ? order.ToList().FindLastIndex(p => p.Letter == letters[^1]) : order.Count - 1;
        return Without(order, last);
    }

    /// <summary>A strain more: the one heard least is heard once more at its first place.</summary>
    public static IReadOnlyList<FormPart> Longer(IReadOnlyList<FormPart> order)
    {
        var least = order.GroupBy(p => p.Letter).OrderBy(g => g.Count()).ThenBy(g => g.Key).First().First();
        var at = order.ToList().FindIndex(p => ReferenceEquals(p, least));
        return [.. order.Take(at), least, .. order.Skip(at)];
    }

    private static bool Alike(FormPart a, FormPart b) => a.Letter == b.Letter && a.Kind == b.Kind;

    private static FormPart[] Without(IReadOnlyList<FormPart> order, int index) =>
        [.. order.Where((_, i) => i != index)];

    private static FormPart Part(char letter, bool isTrio = false) =>
        new(isTrio ? PartKind.Trio : PartKind.Strain, 1, letter);
}
