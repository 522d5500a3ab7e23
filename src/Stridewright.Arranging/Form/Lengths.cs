namespace Stridewright.Arranging;

/// <summary>The forms of one tune from short to long, all of one make: the usual one, or a line of the player's own with
/// fewer or more strains.</summary>
internal static class Lengths
{
    private const int MostStrains = 32;

    /// <summary>The usual form in every length that is asked after.</summary>
    /// <param name="goesOn">Whether a still longer form is of use.</param>
    public static IEnumerable<FormLine> OfUsual(Dressing dressing, Func<FormLine, bool> goesOn)
    {
        var usual = StrainOrder.Usual(dressing.Strains, dressing.Level);
        foreach (var order in Orders(usual, o => goesOn(dressing.Line(o, false, false))))
        {
            foreach (var (intro, tag) in new[] { (true, true), (true, false), (false, true), (false, false) })
            {
                yield return dressing.Line(order, intro, tag);
            }
        }
    }

    /// <summary>A given line, and the same with fewer and more of its strains.</summary>
    public static IEnumerable<FormLine> OfLine(FormLine line, Func<FormLine, bool> goesOn)
    {
        // What stands before a strain, as a vamp does, goes with it.
        var strains = line.Parts.Where(p => p.HasLetter).ToList();
        var groups = new Dictionary<FormPart, List<FormPart>>(ReferenceEqualityComparer.Instance);
        var open = new List<FormPart>();
        foreach (var part in line.Parts)
        {
            if (part.HasLetter)
            {
                groups[part] = groups.Count == 0 ? [] : open;
                open = [];
            }
            else if (groups.Count > 0)
            {
                open.Add(part);
            }
        }
        var head = line.Parts.TakeWhile(p => !p.HasLetter).ToList();
        var tail = open;
        FormLine Whole(IReadOnlyList<FormPart> order) =>
            new([
                .. head,
                .. order.SelectMany((p, i) => i == 0 ? [p] : groups.GetValueOrDefault(p, []).Append(p)),
                .. tail,
            ]);
        return Orders(strains, o => goesOn(Whole(o))).Select(Whole);
    }

    private static IEnumerable<IReadOnlyList<FormPart>> Orders(
        IReadOnlyList<FormPart> usual,
        Func<IReadOnlyList<FormPart>, bool> goesOn
    )
    {
        for (var order = usual; ; order = StrainOrder.Shorter(order))
        {
            yield return order;
            if (Halved(order) is { } half)
            {
                yield return half;
            }
            if (order.Count == 1)
            {
                break;
            }
        }
        for (var order = usual; order.Count < MostStrains && goesOn(order); )
        {
            order = StrainOrder.Longer(order);
            if (Halved(order) is { } half)
            {
                yield return half;
            }
            yield return order;
        }
    }

    // The last strain from its middle on.
    private static FormPart[]? Halved(IReadOnlyList<FormPart> order) =>
        order[^1] is { Kind: PartKind.Strain, Repeated: false } last
            ? [.. order.SkipLast(1), last with { Kind = PartKind.Half }]
            : null;
}
