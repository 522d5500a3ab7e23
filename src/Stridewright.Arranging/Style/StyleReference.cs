namespace Stridewright.Arranging;

/// <summary>
/// Published style: piano rags in open kern encodings, counted as <see cref="StyleMeasure"/> counts. In 2/4 on the
/// sixteenth grid, 34 rags of 1899–1917; in 4/4 and 2/2 on the eighth grid, 160 pieces of 1897–1920.
/// </summary>
internal static class StyleReference
{
    public const string InTwo = "34 published piano rags in 2/4, 1899–1917, 3001 bars";
    public const string InFour = "160 published pieces in 4/4 or 2/2, 1897–1920, 18047 bars";

    /// <summary>Values by key of the figure.</summary>
    public static IReadOnlyDictionary<string, double[]> Of(bool inTwo) => inTwo ? Two : Four;

    private static readonly Dictionary<string, double[]> Two = new()
    {
        ["untied_bars"] = [0.209],
        ["tied_mid_bars"] = [0.234],
        ["tied_bar_bars"] = [0.044],
        ["any121_bars"] = [0.459],
        ["held_bars"] = [0.504],
        ["lag_1"] = [0.123],
        ["lag_2"] = [0.186],
        ["lag_3"] = [0.063],
        ["lag_4"] = [0.212],
        ["lag_8"] = [0.268],
        ["lag_16"] = [0.078],
        ["chance"] = [0.081],
        ["half_1111"] = [0.226],
        ["half_0111"] = [0.130],
        ["half_1000"] = [0.119],
        ["half_1101"] = [0.108],
        ["half_1010"] = [0.107],
        ["half_1011"] = [0.078],
        ["half_0110"] = [0.062],
        ["half_0010"] = [0.035],
        ["half_0000"] = [0.033],
        ["half_1001"] = [0.032],
        ["half_1110"] = [0.029],
        ["half_0101"] = [0.016],
        ["half_0011"] = [0.014],
        ["half_1100"] = [0.006],
        ["half_0001"] = [0.004],
        ["half_0100"] = [0.001],
        ["top"] = [65, 71, 75, 79, 86],
        ["lowest"] = [62, 67, 72, 76, 82],
        ["single"] = [0.583],
        ["two_note"] = [0.163],
        ["block"] = [0.094],
        ["octave"] = [0.080],
        ["octave_inner"] = [0.079],
        ["single_stays"] = [0.78],
        ["two_note_stays"] = [0.50],
        ["octave_stays"] = [0.53],
        ["octave_inner_stays"] = [0.55],
        ["block_stays"] = [0.41],
        ["bass"] = [36, 41, 46, 50, 58],
        ["chord_low"] = [50, 53, 55, 56, 58],
        ["chord_high"] = [59, 61, 63, 64, 66],
        ["leap_up"] = [3, 7, 10, 12, 19],
        ["strict"] = [0.437],
        ["loose"] = [0.521],
    };

    private static readonly Dictionary<string, double[]> Four = new()
    {
        ["untied_bars"] = [0.178],
        ["tied_mid_bars"] = [0.142],
        ["tied_bar_bars"] = [0.022],
        ["any121_bars"] = [0.331],
        ["half_1010"] = [0.226],
        ["half_1111"] = [0.137],
        ["half_1000"] = [0.107],
        ["half_1101"] = [0.096],
        ["half_0010"] = [0.078],
        ["half_1011"] = [0.074],
        ["half_0111"] = [0.072],
    };
}
