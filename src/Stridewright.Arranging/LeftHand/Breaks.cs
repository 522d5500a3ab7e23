namespace Stridewright.Arranging;

/// <summary>
/// Breaks from level 5 on: in the last bar of eight the left hand strikes the first bass and rests, where the right hand
/// is busy enough to be left alone and the harmony stays (common practice: breaks stand in bars 7–8 of a strain).
/// </summary>
internal static class Breaks
{
    private const int Level = 5;
    private const int OneIn = 3;
    public const int BusyOnsets = 4;

    // What the form silences, whatever the level.
    private static bool Sounds(Lattice lattice, LeftSlot slot)
    {
        var bar = lattice.Bars[slot.Bar];
        return bar.Treatment.Left switch
        {
            LeftManner.Silent => false,
            LeftManner.StopTime or LeftManner.Break => slot.Tick == bar.Start,
            _ => true,
        };
    }

    public static LeftSlot[] Apply(Stage stage, RightLine right, LeftSlot[] slots)
    {
        var lattice = stage.Lattice;
        slots = [.. slots.Where(s => Sounds(lattice, s))];
        if (stage.Brief.LeftLevel < Level || !lattice.IsDuple)
        {
            return slots;
        }
        var seed = stage.Seed(13);
        var silent = lattice
            .Bars.Select(
                (bar, index) =>
                    bar.StrainBar % 8 == 7
                    && !bar.EndsStrain
                    && index < lattice.Bars.Length - 1
                    && Variety.Mix(seed, bar.StrainBar) % OneIn == 0
                    && right.Notes.Count(n => n.Tick > bar.Start && n.Tick < bar.End) >= BusyOnsets
                    && !slots.Any(s => s.Bar == index && s.Changes && s.Tick > bar.Start)
            )
            .ToArray();
        return [.. slots.Where(s => !silent[s.Bar] || s.Tick == lattice.Bars[s.Bar].Start)];
    }
}
