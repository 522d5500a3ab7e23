namespace Stridewright.Arranging;

/// <summary>Puts the manners that a brief asks for onto fitting bars, in turn by the phrase of four bars, counted anew in
/// every strain; what the form asked for stands.</summary>
internal static class Devising
{
    private const int Phrase = 4;

    public static Lattice Apply(Lattice lattice, Brief brief)
    {
        if (brief.LeftManners.Count + brief.RightManners.Count == 0)
        {
            return lattice;
        }
        var phrase = -1;
        var asked = lattice
            .Bars.Select(
                (bar, i) =>
                {
                    phrase += bar.StartsPhrase ? 1 : 0;
                    return bar.StrainBar < 0 || i == lattice.Bars.Length - 1
                        ? bar
                        : bar with
                        {
                            Treatment = Asked(lattice, i, Math.Max(0, phrase), brief),
                        };
                }
            )
            .ToArray();
        return lattice with { Bars = asked };
    }

    private static Treatment Asked(Lattice lattice, int index, int phrase, Brief brief)
    {
        var bar = lattice.Bars[index];
        var (treatment, place) = (bar.Treatment, bar.StrainBar % Phrase);
        if (
            brief.LeftManners.Count > 0
            && treatment.Left == LeftManner.Stride
            && brief.LeftManners[phrase % brief.LeftManners.Count] is var left
            && (left == LeftManner.CadenceFigure ? CadenceAt(lattice, index) : Fits(left, place))
        )
        {
            treatment = treatment with { Left = left };
        }
        if (
            brief.RightManners.Count > 0
            && treatment.Right == RightManner.Ragged
            && brief.RightManners[phrase % brief.RightManners.Count] is var right
            && Fits(right, place)
        )
        {
            treatment = treatment with { Right = right };
        }
        return treatment;
    }

    // Where in its phrase a manner stands: what leads on at the end, what stays at the beginning or in the middle.
    private static bool Fits(LeftManner manner, int bar) =>
        manner switch
        {
            LeftManner.Stride => false,
            LeftManner.LowPedal => bar < 2,
            LeftManner.BrokenTenths or LeftManner.BackBeatTenths => bar is 1 or 2,
            LeftManner.StopTime => true,
            LeftManner.ChromaticApproach => bar is 1 or 3,
            _ => bar == Phrase - 1,
        };

    // Three bars of two beats hold eight groups of three whole; the fourth is the cadence.
    private static bool Fits(RightManner manner, int bar) =>
        manner switch
        {
            RightManner.ParallelRun => bar == Phrase - 1,
            RightManner.ThreeAgainstFour => bar < Phrase - 1,
            _ => true,
        };

    // Before a bar on the tonic, in the second half of its phrase, the earlier of two.
    private static bool CadenceAt(Lattice lattice, int index) =>
        MannerShapes.LeadsHome(lattice, index)
        && (
            lattice.Bars[index].StrainBar % Phrase == 2
            || lattice.Bars[index].StrainBar % Phrase == 3 && !MannerShapes.LeadsHome(lattice, index - 1)
        );
}
