using System.Globalization;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Lessons;

/// <summary>What a lesson says.</summary>
public static class LessonMessages
{
    internal const string Near = "near by",
        Wider = "wider",
        AsWritten = "as written",
        Slowly = "slowly",
        Quickly = "straight after",
        Tapped = "tapped, both hands",
        OnOneNote = "on one note",
        OuterNotes = "outer notes",
        ThumbAlone = "the thumb",
        TopAlone = "the fifth finger",
        CountAloud = "count aloud",
        OverTheLine = "over the join";

    internal const string WarmUpWords = "Slowly and softly, loose wrists",
        PlayThroughWords = "Straight on for pleasure, slowly; let slips go by",
        BreakWords = "Get up, shake out the hands";

    internal const string NoNotes = "the score has no notes, so there is nothing to learn";

    internal static string NotPlayable(int faults, string first) =>
        faults == 1
            ? $"these hands cannot play the piece as written: {first}; set it for them, or change that bar"
            : Text(
                $"these hands cannot play the piece as written, in {faults} places, first {first}; set it for them, or change those bars"
            );

    internal static string TakenSlower(double printed, double taken) =>
        Text($"at {printed:0} parts of it are too fast for these hands: the lesson leads to {taken:0}");

    internal static string IdOf(StepHands hands, int number) => Text($"{WordOf(hands)}-{number}");

    internal static string IdOf(DrillKind kind, int number) => Text($"{WordOf(kind)}-{number}");

    /// <summary>Such as <c>left</c>.</summary>
    public static string WordOf(StepHands hands) =>
        hands switch
        {
            StepHands.Left => "left",
            StepHands.Right => "right",
            _ => "together",
        };

    /// <summary>Such as <c>chord-change</c>.</summary>
    public static string WordOf(DrillKind kind) =>
        kind switch
        {
            DrillKind.Leap => "leap",
            DrillKind.Rhythm => "rhythm",
            DrillKind.ChordChange => "chord-change",
            DrillKind.Frame => "frame",
            DrillKind.Beat => "beat",
            DrillKind.MemoryJoin => "memory-join",
            DrillKind.PageTurn => "page-turn",
            _ => "join",
        };

    internal static string NameOf(StepKind kind, Score goal, BarRange bars) =>
        kind switch
        {
            StepKind.LeftInPlace => "Left hand in one register",
            StepKind.LeftSecondBass => "Left hand, second basses",
            StepKind.LeftStride => "Left hand, stride on single basses",
            StepKind.LeftOctaves => "Left hand, octaves",
            StepKind.LeftWhole => "Left hand as written",
            StepKind.RightPlain => "Right hand, the tune on the beat",
            StepKind.RightFirstFigures => "Right hand, the first off-beat figures",
            StepKind.RightUntied => "Right hand, off-beat figures",
            StepKind.RightTiedMid => "Right hand, ties inside the bar",
            StepKind.RightTiedBar => "Right hand, ties over the bar line",
            StepKind.RightPairs => "Right hand, thirds and sixths",
            StepKind.RightOctaves => "Right hand, octaves",
            StepKind.RightWhole => "Right hand as written",
            StepKind.TogetherStrain => $"Together, {Bars(goal, bars.First, bars.Last)}",
            StepKind.TogetherHalf => $"Together, {Bars(goal, bars.First, bars.Last)}",
            _ => "Together, the whole piece",
        };

    /// <summary>Of an easier step with both hands.</summary>
    internal static string NameOf(StepKind left, StepKind right) => $"Together, {InWords(left)}, {InWords(right)}";

    private static string InWords(StepKind kind) =>
        kind switch
        {
            StepKind.LeftInPlace => "left in one register",
            StepKind.LeftSecondBass => "left with second basses",
            StepKind.LeftStride => "left in stride",
            StepKind.LeftOctaves => "left in octaves",
            StepKind.LeftWhole => "left as written",
            StepKind.RightPlain => "right on the beat",
            StepKind.RightFirstFigures => "right with a figure",
            StepKind.RightUntied => "right off the beat",
            StepKind.RightTiedMid => "right with ties",
            StepKind.RightTiedBar => "right with all its rhythm",
            StepKind.RightPairs => "right in thirds and sixths",
            StepKind.RightOctaves => "right in octaves",
            _ => "right as written",
        };

    internal static string AimOf(StepKind kind, Metre metre) =>
        kind switch
        {
            StepKind.LeftInPlace => "The chords and their basses are known by hand before the hand has to leap.",
            StepKind.LeftSecondBass => "Root and fifth take turns, and the hand goes out an octave at most.",
            StepKind.LeftStride =>
                "The fifth finger finds every bass where it is written, and the beat never waits for it.",
            StepKind.LeftOctaves => "The thumb joins the fifth finger in octaves; the way out stays the same.",
            StepKind.LeftWhole =>
                "The left hand goes through the piece without the other, in time and without looking.",
            StepKind.RightPlain => "The tune is in the ear and the fingers before it goes against the beat.",
            StepKind.RightFirstFigures => "One figure that returns goes against the beat; all else is still on it.",
            StepKind.RightUntied =>
                "The short-long-short figure sits inside the half bar, with the beat felt under its long note.",
            StepKind.RightTiedMid when metre.Count == 3 =>
                "The tune is held over a beat, which is felt and not struck.",
            StepKind.RightTiedMid => "The tune is held over the middle of the bar, which is felt and not struck.",
            StepKind.RightTiedBar => "The tune is held over the bar line; its rhythm is now the piece's own.",
            StepKind.RightPairs => "Thirds and sixths go under the tune, and the top note stays the louder one.",
            StepKind.RightOctaves => "Octaves are struck from one frame of the hand, with a loose wrist.",
            StepKind.RightWhole => "The right hand goes through the piece without the other, tune above all else.",
            StepKind.TogetherEasy => "Both hands are in time with each other while each is still easy.",
            StepKind.TogetherStrain => "Of the strains as written the hardest comes first, while the head is fresh.",
            StepKind.TogetherHalf => "The hard part grows into its half of the piece.",
            _ => "The piece: the new half by itself, then all of it.",
        };

    internal static string StepSubtitle(string name, TempoRange tempo, double test) =>
        Text($"{name}: {tempo.From:0} to {test:0}");

    internal static string SkippedDone(MoveOn test) =>
        Text($"{test.CleanTakes} clean takes in a row at {test.BeatsPerMinute:0} are there");

    internal static string SkippedByTake(string take, string step) =>
        $"{take} is clean at the tempo of its test, in a later step ({Lower(step)})";

    internal static string SkippedByLeaps(double rate, double limit) =>
        Text(
            $"this left hand was measured at {limit:0.0} bits a second, and the piece's leaps ask for {rate:0.0}: it needs no practice without them"
        );

    internal static string Heard(string take, string step, double share, double beats, bool isWhole) =>
        Text(
            $"{take}: {Lower(step)}{(isWhole ? "" : ", in part")}, {100 * share:0} % right{(beats > 0 ? Text($" at {beats:0}") : "")}"
        );

    internal static string HeardNothing(string take) => $"{take}: no step of this piece was found in it";

    internal static string NameOf(DrillKind kind, Score goal, ValueList<int> bars) =>
        kind switch
        {
            DrillKind.Leap => $"A leap from {Bars(goal, bars[0], bars[0])}",
            DrillKind.Rhythm => $"The rhythm of {Bars(goal, bars[0], bars[^1])}",
            DrillKind.ChordChange => $"A change of chord from {Bars(goal, bars[0], bars[0])}",
            DrillKind.Frame => $"The hand's frame in {Bars(goal, bars[0], bars[^1])}",
            DrillKind.Beat => $"The left hand's beat in {Bars(goal, bars[0], bars[^1])}",
            DrillKind.MemoryJoin => $"From strain to strain, {Bars(goal, bars[0], bars[^1])}",
            DrillKind.PageTurn => $"Over the page turn, {Bars(goal, bars[0], bars[^1])}",
            _ => $"Over the join, {Bars(goal, bars[0], bars[^1])}",
        };

    /// <summary>A drill whose name another one has.</summary>
    internal static string Another(string name, int number) => Text($"{name} ({number})");

    internal static string LeapClaim(Score goal, StrokePair pair) =>
        Text(
            $"{Keys(pair.From.Pitches)} and {Keys(pair.To.Pitches)}, {pair.Move.Semitones} semitones apart: {Times(pair.Bars.Count)}, first in {Bars(goal, pair.Bars[0], pair.Ends)}, at the quickest in {pair.Seconds:0.00} s"
        );

    internal static string ChangeClaim(Score goal, StrokePair pair) =>
        Text(
            $"{Keys(pair.From.Pitches)} to {Keys(pair.To.Pitches)}, {Times(pair.Bars.Count)}, first in bar {goal.Bars[pair.Bars[0]].Number}"
        );

    internal static string RhythmClaim(Score goal, int first, int last, IReadOnlyList<SyncopationKind> kinds)
    {
        string Of(SyncopationKind kind, string words) =>
            kinds.Count(k => k == kind) is > 0 and var n ? Text($"{n} {words}") : "";
        string[] parts =
        [
            Of(SyncopationKind.Untied, "untied"),
            Of(SyncopationKind.OverMid, "tied inside the bar"),
            Of(SyncopationKind.OverBar, "tied over the bar line"),
        ];
        var what = string.Join(", ", parts.Where(p => p.Length > 0));
        return $"{Bars(goal, first, last)}: {(kinds.Count == 1 ? "syncopation" : "syncopations")}, {what}";
    }

    internal static string FrameClaim(Score goal, int first, int last, int chords, int inner) =>
        Text(
            $"{Bars(goal, first, last)}: {chords} {(chords == 1 ? "time two notes or more together" : "times two notes or more together")}{(inner > 0 ? Text($", {inner} inner {(inner == 1 ? "note" : "notes")}") : "")}"
        );

    internal static string BeatClaim(Score goal, int first, int last) => $"{Bars(goal, first, last)}, left hand alone";

    internal static string JoinClaim(Score goal, int bar) =>
        $"bar {goal.Bars[bar - 1].Number} into bar {goal.Bars[bar].Number}";

    internal static ValueList<string> HowTo(DrillKind kind) =>
        kind switch
        {
            DrillKind.Leap =>
            [
                "Land on the second place without sounding it; look only to check.",
                "Then sound both: slowly, and one straight after the other, hand low over the keys.",
                "On to the next, as written at last, when three in a row land; eyes on the page for the last three.",
            ],
            DrillKind.Rhythm =>
            [
                "Tap both hands on the lid, counting aloud; the held note is felt on the beat, not struck.",
                "On one note over the left hand, then as written.",
            ],
            DrillKind.ChordChange =>
            [
                "Feel the second shape on the keys before it sounds.",
                "Slowly, then one right after the other; move what moves least last.",
            ],
            DrillKind.Frame =>
            [
                "Set the outer notes as one frame and carry it; wrist loose between.",
                "Then as written, the top note the loudest.",
            ],
            DrillKind.Beat =>
            [
                "Alone with the beat counted aloud; chords lighter than basses.",
                "Then without counting, and record it.",
            ],
            DrillKind.PageTurn =>
            [
                "From memory over the turn, so that either hand can be spared.",
                "Then with the turn, in time.",
            ],
            DrillKind.MemoryJoin =>
            [
                "Say what comes next before playing it.",
                "Begin before the join, each time; three in a row from memory.",
            ],
            _ =>
            [
                "From the beat before the place, over it, and on.",
                "One bar more on either side when three in a row go through.",
            ],
        };

    /// <param name="most">What makes most of the effort.</param>
    internal static string Why(DrillKind kind, double effort, EffortKind most, ValueList<RemarkKind> heard) =>
        heard.Count > 0
            ? $"takes show here: {string.Join(", ", heard.Select(WordOf))}."
            : kind switch
            {
                DrillKind.MemoryJoin => "strains that are learned apart come apart at their joins.",
                DrillKind.PageTurn => "the page is turned here.",
                _ => Text($"effort {effort:0} of 100 here, above all for {EffortMessages.WordsOf(most)}."),
            };

    /// <summary>A kind of remark in a few words.</summary>
    public static string WordOf(RemarkKind kind) =>
        kind switch
        {
            RemarkKind.WrongNotes => "wrong notes",
            RemarkKind.MissingNotes => "missing notes",
            RemarkKind.ExtraNotes => "extra notes",
            RemarkKind.Leap => "a leap missed",
            RemarkKind.Unevenness => "an uneven left hand",
            RemarkKind.Drift => "a drifting tempo",
            RemarkKind.Flattened => "syncopation on the beat",
            RemarkKind.TooEarly => "syncopation too early",
            RemarkKind.Swing => "swing",
            RemarkKind.Spread => "chords not together",
            RemarkKind.Hesitation => "a hesitation",
            _ => "chords over the tune",
        };

    internal static string StepWords(int day) =>
        day == 1
            ? "Four bars, then eight; three clean, then the next tempo"
            : "Three clean in a row, then the next tempo; two slips, back a tenth";

    /// <param name="take">Minutes of one take.</param>
    /// <param name="minutes">There are for it now.</param>
    internal static string TestWords(MoveOn test, double take, int minutes) =>
        Text($"Its test: {test.CleanTakes} clean in a row at {test.BeatsPerMinute:0}, recorded")
        + (take * test.CleanTakes > minutes ? "; go on with it each time" : "");

    internal static string ReviewWords(double take, int minutes) =>
        2 * take <= minutes ? "Learned already: twice from memory"
        : take <= minutes ? "Learned already: once from memory"
        : "Learned already: a strain or two from memory";

    /// <param name="isAhead">Its notes belong to a step that is still to come.</param>
    internal static string DrillWords(DrillKind kind, bool isAhead) =>
        kind switch
        {
            DrillKind.Rhythm when isAhead => "Tap only, and on one note; its notes come in a later step",
            DrillKind.Leap when isAhead => "From near by only; the wide ones come with the next step",
            DrillKind.Leap => "Land, do not look; slow and quick in turn",
            DrillKind.Rhythm => "Tap, then one note, then as written",
            DrillKind.ChordChange => "Shape first, then sound",
            DrillKind.Frame => "One frame, loose wrist",
            DrillKind.Beat => "Counting aloud",
            _ => "From before it, from memory",
        };

    /// <summary>Such as <c>quarter</c>.</summary>
    public static string BeatName(NoteValue beat)
    {
        var part = beat.Part switch
        {
            1 => "whole",
            2 => "half",
            4 => "quarter",
            8 => "eighth",
            _ => Text($"1/{beat.Part}"),
        };
        return beat.Dots > 0 ? "dotted " + part : part;
    }

    /// <summary>Printed numbers of bars, such as <c>bars 5 to 8</c>.</summary>
    public static string Bars(Score goal, int first, int last)
    {
        ArgumentNullException.ThrowIfNull(goal);
        // What is not counted, a pick-up or part of a split bar, is not named where a counted bar is there.
        var counted = Enumerable.Range(first, last - first + 1).Where(i => !goal.Bars[i].Implicit).ToList();
        var (from, to) =
            counted is [var low, .., var high] ? (low, high)
            : counted is [var only] ? (only, only)
            : (first, last);
        var (a, b) = (goal.Bars[from].Number, goal.Bars[to].Number);
        return a == b ? "bar " + a : $"bars {a} to {b}";
    }

    private static string Keys(ValueList<Pitch> pitches) =>
        string.Join(" ", pitches.Select(p => p.ToString().Replace('#', '♯').Replace('b', '♭')));

    private static string Times(int count) =>
        count switch
        {
            1 => "once",
            2 => "twice",
            _ => Text($"{count} times"),
        };

    private static string Lower(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
