using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A tune grown to the length and shape of the piece, with the treatment of each of its bars.</summary>
/// <param name="Treatments">One a bar of <paramref name="Tune"/>.</param>
internal sealed record Piece(Tune Tune, ValueList<Treatment> Treatments)
{
    /// <summary>What of the form could not be done, and what was done of what is not certain to fit.</summary>
    public ValueList<string> Notes { get; init; } = [];

    /// <summary>The tune as it stands, in the usual way.</summary>
    public static Piece Of(Tune tune) => new(tune, tune.Bars.Select(_ => Treatment.Usual).ToValueList());
}
