using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>What is printed for one hand.</summary>
/// <param name="Notes">Note heads.</param>
/// <param name="Tied">Of these, led to by a tie.</param>
/// <param name="Accidentals">Keys outside the signature, each once a bar.</param>
/// <param name="Ledgers">Ledger lines that no octave sign would take away.</param>
/// <param name="Uneven">Note heads in tuplets.</param>
/// <param name="Under">Note heads of further voices.</param>
/// <param name="Crushed">Crushed notes.</param>
/// <param name="Signs">Sharps or flats of the signature, once a note head.</param>
internal readonly record struct PrintCount(
    int Notes,
    int Tied,
    int Accidentals,
    int Ledgers,
    int Uneven,
    int Under,
    int Crushed,
    int Signs
)
{
    public static PrintCount operator +(PrintCount a, PrintCount b) =>
        new(
            a.Notes + b.Notes,
            a.Tied + b.Tied,
            a.Accidentals + b.Accidentals,
            a.Ledgers + b.Ledgers,
            a.Uneven + b.Uneven,
            a.Under + b.Under,
            a.Crushed + b.Crushed,
            a.Signs + b.Signs
        );
}

/// <summary>
/// What the eye has to sort out. Ledger lines are counted at the octave at which a bar has the fewest, as if an octave sign
/// stood there: so a piece moved by an octave is no other piece to read.
/// </summary>
internal static class ReadingPart
{
    // What is demanding, a share of the note heads each: as many ties and accidentals as a rag has in its busy bars (working
    // values, common practice).
    private const double Tied = 0.25,
        Accidentals = 0.25,
        Ledgers = 1,
        Uneven = 0.5,
        Under = 0.5,
        Signs = 10;

    // The middle lines: B4 of the right hand's staff, D3 of the left's; four steps from there the lines end.
    private const int MiddleOfRight = 7 * 4 + 6,
        MiddleOfLeft = 7 * 3 + 1,
        StepsToOuterLine = 4,
        FurthestOctave = 4;

    public static double Amount(EffortScope scope)
    {
        var print = scope.Print;
        if (print.Notes == 0)
        {
            return 0;
        }
        var load =
            print.Tied / Tied
            + print.Accidentals / Accidentals
            + print.Ledgers / Ledgers
            + print.Uneven / Uneven
            + print.Under / Under
            + print.Signs / Signs;
        return EffortNumbers.Bend(load / print.Notes);
    }

    /// <summary>What is printed for a hand in each bar.</summary>
    public static PrintCount[] ByBar(ValueList<ScoreBar> bars, Hand hand) => [.. bars.Select(bar => Of(bar, hand))];

    private static PrintCount Of(ScoreBar bar, Hand hand)
    {
        var (notes, tied, uneven, under, crushed, voices) = (0, 0, 0, 0, 0, 0);
        var foreign = new HashSet<Pitch>();
        var steps = new List<int>();
        foreach (var voice in bar.Voices.Where(v => v.Hand == hand))
        {
            foreach (var e in voice.Events)
            {
                notes += e.Notes.Count;
                crushed += e.Graces.Count;
                uneven += e.Value.Actual != e.Value.Normal ? e.Notes.Count : 0;
                under += voices > 0 ? e.Notes.Count : 0;
                foreach (var note in e.Notes)
                {
                    tied += note.TieStop ? 1 : 0;
                    steps.Add(note.Pitch.DiatonicIndex);
                    if (!note.TieStop && !bar.Key.Contains(note.Pitch.Tone))
                    {
                        foreign.Add(note.Pitch);
                    }
                }
            }
            voices++;
        }
        var signs = Math.Min(Math.Abs(bar.Key.Signature), 7) * notes;
        return new(notes, tied, foreign.Count, LedgersOf(steps, hand), uneven, under, crushed, signs);
    }

    private static int LedgersOf(List<int> steps, Hand hand)
    {
        var middle = hand == Hand.Right ? MiddleOfRight : MiddleOfLeft;
        var least = int.MaxValue;
        for (var octave = -FurthestOctave; octave <= FurthestOctave && least > 0; octave++)
        {
            var lines = 0;
            foreach (var step in steps)
            {
                lines += Math.Max(0, Math.Abs(step + 7 * octave - middle) - StepsToOuterLine) / 2;
            }
            least = Math.Min(least, lines);
        }
        return least;
    }
}
