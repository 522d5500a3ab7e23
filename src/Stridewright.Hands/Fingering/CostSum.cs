namespace Stridewright.Hands;

/// <summary>Adds costs up, by term where somebody wants to know.</summary>
internal struct CostSum(int[]? byTerm = null)
{
    /// <summary>Hundredths of a point.</summary>
    public int Total { get; private set; }

    public void Add(CostTerm term, double cost)
    {
        if (cost == 0)
        {
            return;
        }
        var whole = (int)Math.Round(cost);
        Total += whole;
        if (byTerm is not null)
        {
            byTerm[(int)term] += whole;
        }
    }
}
