using System.Globalization;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Every sentence of the arranger.</summary>
internal static class ArrangingMessages
{
    public static string FeelDoesNotFit(Feel feel, Metre metre) =>
        $"a tune in {metre} cannot be set as {Words.Of(feel)}; leave the feel out, or choose {Suggestion(metre)}";

    public static string NoNotes => "the tune has neither notes nor chords to set";

    public static string NoNotesButChords => "the tune has no notes: the left hand is set alone, over its chords";

    public static string ChordsFound => "the tune has no chord symbols; they were found from its notes";

    public static string HarmonyChanged(HarmonyChange change) =>
        $"{change.After} for {change.Before}: "
        + change.Kind switch
        {
            HarmonyChangeKind.SecondaryDominant => "the next chord's own dominant seventh leads to it",
            HarmonyChangeKind.CircleOfFifths => "two more steps of the circle of fifths before the dominant",
            HarmonyChangeKind.PassingDiminished => "a diminished seventh a semitone under the next bass",
            HarmonyChangeKind.CommonToneDiminished => "the diminished seventh on the same root, and back",
            HarmonyChangeKind.MinorSubdominant => "the subdominant turns minor on its way home",
            HarmonyChangeKind.StrainEnding => "the strain ends over a raised fourth degree",
            HarmonyChangeKind.TwoFive => "the second degree before the dominant",
            HarmonyChangeKind.Tritone => "the dominant seventh a tritone away",
            HarmonyChangeKind.Turnaround => "a turnaround leads back to the beginning",
            HarmonyChangeKind.Pedal => "the tonic stays in the bass",
            _ => "the bass goes down by step",
        };

    public static string BarOfTune(string bar) => $"{bar} of the tune";

    public static string OtherMetre(Metre metre) =>
        $"{metre} is no usual metre of this music: bass on the strong beats, chord on the weak ones";

    public static string Recast(ScoreTime scale) =>
        scale == ScoreTime.Whole
            ? "the tune keeps its note values"
            : $"the tune's note values are multiplied by {scale}, so that it leaves room for ragging";

    public static string Moved(Interval interval) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the tune was moved by {interval.Semitones} semitones into the right hand's best register or the key wanted"
        );

    public static string Straightened(int notes) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{notes} off-beat notes of the tune were put back on the beat before it was ragged"
        );

    public static string FellBack(MannerFallen fallen) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{fallen.Word}: {fallen.Bars.Count} of {fallen.Asked} bars are not played as asked (bar {string.Join(", ", fallen.Bars)}); tune, harmony, hands or tempo leave no room there"
        );

    public static string PutElsewhere(int notes) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{notes} notes of the tune lie under a line of the same hand or in the left thumb, as asked"
        );

    /// <param name="slower">Tempo at which it would do; null: none was found.</param>
    public static string AboveCeiling(double ceiling, double least, double? slower) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"an effort of {ceiling:0.#} is too little for this tune in these hands: its easiest setting asks {least:0.#} of 100{(slower is { } beats ? $" (at tempo {beats:0} it would do)" : "")}; allow more, or take a slower tempo"
        );

    public static string Conceded(Ease ease, IReadOnlyList<string> bars, double ceiling) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{ConcededWord(ease)} given up to stay within an effort of {ceiling:0.#}: {BarList(bars)}"
        );

    private static string ConcededWord(Ease ease) =>
        ease switch
        {
            Ease.Tenths => "tenths",
            Ease.InnerNotes => "inner notes of the right hand",
            Ease.Octaves => "octaves",
            _ => "second notes of the right hand",
        };

    public static string ForHands(LimitKind kind, IReadOnlyList<string> bars) =>
        (
            kind switch
            {
                LimitKind.TenthRolled => "tenths rolled, these hands do not span them",
                LimitKind.OctaveOut => "octaves left single, out of these hands' reach",
                LimitKind.OctaveStrained => "octaves left single, they strain these hands",
                LimitKind.OctaveLeap => "octaves left single, the leap is too fast for these hands",
                _ => "octaves left single, as wished",
            }
        )
        + ": "
        + BarList(bars);

    public static string ForHands(Ease ease, IReadOnlyList<string> bars) =>
        (
            ease switch
            {
                Ease.InnerNotes => "inner notes the right hand would have at usual hands, left out for these",
                Ease.Octaves => "octaves the right hand would have at usual hands, left out for these",
                _ => "second notes the right hand would have at usual hands, left out for these",
            }
        )
        + ": "
        + BarList(bars);

    private static string BarList(IReadOnlyList<string> bars) =>
        (bars.Count == 1 ? "bar " : "bars ") + string.Join(", ", bars);

    public static string LostNotes(int count) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} notes too close to their neighbours were left out");

    public static string Slower(double wanted, double printed) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"printed tempo {printed:0} instead of {wanted:0}: the leaps ask for it"
        );

    public static string Thinned(IReadOnlyList<string> bars) =>
        "the right hand was thinned to single notes so that it can be played: " + BarList(bars);

    public static string StrainPrice(long factor) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"strained shapes were priced {factor} times higher to keep them rare"
        );

    public static string Unplayable(Fault fault) =>
        fault.Message + "; a slower tempo, fewer octaves or a lower level may help";

    public const string BeyondTheKeys =
        "the tune is so wide that here it leaves the piano's keys, wherever it is put; check the octave of these notes";

    public static string TooLong(int bars, int most) =>
        string.Create(CultureInfo.InvariantCulture, $"the tune has {bars} bars; at most {most} can be set");

    public static string TooMuch(int notes, int mostNotes, double wholes, int mostWholes) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"the tune has {notes} notes and lasts {wholes:0} whole notes; at most {mostNotes} notes in {mostWholes} whole notes can be set"
        );

    private static string Suggestion(Metre metre) =>
        Feels.IsDuple(metre) ? "classic or stride" : Words.Of(Feels.For(metre));
}
