using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Puts the manners that a brief asks for onto fitting bars, in turn by the phrase of four bars; what the form
/// asked for stands.</summary>
internal static class Devising
{
    private const int Phrase = 4;

    public static Piece Apply(Piece piece, Brief brief)
    {
        if (brief.LeftManners.Count + brief.RightManners.Count == 0)
        {
            return piece;
        }
        var bars = piece.Tune.Bars;
        var pickUp = bars.Count > 1 && bars[0].Length < bars[0].Metre.BarLength ? 1 : 0;
        return piece with
        {
            Treatments = piece.Treatments.Select((t, i) => Asked(t, i - pickUp, i == bars.Count - 1)).ToValueList(),
        };

        Treatment Asked(Treatment treatment, int bar, bool isLast)
        {
            if (bar < 0)
            {
                return treatment;
            }
            var phrase = bar / Phrase;
            if (
                brief.LeftManners.Count > 0
                && treatment.Left == LeftManner.Stride
                && brief.LeftManners[phrase % brief.LeftManners.Count] is var left
                && !isLast
                && Fits(left, bar % Phrase)
            )
            {
                treatment = treatment with { Left = left };
            }
            if (brief.RightManners.Count > 0 && treatment.Right == RightManner.Ragged && !isLast)
            {
                treatment = treatment with { Right = brief.RightManners[phrase % brief.RightManners.Count] };
            }
            return treatment;
        }
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
}
