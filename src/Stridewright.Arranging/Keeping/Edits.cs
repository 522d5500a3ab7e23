using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// What a person has written into the score of a setting, bar by bar and hand by hand. Bars and notes are matched by what
/// they hold; ids count for nothing, so that any program may have written the file.
/// </summary>
internal static class Edits
{
    /// <summary>Furthest from its plain place that a key still counts as the tune's note.</summary>
    private const int MostUnits = 2;

    /// <summary>The bars that differ, as they now are; null with the reason where bars were added or taken out.</summary>
    public static ValueList<KeptBar>? Of(Solution solution, Score before, Score edited, out Diagnostic? fault)
    {
        var lattice = solution.Lattice;
        fault =
            before.Bars.Count != lattice.Bars.Length ? Fault(Place.Whole, KeepingMessages.NotBoth)
            : edited.Bars.Count != before.Bars.Count
                ? Fault(Place.Whole, KeepingMessages.OtherBars(edited.Bars.Count, before.Bars.Count))
            : null;
        for (var bar = 0; fault is null && bar < lattice.Bars.Length; bar++)
        {
            if (edited.Bars[bar].Length != before.Bars[bar].Length)
            {
                fault = Fault(
                    Place.AtBar(before.Bars[bar].Number),
                    KeepingMessages.OtherLength(edited.Bars[bar].Length, before.Bars[bar].Length)
                );
            }
        }
        if (fault is not null)
        {
            return null;
        }
        var (old, now) = (Struck(before), Struck(edited));
        return Enumerable
            .Range(0, lattice.Bars.Length)
            .SelectMany(bar => new[] { Hand.Right, Hand.Left }.Select(hand => (bar, hand)))
            .Where(spot => !Heard(old[spot]).SequenceEqual(Heard(now[spot])))
            .Select(spot => Kept(solution, spot.bar, spot.hand, now))
            .ToValueList();
    }

    private static Diagnostic Fault(Place place, string message) => new(Severity.Error, place, message);

    private static ILookup<(int Bar, Hand Hand), StruckNote> Struck(Score score) =>
        Timeline
            .Strike(score, Enumerable.Range(0, score.Bars.Count))
            .Where(n => n.Sounding.End > n.Sounding.Start)
            .ToLookup(n => (n.Sounding.Bar, n.Sounding.Hand));

    private static IEnumerable<(ScoreTime At, int Key, ScoreTime Length, bool Rolled)> Heard(
        IEnumerable<StruckNote> notes
    ) =>
        notes
            .Select(n => n.Sounding)
            .OrderBy(s => s.At)
            .ThenBy(s => s.Key)
            .Select(s => (s.At, s.Key, s.End - s.Start, s.Rolled));

    /// <summary>A bar of one hand as somebody writes it.</summary>
    public static KeptBar Of(Solution solution, int bar, Hand hand, IEnumerable<WrittenStroke> written) =>
        Kept(
            solution,
            bar,
            hand,
            [.. written.OrderBy(w => w.At).Select(w => new Group(w.At, w.Length, w.Pitches, w.Rolled, 1))],
            other =>
                other < 0 || other >= solution.Lattice.Bars.Length
                    ? []
                    : Spots
                        .Of(solution, other, Hand.Right)
                        .Strokes.SelectMany(s => s.Pitches.Select(p => (s.At, p.Midi)))
        );

    private static KeptBar Kept(Solution solution, int bar, Hand hand, ILookup<(int Bar, Hand Hand), StruckNote> now) =>
        Kept(
            solution,
            bar,
            hand,
            [
                .. now[(bar, hand)]
                    .GroupBy(n => (n.Sounding.At, Length: n.Sounding.End - n.Sounding.Start, n.Voice.Number))
                    .OrderBy(g => g.Key.At)
                    .ThenBy(g => g.Key.Number)
                    .Select(g => new Group(
                        g.Key.At,
                        g.Key.Length,
                        g.Select(n => n.Source.Notes[n.Note].Pitch).Order().ToValueList(),
                        g.Any(n => n.Sounding.Rolled),
                        g.Key.Number
                    )),
            ],
            other => now[(other, Hand.Right)].Select(n => (n.Sounding.At, n.Sounding.Key))
        );

    private static KeptBar Kept(
        Solution solution,
        int bar,
        Hand hand,
        List<Group> groups,
        Func<int, IEnumerable<(ScoreTime At, int Key)>> struck
    )
    {
        var lattice = solution.Lattice;
        var used = new HashSet<int>();
        var strokes = new List<KeptStroke>();
        var before = Spots.Of(solution, bar, hand).Strokes;
        foreach (var (at, length, pitches, rolled, voice) in groups)
        {
            var there = before.FirstOrDefault(s => s.At == at);
            // Two voices of one hand are the upper and the lower in the order of their highest keys.
            var isLower =
                hand == Hand.Right
                && groups.Any(g =>
                    g.Voice != voice && g.At < at && g.At + g.Length > at && g.Pitches[^1].Midi > pitches[^1].Midi
                );
            var tune = hand == Hand.Right ? TuneNote(lattice, bar, at, pitches[^1], used) : null;
            strokes.Add(
                new KeptStroke(
                    at,
                    length,
                    pitches,
                    hand == Hand.Right
                        ? (tune is null ? "fill" : "tune")
                        : there?.Role ?? Role(lattice, bar, at, pitches),
                    rolled,
                    there is not null && there.Pitches.Equals(pitches) ? there.Graces : [],
                    isLower ? 2 : 1,
                    tune
                )
            );
        }
        return new KeptBar(bar, hand, strokes.ToValueList())
        {
            LeftOut = hand == Hand.Right ? LeftOut(lattice, bar, used, struck) : [],
        };
    }

    private static string Role(Lattice lattice, int bar, ScoreTime at, ValueList<Pitch> pitches) =>
        pitches.Count > 2 ? "chord"
        : lattice.Bars[bar].Groove.Basses.Any(b => lattice.Tick * b == at) ? "bass"
        : pitches.Count == 1 ? "run"
        : "chord";

    // The tune's note of this key that lies nearest and has not been struck yet.
    private static int? TuneNote(Lattice lattice, int bar, ScoreTime at, Pitch top, HashSet<int> used)
    {
        var tick = lattice.Bars[bar].Start + (int)at.Round(lattice.Tick);
        var found = Enumerable
            .Range(0, lattice.Notes.Length)
            .Where(i => lattice.Notes[i].Key == top.Midi && !used.Contains(i))
            .Where(i => Math.Abs(lattice.Notes[i].Start - tick) <= MostUnits * Lattice.TicksPerUnit)
            .OrderBy(i => Math.Abs(lattice.Notes[i].Start - tick))
            .Select(i => (int?)i)
            .FirstOrDefault();
        if (found is { } note)
        {
            used.Add(note);
        }
        return found;
    }

    // Notes of the bar that neither it strikes nor the edge of a bar beside it.
    private static ValueList<int> LeftOut(
        Lattice lattice,
        int bar,
        HashSet<int> used,
        Func<int, IEnumerable<(ScoreTime At, int Key)>> struck
    )
    {
        var (start, end) = (lattice.Bars[bar].Start, lattice.Bars[bar].End);
        return Enumerable
            .Range(0, lattice.Notes.Length)
            .Where(i => lattice.Notes[i].Start >= start && lattice.Notes[i].Start < end && !used.Contains(i))
            .Where(i => !IsBeside(i, bar - 1) && !IsBeside(i, bar + 1))
            .ToValueList();

        bool IsBeside(int note, int other) =>
            struck(other)
                .Any(s =>
                    s.Key == lattice.Notes[note].Key
                    && Math.Abs(lattice.Bars[other].Start + (int)s.At.Round(lattice.Tick) - lattice.Notes[note].Start)
                        <= Lattice.TicksPerUnit
                );
    }

    private readonly record struct Group(
        ScoreTime At,
        ScoreTime Length,
        ValueList<Pitch> Pitches,
        bool Rolled,
        int Voice
    );
}
