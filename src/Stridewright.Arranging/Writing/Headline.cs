using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What stands over a setting: its tempo direction and the line under its title.</summary>
internal static class Headline
{
    public static Direction Tempo(Feel feel, Metre metre, double tempo, NoteValue unit) =>
        new(ScoreTime.Zero)
        {
            Words = feel switch
            {
                Feel.Classic => "With a steady beat",
                Feel.Stride => "Swinging",
                Feel.Waltz when Feels.IsUsual(metre) => "Waltz time",
                Feel.SixEight when Feels.IsUsual(metre) => "March time",
                _ => "Steadily",
            },
            BeatsPerMinute = tempo,
            BeatUnit = unit,
            // The right hand's off-beat eighths: about 1.7 to 1 at moderate tempi, straighter when fast (common practice
            // of solo piano; drummers' ratios after Friberg and Sundström 2002 sound comic here).
            Swing =
                feel == Feel.Stride
                    ? tempo <= 180
                        ? (5, 3)
                        : tempo <= 220
                            ? (3, 2)
                            : (6, 5)
                    : null,
        };

    public static string Subtitle(Lattice lattice, Brief brief, bool hasNotes) =>
        (hasNotes ? "" : KeyName(lattice.Bars[0].Key) + ", ")
        + (hasNotes && brief.LeftHandOnly ? "left hand alone, " : "")
        + (brief.Singer is null ? "" : "accompaniment, ")
        + (
            lattice.Feel switch
            {
                Feel.Classic => "classic rag",
                Feel.Stride => "stride",
                Feel.Waltz => "rag waltz",
                _ => "six-eight march",
            }
        )
        + (
            brief.LeftLevel == brief.RightLevel || !hasNotes || brief.LeftHandOnly
                ? $", level {brief.LeftLevel}"
                : $", left hand level {brief.LeftLevel}, right hand level {brief.RightLevel}"
        );

    private static string KeyName(Key key) =>
        key.ToString().Replace("b", " flat", StringComparison.Ordinal).Replace("#", " sharp", StringComparison.Ordinal);
}
