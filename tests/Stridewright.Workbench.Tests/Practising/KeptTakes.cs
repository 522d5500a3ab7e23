using Stridewright.Workbench.Practising;

namespace Stridewright.Workbench.Tests.Practising;

/// <summary>Takes of a piece of ours, made up.</summary>
internal static class KeptTakes
{
    public static readonly KeptHearing Heard = new()
    {
        Asked = 100,
        Right = 90,
        Wrong = 6,
        Missing = 4,
        Extra = 2,
        Bars = 16,
        BarsNotPlayed = 0,
        QuartersPerMinute = 72,
        AskedQuartersPerMinute = 90,
        LeftUnevenness = 0.05,
    };

    /// <param name="day">Of March 2026; at nine.</param>
    public static KeptTake Of(ShelvedPlayer player, int day) =>
        new()
        {
            PlayerId = player.Id,
            PlayerName = player.Name,
            Title = "The Ferry Bell",
            At = new DateTimeOffset(2026, 3, day, 9, 0, 0, TimeSpan.Zero),
            Midi = [77, 84, 104, 100],
        };
}
