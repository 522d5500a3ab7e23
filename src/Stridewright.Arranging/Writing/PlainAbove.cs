using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Shows the plain tune on the small staff above: each note at its place before it was ragged, in the metre of
/// the setting, so that it is seen what was moved.</summary>
internal static class PlainAbove
{
    /// <param name="lyrics">The words go with it.</param>
    public static Draft Show(Draft draft, Lattice lattice, bool lyrics)
    {
        var above = lattice.Bars.Select(_ => new List<Stroke>()).ToArray();
        for (var i = 0; i < lattice.Notes.Length; i++)
        {
            var note = lattice.Notes[i];
            var next = i + 1 < lattice.Notes.Length ? lattice.Notes[i + 1].Start : lattice.End;
            var end = Math.Min(note.End, next);
            if (end <= note.Start)
            {
                continue;
            }
            var bar = lattice.BarAt(note.Start);
            above[bar]
                .Add(
                    new Stroke(
                        Hand.Right,
                        1,
                        lattice.Tick * (note.Start - lattice.Bars[bar].Start),
                        lattice.Tick * (end - note.Start),
                        [note.Pitch],
                        "plain"
                    )
                    {
                        Lyrics = lyrics ? note.Lyrics : [],
                    }
                );
        }
        return draft with
        {
            Bars = draft.Bars.Select((b, i) => b with { Above = above[i].ToValueList() }).ToValueList(),
        };
    }
}
