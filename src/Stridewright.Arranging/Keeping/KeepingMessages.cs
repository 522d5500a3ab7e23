using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Every sentence about kept bars.</summary>
internal static class KeepingMessages
{
    public static string NoBar(int bar, int bars) =>
        Invariant($"bar number {bar + 1} of the setting is kept, but the setting has {bars}; release it");

    public static string KeptTwice(Hand hand) => $"the {Word(hand)} hand of this bar is kept twice";

    public static string OutsideBar(ScoreTime at, ScoreTime length) =>
        Invariant($"a kept note stands at {at} of a whole note, but the bar lasts {length}; release the bar");

    public static string OffTheGrid(ScoreTime at, ScoreTime tick) =>
        Invariant($"a kept note stands at {at} of a whole note, between the steps of {tick} that a setting is made of");

    public static string StruckTwice(ScoreTime at) =>
        Invariant(
            $"two kept notes of one hand begin at {at} of a whole note with different lengths; write them as one chord"
        );

    public static string OutOfOrder(ScoreTime at) =>
        Invariant($"the kept notes are not in the order of time: see the one at {at} of a whole note");

    public static string TuneInThumb =>
        "the left hand has the tune in its thumb here and cannot be kept by itself; keep the right hand";

    public static string NoKeys(ScoreTime at) =>
        Invariant($"the kept note at {at} of a whole note has no keys, or no length");

    public static string NotTheTune(ScoreTime at, Pitch top) =>
        Invariant(
            $"{top} at {at} of a whole note is kept as a note of the tune, but the tune has another there (was the key changed?); release the bar"
        );

    public static string NotBoth => "only a setting of both hands can be edited bar by bar";

    public static string OtherBars(int edited, int before) =>
        Invariant(
            $"the edited score has {edited} bars and the setting {before}: bars can be rewritten, not added or taken out; ask for another form"
        );

    public static string OtherLength(ScoreTime edited, ScoreTime before) =>
        Invariant($"the bar lasts {edited} of a whole note in the edited score and {before} in the setting");

    public static string InTwoBars(ScoreTime at, Pitch top) =>
        Invariant(
            $"{top} at {at} of a whole note is a note of the tune that another kept bar strikes too; release one of them"
        );

    public static string AsKept(string why) => why + "; the bar is kept: release it, or write it otherwise";

    public static string LeftOut(int notes) =>
        notes == 1
            ? "one note of the tune is left out by a kept bar"
            : Invariant($"{notes} notes of the tune are left out by kept bars");

    private static string Word(Hand hand) => hand == Hand.Left ? "left" : "right";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
