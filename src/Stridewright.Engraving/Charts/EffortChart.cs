using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>Effort along a piece, to be drawn on paper.</summary>
/// <param name="Subtitle">How hard it is on the whole, and for whom.</param>
/// <param name="Columns">The bars in order.</param>
public sealed record EffortChart(string Title, string Subtitle, ValueList<EffortColumn> Columns);

/// <summary>One bar.</summary>
/// <param name="Number">Its printed number.</param>
/// <param name="Right">Effort of the right hand, 1 to 100.</param>
/// <param name="Left">Effort of the left hand, 1 to 100.</param>
public sealed record EffortColumn(string Number, double Right, double Left)
{
    /// <summary>Something in it cannot be played.</summary>
    public bool IsFaulty { get; init; }

    /// <summary>One of the hardest.</summary>
    public bool IsHard { get; init; }
}
