using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What of a piece is sung: everything but the arranger's own bars.</summary>
internal static class SungPiece
{
    /// <summary>The piano leaves the tune to the voice, and fills; its own bars it plays as ever.</summary>
    public static Piece Accompanied(this Piece piece) =>
        piece with
        {
            Treatments = piece
                .Treatments.Select(t =>
                    t.IsAdded || t.Right == RightManner.Silent ? t : t with { Right = RightManner.FillsOnly }
                )
                .ToValueList(),
        };

    /// <summary>A form in which nothing is lifted: a voice stays in its octave.</summary>
    public static FormLine? InOneOctave(FormLine? form) =>
        form is null
            ? null
            : form with
            {
                Parts = form.Parts.Select(p => p with { Treatment = p.Treatment with { Lift = 0 } }).ToValueList(),
            };

    /// <summary>A form of our own choice for a voice: nothing is lifted, and it stays in its key.</summary>
    public static FormLine? InOneKey(FormLine? form) =>
        InOneOctave(form) is not { } line
            ? null
            : line with
            {
                Parts = line
                    .Parts.Select(p => p.Kind == PartKind.Trio ? p with { Kind = PartKind.Strain } : p)
                    .ToValueList(),
            };

    /// <summary>The tune with the voice's notes only; the pick-up in an added bar is sung.</summary>
    public static Tune Sung(this Piece piece) =>
        piece.Tune with
        {
            Bars = piece
                .Tune.Bars.Select(
                    (b, i) =>
                        piece.Treatments[i] is { IsAdded: true, PickUpAt: var at }
                            ? b with
                            {
                                Notes = b.Notes.Where(n => at is { } sung && n.At >= sung).ToValueList(),
                            }
                            : b
                )
                .ToValueList(),
        };
}
