using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Every change that the chords by themselves would allow: common practice of ragtime and stride harmony.</summary>
internal sealed class HarmonyIdeas(HarmonyGrid grid, Feel feel)
{
    private static readonly Interval RaisedUnison = new(0, 1);
    private readonly GridSpot[] _spots = grid.Spots;

    public IEnumerable<HarmonyIdea> All()
    {
        for (var start = 0; start < _spots.Length; )
        {
            // A run of one chord, and the chord that follows it without a seam.
            var end = start + 1;
            while (end < _spots.Length && !_spots[end].Seam && Equals(_spots[end].Chord, _spots[start].Chord))
            {
                end++;
            }
            if (_spots[start].Chord is { IsNoChord: false } chord)
            {
                var next = end < _spots.Length && !_spots[end].Seam ? _spots[end].Chord : null;
                next = next is { IsNoChord: true } ? null : next;
                foreach (var idea in Of(start, end, chord, next).Concat(AtEnd(start, end, chord)))
                {
                    yield return idea;
                }
            }
            start = end;
        }
    }

    private IEnumerable<HarmonyIdea> Of(int start, int end, ChordSymbol chord, ChordSymbol? next)
    {
        var length = end - start;
        var key = _spots[start].Key;
        var degree = Degree.Of(chord, key);
        if (length >= 4 && degree == new Degree(0, Quality.Major))
        {
            var diminished = new ChordSymbol(chord.Root, ChordKind.DiminishedSeventh);
            yield return new(HarmonyChangeKind.CommonToneDiminished, start + 1, [diminished]);
        }
        if (next is null)
        {
            yield break;
        }
        var to = Degree.Of(next, key);
        // A minor chord a fifth above turns into a dominant itself: II7 V7.
        var leads = degree.Quality != Quality.Minor && IsFifthAbove(chord, next);
        if (length >= 2 && to.Above != 0 && to.Quality != Quality.Diminished && !leads)
        {
            yield return new(HarmonyChangeKind.SecondaryDominant, end - 1, [DominantOf(next)]);
        }
        if (length >= 4 && degree.Above == 0 && to is { Above: 7, Quality: Quality.Dominant })
        {
            var two = DominantOf(next);
            yield return new(HarmonyChangeKind.CircleOfFifths, end - 2, [DominantOf(two), two]);
        }
        if (length >= 2 && PassesTo(degree, to))
        {
            var diminished = new ChordSymbol(chord.Root.Plus(RaisedUnison), ChordKind.DiminishedSeventh);
            yield return new(HarmonyChangeKind.PassingDiminished, end - 1, [diminished]);
        }
        if (length >= 2 && degree == new Degree(5, Quality.Major) && to.Above == 0)
        {
            yield return new(HarmonyChangeKind.MinorSubdominant, end - 1, [new(chord.Root, ChordKind.Minor)]);
        }
        if (length >= 2 && degree.Quality == Quality.Dominant && IsFifthAbove(chord, next))
        {
            var root = chord.Root.Plus(Interval.PerfectFifth);
            yield return new(HarmonyChangeKind.TwoFive, start, [new(root, ChordKind.MinorSeventh)]);
            yield return new(HarmonyChangeKind.TwoFive, start, [new(root, ChordKind.Dominant)]);
        }
        if (feel == Feel.Stride && degree.Quality == Quality.Dominant && IsFifthAbove(chord, next))
        {
            var tritone = new ChordSymbol(next.Root.Plus(Interval.MinorSecond), ChordKind.Dominant);
            yield return new(HarmonyChangeKind.Tritone, end - 1, [tritone]);
        }
        if (length >= 2 && degree is { Above: 0, Quality: Quality.Major } && to.Above == 5)
        {
            var seventh = new ChordSymbol(chord.Root, ChordKind.Dominant) { Bass = chord.Root.Plus(new(-1, -2)) };
            var third = next with { Bass = next.Root.Plus(Interval.MajorThird) };
            if (to.Quality == Quality.Major)
            {
                yield return new(HarmonyChangeKind.ChromaticBass, end - 1, [seventh, third]);
            }
        }
        if (
            length <= 2
            && degree == new Degree(7, Quality.Dominant)
            && to == new Degree(0, Quality.Major)
            && start > 0
            && !_spots[start].Seam
            && _spots[start - 1].Chord is { IsNoChord: false } before
            && Degree.Of(before, key).Above == 0
            && !Closes(end)
        )
        {
            yield return new(
                HarmonyChangeKind.Pedal,
                start,
                [.. Enumerable.Repeat(chord with { Bass = key.Tonic }, length)]
            );
        }
    }

    // The chord that begins at a spot is the last of its strain: a cadence keeps its bass.
    private bool Closes(int start)
    {
        var end = start + 1;
        while (end < _spots.Length && !_spots[end].Seam && Equals(_spots[end].Chord, _spots[start].Chord))
        {
            end++;
        }
        return end == _spots.Length || _spots[end].Seam;
    }

    // What belongs to a strain's end.
    private IEnumerable<HarmonyIdea> AtEnd(int start, int end, ChordSymbol chord)
    {
        var closes = end == _spots.Length || _spots[end].Seam;
        var key = _spots[start].Key;
        if (!closes || key.IsMinor || Degree.Of(chord, key) != new Degree(0, Quality.Major))
        {
            yield break;
        }
        var five = new ChordSymbol(key.Tonic.Plus(Interval.PerfectFifth), ChordKind.Dominant);
        var two = DominantOf(five);
        var six = DominantOf(two);
        if (end - start >= 4 && _spots[end - 1].Again)
        {
            yield return new(HarmonyChangeKind.Turnaround, end - 3, [six, two, five]);
        }
        else if (end - start >= 2 && _spots[end - 1].Again)
        {
            yield return new(HarmonyChangeKind.Turnaround, end - 1, [five]);
        }
        // Four bars of halves: IV, raised iv diminished, I over its fifth, VI7, II7, V7, I, I.
        var first = end - 8;
        if (
            first >= 0
            && _spots[first].Cut.StartsBar
            && _spots[end - 1].Cut.Bar - _spots[first].Cut.Bar == 3
            && NoSeam(first, end)
        )
        {
            var four = key.Tonic.Plus(Interval.PerfectFourth);
            yield return new(
                HarmonyChangeKind.StrainEnding,
                first,
                [
                    new(four, ChordKind.Major),
                    new(four.Plus(RaisedUnison), ChordKind.DiminishedSeventh),
                    chord with
                    {
                        Bass = five.Root,
                    },
                    six,
                    two,
                    five,
                    chord,
                    chord,
                ]
            );
        }
    }

    private bool NoSeam(int first, int end)
    {
        for (var s = first + 1; s < end; s++)
        {
            if (_spots[s].Seam)
            {
                return false;
            }
        }
        return true;
    }

    // A semitone under the next bass: I to ii, IV to V or I, V to vi.
    private static bool PassesTo(Degree from, Degree to) =>
        (from.Above, from.Quality, to.Above, to.Quality)
            is
                (0, Quality.Major, 2, Quality.Minor)
                or
                (5, Quality.Major, 7, Quality.Dominant)
                or
                (5, Quality.Major, 0, Quality.Major)
                or
                (7, Quality.Dominant, 9, Quality.Minor);

    private static ChordSymbol DominantOf(ChordSymbol chord) =>
        new(chord.Root.Plus(Interval.PerfectFifth), ChordKind.Dominant);

    private static bool IsFifthAbove(ChordSymbol chord, ChordSymbol next) =>
        chord.Root.PitchClass == (next.Root.PitchClass + 7) % 12;
}
