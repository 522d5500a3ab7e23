using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A sketch of a setting for those who play from little: the plain tune on the upper staff, on the lower the basses of the
/// first and the other strong beats, one note each until the next, and the chord symbols.
/// </summary>
internal static class SketchBuilder
{
    private const string What = "sketch: tune, chords, bass line";

    /// <param name="words">The tune's words are printed.</param>
    public static Score Build(Plan plan, LeftLine left, Direction tempo, bool words)
    {
        var lattice = plan.Lattice;
        var basses = left with { Notes = [.. Basses(lattice, left)] };
        var draft = DraftBuilder.Build(plan.Piece.Tune, lattice, new RightLine([], 0), basses, tempo, What, false);
        var tune = plan.Piece.Tune;
        var octaves = plan.VoiceOctaves;
        if (!words)
        {
            tune = tune with { Bars = tune.Bars.Select(WithoutWords).ToValueList() };
        }
        var above = TuneBars.Of(Register.Move(tune, new Interval(7 * octaves, 12 * octaves)), lattice);
        var score = Notator.Write(draft);
        return score with
        {
            Bars = score
                .Bars.Select(
                    (b, i) =>
                        b with
                        {
                            Voices =
                            [
                                new ScoreVoice(Hand.Right, 1, above[i]),
                                .. b.Voices.Where(v => v.Hand == Hand.Left),
                            ],
                        }
                )
                .ToValueList(),
        };
    }

    private static IEnumerable<LeftNote> Basses(Lattice lattice, LeftLine left)
    {
        var strong = left.Notes.Where(n => n.Slot.IsBass && !n.Shape.IsRest).OrderBy(n => n.Slot.Tick).ToList();
        for (var i = 0; i < strong.Count; i++)
        {
            var (slot, shape) = (strong[i].Slot, strong[i].Shape);
            var barEnd = lattice.Bars[slot.Bar].End;
            var end = i + 1 < strong.Count ? Math.Min(strong[i + 1].Slot.Tick, barEnd) : barEnd;
            yield return strong[i] with
            {
                Slot = slot with { End = end },
                Shape = shape with { Kind = LeftKind.Bass, Pitches = [shape.Pitches[0]] },
            };
        }
    }

    private static TuneBar WithoutWords(TuneBar bar) =>
        bar with
        {
            Notes = bar.Notes.Select(n => n with { Lyrics = [] }).ToValueList(),
        };
}
