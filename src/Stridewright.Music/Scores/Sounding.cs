namespace Stridewright.Music;

/// <summary>
/// One key press of a score in written order, ties merged. Times are from the start of the first bar.
/// </summary>
/// <param name="Key">MIDI note number.</param>
/// <param name="Bar">Index of the bar in which it is struck.</param>
/// <param name="At">Place in that bar.</param>
/// <param name="Rolled">Part of a rolled chord.</param>
public sealed record Sounding(Hand Hand, int Key, ScoreTime Start, ScoreTime End, int Bar, ScoreTime At, bool Rolled)
{
    public string Id { get; init; } = "";
}
