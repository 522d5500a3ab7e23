namespace Stridewright.Arranging;

/// <summary>
/// Short-long-short figures on the bar of eight units, a bit a unit, the highest first. The exact detector is that of
/// Kirlin's corpus study (ISMIR 2020): 1101 in either half is untied; 1101 on the third to sixth unit is tied over
/// mid-bar; 11 before and 01 after the bar line is tied over it.
/// </summary>
internal static class Figures
{
    /// <summary>Untied, tied over mid-bar and tied over the bar line, in one bar.</summary>
    /// <param name="pattern">The bar's eight bits.</param>
    /// <param name="next">The next bar's eight bits.</param>
    public static (int Untied, int TiedMid, int TiedBar) In(int pattern, int next)
    {
        var untied = (pattern >> 4 == 0b1101 ? 1 : 0) + ((pattern & 0b1111) == 0b1101 ? 1 : 0);
        var mid = (pattern >> 2 & 0b1111) == 0b1101 ? 1 : 0;
        var line = (pattern & 0b11) == 0b11 && next >> 6 == 0b01 ? 1 : 0;
        return (untied, mid, line);
    }

    /// <summary>Struck units of every full duple bar; −1 for other bars.</summary>
    public static int[] Patterns(Lattice lattice, RightOnset[] onsets)
    {
        const int full = 8 * Lattice.TicksPerUnit;
        var patterns = lattice.Bars.Select(b => b.IsShort || b.Length != full || !lattice.IsDuple ? -1 : 0).ToArray();
        foreach (var onset in onsets.Where(o => o.Tick >= 0 && lattice.IsOnGrid(o.Tick)))
        {
            var bar = lattice.BarAt(onset.Tick);
            if (patterns[bar] >= 0)
            {
                patterns[bar] |= 1 << (7 - (onset.Tick - lattice.Bars[bar].Start) / Lattice.TicksPerUnit);
            }
        }
        return patterns;
    }

    /// <summary>Per bar: something is struck there that the tune does not have, or elsewhere than the tune has it.</summary>
    public static bool[] Ragged(Lattice lattice, RightOnset[] onsets)
    {
        var ragged = new bool[lattice.Bars.Length];
        foreach (var onset in onsets.Where(o => o.Tick >= 0))
        {
            ragged[lattice.BarAt(onset.Tick)] |= onset.IsFiller || onset.Tick != lattice.Notes[onset.Tune].Start;
        }
        return ragged;
    }

    /// <summary>Share of full duple bars with a figure; 0 where there are none.</summary>
    public static double Share(int[] patterns)
    {
        int bars = 0,
            with = 0;
        for (var i = 0; i < patterns.Length; i++)
        {
            if (patterns[i] < 0)
            {
                continue;
            }
            bars++;
            var (untied, mid, line) = In(
                patterns[i],
                i + 1 < patterns.Length && patterns[i + 1] >= 0 ? patterns[i + 1] : 0xFF
            );
            with += untied + mid + line > 0 ? 1 : 0;
        }
        return bars == 0 ? 0 : (double)with / bars;
    }
}
