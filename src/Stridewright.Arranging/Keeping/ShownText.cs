using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What an arrangement file says of how a setting is shown: words that stand alone.</summary>
public static class ShownText
{
    public const string NoChords = "no-chords",
        Fingering = "fingering",
        Reasons = "reasons",
        LargePrint = "large-print";

    private static readonly ValueList<string> All = [NoChords, Fingering, Reasons, LargePrint];

    internal static ValueList<string> Read(IEnumerable<TextLine> lines, TextFaults faults)
    {
        var shown = new List<string>();
        foreach (var line in lines)
        {
            if (!All.Contains(line.Text))
            {
                faults.Add(line, ArrangementTextMessages.NotShown(line.Text, All));
            }
            else if (!shown.Contains(line.Text))
            {
                shown.Add(line.Text);
            }
        }
        return shown.ToValueList();
    }
}
