using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>One claim about a finished setting: what stands at a place, and why. Every claim can be checked against the
/// score, the tune and the hands.</summary>
/// <param name="Bar">Index of its bar in the score.</param>
/// <param name="Hand">Whose; null: it is about both.</param>
/// <param name="At">Place in the bar; 0 where the whole bar is meant.</param>
public abstract record Reason(int Bar, Hand? Hand, ScoreTime At)
{
    /// <summary>The claim in one line, in a musician's words.</summary>
    public string Sentence => ReasonMessages.Of(this);
}

/// <summary>The claims about one bar.</summary>
/// <param name="Bar">Index in the score.</param>
/// <param name="Number">As printed.</param>
public sealed record BarReasons(int Bar, string Number, ValueList<Reason> Reasons);
