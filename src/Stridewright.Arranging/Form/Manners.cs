namespace Stridewright.Arranging;

/// <summary>The words for what each hand may be asked to do: the one table of them, for the command line and for forms.</summary>
public static class Manners
{
    /// <summary>Every manner of the left hand with its word.</summary>
    public static IReadOnlyDictionary<string, LeftManner> Left { get; } =
        new Dictionary<string, LeftManner>(StringComparer.Ordinal)
        {
            ["stride"] = LeftManner.Stride,
            ["walking-octaves"] = LeftManner.WalkingOctaves,
            ["walking-tenths"] = LeftManner.WalkingTenths,
            ["chromatic-approach"] = LeftManner.ChromaticApproach,
            ["back-beat-tenths"] = LeftManner.BackBeatTenths,
            ["broken-tenths"] = LeftManner.BrokenTenths,
            ["contrary-run"] = LeftManner.ContraryRun,
            ["low-pedal"] = LeftManner.LowPedal,
            ["cadence-figure"] = LeftManner.CadenceFigure,
            ["stop-time"] = LeftManner.StopTime,
            ["break"] = LeftManner.Break,
            ["left-silent"] = LeftManner.Silent,
        };

    /// <summary>Every manner of the right hand with its word; no word stands in both tables.</summary>
    public static IReadOnlyDictionary<string, RightManner> Right { get; } =
        new Dictionary<string, RightManner>(StringComparer.Ordinal)
        {
            ["ragged"] = RightManner.Ragged,
            ["plain"] = RightManner.Plain,
            ["thirds"] = RightManner.Thirds,
            ["sixths"] = RightManner.Sixths,
            ["octaves"] = RightManner.Octaves,
            ["full-octaves"] = RightManner.FullOctaves,
            ["call"] = RightManner.Call,
            ["crushed-notes"] = RightManner.CrushedNotes,
            ["fills-only"] = RightManner.FillsOnly,
            ["answer"] = RightManner.Answer,
            ["thumb-tune"] = RightManner.ThumbTune,
            ["obbligato"] = RightManner.Obbligato,
            ["three-against-four"] = RightManner.ThreeAgainstFour,
            ["parallel-run"] = RightManner.ParallelRun,
            ["tremolo"] = RightManner.Tremolo,
            ["right-silent"] = RightManner.Silent,
        };

    /// <summary>The first level that has a manner of its own accord (design: tables of levels).</summary>
    internal static int LevelOf(LeftManner manner) =>
        manner switch
        {
            LeftManner.Stride or LeftManner.Silent => 1,
            LeftManner.LowPedal => 3,
            LeftManner.ChromaticApproach or LeftManner.CadenceFigure or LeftManner.ContraryRun => 4,
            LeftManner.WalkingOctaves or LeftManner.Break => 5,
            _ => 6,
        };

    /// <inheritdoc cref="LevelOf(LeftManner)"/>
    internal static int LevelOf(RightManner manner) =>
        manner switch
        {
            RightManner.Ragged or RightManner.Plain or RightManner.FillsOnly or RightManner.Silent => 1,
            RightManner.Call => 3,
            RightManner.Thirds or RightManner.Sixths => 4,
            RightManner.Octaves => 5,
            _ => 6,
        };
}
