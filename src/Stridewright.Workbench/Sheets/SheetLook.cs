using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Sheets;

/// <summary>What is printed of a setting, and how large; the setting itself is the same.</summary>
public sealed record SheetLook(Paper Paper = Paper.A4)
{
    /// <summary>Chord symbols are left out.</summary>
    public bool NoChords { get; init; }

    /// <summary>All fingers stand at the notes.</summary>
    public bool Fingers { get; init; }

    /// <summary>The most telling reasons stand as numbered notes under the score, and on a page after it.</summary>
    public bool Notes { get; init; }

    /// <summary>About a third larger than usual.</summary>
    public bool LargePrint { get; init; }

    /// <summary>What an arrangement file says of it.</summary>
    internal ValueList<string> Shown =>
        [
            .. NoChords ? [ShownText.NoChords] : Array.Empty<string>(),
            .. Fingers ? [ShownText.Fingering] : Array.Empty<string>(),
            .. Notes ? [ShownText.Reasons] : Array.Empty<string>(),
            .. LargePrint ? [ShownText.LargePrint] : Array.Empty<string>(),
        ];

    /// <summary>As an arrangement file says it.</summary>
    internal static SheetLook Read(ValueList<string> shown) =>
        new()
        {
            NoChords = shown.Contains(ShownText.NoChords),
            Fingers = shown.Contains(ShownText.Fingering),
            Notes = shown.Contains(ShownText.Reasons),
            LargePrint = shown.Contains(ShownText.LargePrint),
        };

    /// <summary>An arrangement as it is printed.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    internal Score Of(ITools tools, Arrangement arrangement, CancellationToken cancellation)
    {
        var score = Notes ? tools.WithNotes(arrangement) : arrangement.Score;
        if (Fingers)
        {
            score = tools.Finger(score, arrangement.Brief.Hands, new FingeringOptions(), cancellation).Score;
        }
        return NoChords ? score with { Bars = score.Bars.Select(b => b with { Chords = [] }).ToValueList() } : score;
    }
}
