namespace Stridewright.Arranging;

/// <summary>Whether the right hand plays a bar in the manner asked for, read off the notes of both hands alone.</summary>
internal static class RightPlayed
{
    private const int LineNotes = 3,
        Strokes = 4,
        AnswerNotes = 2;

    /// <summary>Bars, by index, that do something else than they were asked for. Of what the tune must give room for, such
    /// as answers, one in a phrase is enough.</summary>
    public static IEnumerable<int> FellBack(Lattice lattice, RightLine right, LeftLine left)
    {
        var (notes, lefts) = (right.Notes.ToLookup(n => lattice.BarAt(n.Tick)), left.Notes.ToLookup(n => n.Slot.Bar));
        foreach (var manner in lattice.Bars.Select(b => b.Treatment.Right).Distinct())
        {
            foreach (var (first, end) in Devices.Stretches(lattice, manner))
            {
                var fell = Enumerable
                    .Range(first, end - first)
                    .Where(i => !IsPlayed(manner, lattice, lattice.Bars[i], [.. notes[i]], [.. lefts[i]]))
                    .ToList();
                foreach (var bar in Devices.IsOccasional(manner) && fell.Count < end - first ? [] : fell)
                {
                    yield return bar;
                }
            }
        }
    }

    private static bool IsPlayed(
        RightManner manner,
        Lattice lattice,
        LatticeBar bar,
        RightNote[] notes,
        LeftNote[] left
    ) =>
        manner switch
        {
            RightManner.Thirds or RightManner.Sixths or RightManner.Octaves or RightManner.FullOctaves => IsThick(
                manner,
                notes
            ),
            RightManner.CrushedNotes => notes.Any(n => n.Crushed is not null),
            RightManner.Answer => left.Count(n => n.Slot.IsAnswer && n.Shape.IsRun) >= AnswerNotes,
            RightManner.Tremolo => notes.Count(n => n.Use == RightUse.Tremolo) >= Strokes,
            RightManner.ThumbTune => notes.All(n => n.IsFiller)
                && lattice.Notes.Count(n => n.Start >= bar.Start && n.Start < bar.End)
                    == left.Count(n => n.Slot.Thumb is not null),
            RightManner.Obbligato => notes.Count(n => n.Use == RightUse.Line) >= LineNotes,
            RightManner.ParallelRun => notes.Count(n => n.Use == RightUse.Run && n.Below.Count == 1)
                >= ParallelRun.Least,
            RightManner.ThreeAgainstFour => lattice.IsDuple && Groups(notes),
            _ => true,
        };

    // At least half of the tune's notes are as asked.
    private static bool IsThick(RightManner manner, RightNote[] notes)
    {
        var tune = notes.Where(n => !n.IsFiller).ToList();
        return 2 * tune.Count(n => AskedTextures.Fits(manner, n.Top, n.Below)) >= tune.Count;
    }

    // At least two groups, and more groups than not: three units running, the first above the other two.
    private static bool Groups(RightNote[] notes)
    {
        var accents = 0;
        for (var i = 0; i + 2 < notes.Length; i++)
        {
            var running =
                notes[i + 1].Tick - notes[i].Tick == Lattice.TicksPerUnit
                && notes[i + 2].Tick - notes[i + 1].Tick == Lattice.TicksPerUnit;
            if (running && notes[i].Top.Midi > notes[i + 1].Top.Midi && notes[i].Top.Midi > notes[i + 2].Top.Midi)
            {
                accents++;
                i += 2;
            }
        }
        return accents >= 2;
    }
}
