using System.Globalization;
using Stridewright.Arranging;
using Stridewright.Hands;

namespace Stridewright.Workbench.Shelves;

/// <summary>A brief that was kept, parted into what a page has words for and what only the file says.</summary>
internal static class BriefTold
{
    /// <summary>What a page can say. A brief read from these on top of <see cref="Rest"/> is the same again.</summary>
    public static Wishes Wishes(Brief brief) =>
        new()
        {
            Feel = brief.Feel is { } feel ? BriefWords.Feels.WordOf(feel) : null,
            LeftLevel = brief.LeftLevel,
            RightLevel = brief.RightLevel,
            Raggedness = brief.Raggedness,
            Key = brief.Tonic?.ToString(),
            BeatsPerMinute = brief.BeatsPerMinute,
            Span = IsPlain(brief.Hands) ? brief.Hands.SpanMm.ToString(CultureInfo.InvariantCulture) : null,
            NoOctaves = IsPlain(brief.Hands) && brief.Hands.NoOctaves,
            LeftHandOnly = brief.LeftHandOnly,
            Lyrics = brief.Lyrics,
            ShowPlain = brief.ShowPlain,
            Harmony = BriefWords.Richnesses.WordOf(brief.Harmony.Richness),
            Form = brief.Form is not { } form
                ? brief.Seconds is null
                    ? "plain"
                    : null
                : form == FormLine.Usual
                    ? brief.Seconds is null
                        ? form.ToString()
                        : null
                    : form.ToString(),
            Minutes = brief.Seconds is { } seconds ? Minutes(seconds) : null,
            Seed = brief.Seed,
        };

    /// <summary>What only the file says: hands beyond a span, ways of playing, kept bars and more.</summary>
    /// <param name="wishes">What the page says now. Hands of its own go before the file's altogether.</param>
    public static Brief Rest(Brief brief, Wishes wishes) =>
        brief with
        {
            Feel = null,
            Tonic = null,
            BeatsPerMinute = null,
            Form = null,
            Seconds = null,
            LeftHandOnly = false,
            Lyrics = false,
            ShowPlain = false,
            Hands = (wishes.Span ?? wishes.Player ?? wishes.PlayerText) is null ? brief.Hands : new PlayerHands(),
        };

    private static bool IsPlain(PlayerHands hands) =>
        hands == new PlayerHands { NoOctaves = hands.NoOctaves }.WithSpan(hands.SpanMm);

    private static string Minutes(double seconds) =>
        seconds % 60 != 0 && seconds % 1 == 0
            ? string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(seconds / 60)}:{seconds % 60:00}")
            : (seconds / 60).ToString(CultureInfo.InvariantCulture);
}
