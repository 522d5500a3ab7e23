using Stridewright.Music;

namespace Stridewright.Workbench.Pocket;

/// <summary>What is to go into one file for a phone or a tablet.</summary>
internal sealed record PocketWish
{
    /// <summary>Of the piece, and of the file.</summary>
    public required string Title { get; init; }

    /// <summary>Whom it is for; null: nobody is named.</summary>
    public string? Player { get; init; }

    /// <summary>The piece first; behind it whatever else today asks for, such as steps and drills.</summary>
    public required ValueList<PocketPart> Parts { get; init; }

    /// <summary>What is to be done today, in order; empty: there is no list.</summary>
    public ValueList<PocketTask> Today { get; init; } = [];
}

/// <summary>A score in the file.</summary>
internal sealed record PocketPart(string Title, Score Score);

/// <summary>One line of today's list.</summary>
/// <param name="Text">What to do, in a sentence.</param>
public sealed record PocketTask(string Text)
{
    /// <summary>Which of the file's scores it is about, from 0: the piece.</summary>
    public int Part { get; init; }

    /// <summary>Printed number of its first bar; null: of the whole score.</summary>
    public string? FirstBar { get; init; }

    public string? LastBar { get; init; }

    /// <summary><c>left</c> or <c>right</c>: the hand that plays alone; null: both.</summary>
    public string? Hand { get; init; }

    /// <summary>Tempo to play it at; null: the score's own.</summary>
    public double? QuartersPerMinute { get; init; }

    public double? Minutes { get; init; }
}
