using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>Puts what the other projects found into the plain words and numbers of a report.</summary>
internal static class ReportOf
{
    public static Remark Remark(Diagnostic finding) =>
        new(finding.Severity == Severity.Note ? "note" : "warning", finding.Place.ToString(), finding.Message);

    public static Setting Setting(Arrangement arrangement, Verdict verdict, ValueList<HardBar> hardest) =>
        new()
        {
            Feel = Feel(arrangement.Feel),
            Key = arrangement.Key.ToString(),
            Metre = MainMetre(arrangement.Score).ToString(),
            BeatsPerMinute = arrangement.BeatsPerMinute,
            Beat = Beat(arrangement.BeatUnit),
            LeftLevel = arrangement.Brief.LeftLevel,
            RightLevel = arrangement.Brief.RightLevel,
            LeftHandOnly = arrangement.Score.LeftHandOnly,
            Raggedness = arrangement.Brief.Raggedness,
            Seed = arrangement.Brief.Seed,
            Hands = Hands(arrangement.Brief.Hands),
            Bars = CountedBars(arrangement.Score),
            Seconds = arrangement.Seconds,
            Tune = new TuneSurvival(
                arrangement.Tune.Notes,
                arrangement.Tune.Kept,
                arrangement.Tune.Early,
                arrangement.Tune.Late,
                arrangement.Tune.Fillers
            ),
            Effort = Effort(verdict.Effort),
            HardestBars = hardest,
            Voice = arrangement is { SungLowest: { } lowest, SungHighest: { } highest }
                ? new SungRange(lowest.ToString(), highest.ToString())
                : null,
            HarmonyChanges = arrangement
                .HarmonyChanges.Select(c => new ChangedHarmony(c.Bar, Words.Of(c.Kind), c.Before, c.After))
                .ToValueList(),
            Remarks = arrangement.Notes.Select(Remark).ToValueList(),
        };

    public static MeasuredStyle Style(StyleProfile style) =>
        new(
            style.Metre,
            style.Bars,
            style.Reference,
            style
                .Figures.Select(f => new MeasuredFigure(f.Key, f.Words, Words.Of(f.Unit), f.Values, f.Reference)
                {
                    Section = f.Section,
                })
                .ToValueList()
        );

    public static UnplayableSpot Spot(Score score, Fault fault) =>
        new(
            fault.Bar >= 0 && fault.Bar < score.Bars.Count ? score.Bars[fault.Bar].Number : "",
            fault.Place,
            fault.Hand == Hand.Right ? "right" : "left",
            Words.Of(fault.Kind),
            fault.Need,
            fault.Limit,
            fault.Need - fault.Limit,
            fault.Message
        );

    public static EffortReport Effort(Effort effort) => new(effort.Overall, Part(effort.Right), Part(effort.Left));

    public static HandsUsed Hands(PlayerHands hands) => new(hands.SpanMm, hands.OctaveMm, hands.NoOctaves);

    public static int CountedBars(Score score) => score.Bars.Count(bar => !bar.Implicit);

    /// <summary>Metre of the first full bar.</summary>
    public static Metre MainMetre(Score score) =>
        (score.Bars.FirstOrDefault(bar => !bar.Implicit) ?? score.Bars[0]).Metre;

    private static HandEffortReport Part(HandEffort part) =>
        new(part.StrokesPerSecond, part.LeapBitsPerSecond, part.StrainedShare, part.MeanStretch);

    private static string Feel(Feel feel) => Words.Of(feel);

    private static string Beat(NoteValue value) =>
        (value.Dots > 0 ? "dotted " : "")
        + value.Part switch
        {
            1 => "whole",
            2 => "half",
            4 => "quarter",
            8 => "eighth",
            _ => value.Length.ToString(),
        };
}
