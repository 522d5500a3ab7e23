using System.Globalization;
using System.Text;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>What was heard in a take, as a page of text.</summary>
internal static class HeardText
{
    /// <param name="refusal">Why nothing can be said; empty: all is said.</param>
    public static string Write(HeardTake heard, string score, string take, string refusal)
    {
        var text = new StringBuilder();
        Line($"{heard.Title}");
        Line($"score {score}, take {take}");
        Line("");
        if (refusal.Length > 0)
        {
            Line(refusal);
            return text.ToString();
        }
        foreach (var sentence in Summary(heard))
        {
            Line(sentence);
        }
        Section("Next:", heard.Next);
        Section("Remarks:", heard.Remarks);
        Line("");
        Line("bar    right wrong missing extra  quarter =");
        foreach (var bar in heard.Bars)
        {
            Line(
                bar.IsPlayed || bar.Extra > 0
                    ? Text(
                        $"{bar.Bar, -6} {bar.Right, 5} {bar.Wrong, 5} {bar.Missing, 7} {bar.Extra, 5}  {bar.QuartersPerMinute:0}"
                    )
                    : Text($"{bar.Bar, -6} not played")
            );
        }
        return text.ToString();

        void Line(string line) => text.Append(line.TrimEnd()).Append('\n');

        void Section(string head, IReadOnlyCollection<HeardRemark> remarks)
        {
            if (remarks.Count > 0)
            {
                Line("");
                Line(head);
                foreach (var remark in remarks)
                {
                    Line("- " + remark.Message);
                }
            }
        }
    }

    /// <summary>The whole take in a few sentences.</summary>
    public static IEnumerable<string> Summary(HeardTake heard)
    {
        yield return Text(
            $"notes: {heard.Asked} asked for where it was played, {heard.Right} right, {heard.Wrong} wrong{(heard.WrongOctave > 0 ? Text($" ({heard.WrongOctave} in another octave)") : "")}, {heard.Missing} missing, {heard.Extra} extra"
        );
        if (heard.Outside > 0)
        {
            yield return Text(
                $"{heard.Outside} more note{(heard.Outside == 1 ? " was" : "s were")} played outside the bars that were to be heard"
            );
        }
        if (heard.Alone is { } hand)
        {
            yield return $"the {hand} hand alone";
        }
        if (heard.BarsNotPlayed > 0 || heard.Jumps > 0)
        {
            yield return Text(
                $"{heard.BarsNotPlayed} bars not played; went back or elsewhere {heard.Jumps} time{(heard.Jumps == 1 ? "" : "s")}"
            );
        }
        if (heard.QuartersPerMinute is { } tempo)
        {
            yield return Text($"tempo: quarter = {tempo:0}")
                + (heard.AskedQuartersPerMinute is { } asked ? Text($", {asked:0} asked for") : "")
                + (
                    heard.Drift is { } drift
                        ? Text($"; {Math.Abs(drift):0 %} {(drift < 0 ? "slower" : "faster")} at the end")
                        : ""
                );
        }
        if (heard.LeftUnevenness is { } uneven)
        {
            yield return Text($"left hand: its strokes vary by {100 * uneven:0.0} % about their trend");
        }
        if (heard.Anticipations is { MeanShare: { } share } early)
        {
            yield return Text(
                $"anticipations: {early.Count}, on average {share:0.00} of the written lead; {early.Flattened} flattened onto the beat, {early.TooEarly} too early"
            );
        }
        if (heard.Swing.Played is { } swing)
        {
            yield return Text(
                $"swing: {swing:0.00} to 1, {(heard.Swing.Asked > 1 ? Text($"{heard.Swing.Asked:0.00} to 1 asked for") : "straight asked for")} ({heard.Swing.Pairs} pairs)"
            );
        }
        if (heard.Balance is { Tune: { } tune } balance)
        {
            yield return Text($"loudness: tune {tune:0}")
                + (balance.Bass is { } bass ? Text($", bass {bass:0}") : "")
                + (balance.Chords is { } chords ? Text($", chords {chords:0}") : "");
        }
        if (heard.Pedal is { } pedal)
        {
            yield return Text(
                $"pedal: pressed {pedal.Presses} time{(pedal.Presses == 1 ? "" : "s")}, down for {100 * pedal.Share:0} % of the take"
            )
                + (pedal.Asked > 0 ? Text($"; asked for at {pedal.Asked} places, down at {pedal.Answered}") : "")
                + (
                    pedal.Blurred > 0
                        ? Text($"; held over into a new bass {pedal.Blurred} time{(pedal.Blurred == 1 ? "" : "s")}")
                        : ""
                );
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
