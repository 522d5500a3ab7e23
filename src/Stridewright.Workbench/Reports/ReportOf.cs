using Stridewright.Arranging;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>Puts what the other projects found into the plain words and numbers of a report.</summary>
internal static class ReportOf
{
    public static Remark Remark(Diagnostic finding) =>
        new(finding.Severity == Severity.Note ? "note" : "warning", finding.Place.ToString(), finding.Message);

    public static Setting Setting(
        Arrangement arrangement,
        Verdict verdict,
        ValueList<HardBar> hardest,
        ValueList<Diagnostic> givenUp
    ) =>
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
            )
            {
                LeftOut = arrangement.Tune.LeftOut,
                Elsewhere = arrangement.Tune.Elsewhere,
            },
            Form = arrangement.Brief.Form?.ToString(),
            Choruses = arrangement
                .Choruses.Select(c => new ChorusReport(c.Part, c.Bar, c.Notes, c.Kept, c.RightDiffers, c.LeftDiffers))
                .ToValueList(),
            Effort = Effort(verdict.Effort),
            HardestBars = hardest,
            Voice = arrangement is { SungLowest: { } lowest, SungHighest: { } highest }
                ? new SungRange(lowest.ToString(), highest.ToString())
                : null,
            HarmonyChanges = arrangement
                .HarmonyChanges.Select(c => new ChangedHarmony(c.Bar, Words.Of(c.Kind), c.Before, c.After))
                .ToValueList(),
            Remarks = arrangement.Notes.Concat(givenUp).Select(Remark).ToValueList(),
        };

    public static ValueList<BarWhy> Reasons(ValueList<BarReasons> bars) =>
        bars.Where(b => b.Reasons.Count > 0)
            .Select(b => new BarWhy(b.Number, b.Reasons.Select(Why).ToValueList()))
            .ToValueList();

    public static Why Why(Reason reason) =>
        new(
            Words.OfKind(reason),
            reason.Hand switch
            {
                Hand.Right => "right",
                Hand.Left => "left",
                _ => "both",
            },
            reason.At.ToString(),
            reason.Sentence
        );

    /// <summary>With a word on the page turns, where there are some that could be chosen.</summary>
    /// <param name="turns">Bars after which a hand is free.</param>
    public static Setting WithTurns(Setting setting, ValueList<string> pageEnds, ValueList<string> turns) =>
        turns.Count == 0 || pageEnds.Count == 0
            ? setting
            : setting with
            {
                Remarks =
                [
                    .. setting.Remarks,
                    new Remark("note", "", WorkbenchMessages.Turns(pageEnds.Count(turns.Contains), pageEnds.Count)),
                ],
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

    public static EffortReport Effort(Effort effort) =>
        new(effort.Overall, Part(effort.Right), Part(effort.Left)) { Words = EffortMessages.WordsOf(effort.Overall) };

    public static HandsUsed Hands(PlayerHands hands) =>
        new(hands.SpanMm, hands.OctaveMm, hands.NoOctaves)
        {
            Also = HandsText
                .Words.Where(w => w.Word is not ("span" or "octave-width" or "no-octaves"))
                .Select(w => (w.Word, Value: w.Value(hands)))
                .Where(w => w.Value is not null)
                .Select(w => w.Value!.Length > 0 ? $"{w.Word} {w.Value}" : w.Word)
                .ToValueList(),
        };

    public static OneHandReport OneHand(PlayerHands hands, Hand hand)
    {
        var own = hands.Of(hand);
        var rows = ReachTable
            .Of(new Reach(hands, hand))
            .Select(row => new ReachReport(
                Words.Of(row.Manner),
                ReachTable.NameOf(row.Semitones),
                row.Partly.Select(p => $"{ReachTable.NameOf(p.Semitones)} from {string.Join(", ", p.From)}")
                    .ToValueList()
            ));
        return new(own.SpanMm, own.IndexSpanMm, own.Without, own.LeapBitsPerSecond, own.StrokesPerSecond)
        {
            Reach = rows.ToValueList(),
        };
    }

    public static int CountedBars(Score score) => score.Bars.Count(bar => !bar.Implicit);

    /// <summary>Metre of most bars, the earlier of two.</summary>
    public static Metre MainMetre(Score score) =>
        score
            .Bars.Where(bar => !bar.Implicit || score.Bars.All(b => b.Implicit))
            .GroupBy(bar => bar.Metre)
            .MaxBy(bars => bars.Count())!
            .Key;

    private static HandEffortReport Part(HandEffort part) =>
        new(part.StrokesPerSecond, part.LeapBitsPerSecond, part.StrainedShare, part.MeanStretch)
        {
            Value = part.Value,
            Parts = part
                .Parts.Select(p => new EffortPartReport(Words.Of(p.Kind), EffortMessages.WordsOf(p.Kind), p.Points))
                .ToValueList(),
        };

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
