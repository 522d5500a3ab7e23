using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What is changed.</summary>
public enum ChangeKind
{
    /// <summary>The chord is rolled.</summary>
    Roll,

    /// <summary>A key between the outer ones is left out.</summary>
    DropInner,

    /// <summary>One key of an octave is left out.</summary>
    DropOctave,

    /// <summary>An outer key is left out.</summary>
    DropOuter,

    /// <summary>A stroke is left out.</summary>
    Rest,

    /// <summary>The piece is played slower.</summary>
    Slower,
}

/// <summary>A change that was made and judged again: with it the spot is gone and no other has come.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="Place">Place in words.</param>
/// <param name="Key">The key that is left out; null: none is.</param>
/// <param name="Speed">Of the tempo that was judged; 1: as it was.</param>
/// <param name="Message">The change in a sentence.</param>
public sealed record SmallestChange(
    ChangeKind Kind,
    Hand Hand,
    int Bar,
    string Place,
    int? Key,
    double Speed,
    string Message
);
