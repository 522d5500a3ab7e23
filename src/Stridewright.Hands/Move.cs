using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Moves are judged in three groups, each with its own share over the limit.</summary>
internal enum MoveGroup
{
    /// <summary>Left hand, from a bass on a beat to a chord off it or back: the little finger's way.</summary>
    BassAndChord,

    /// <summary>Every other move of the left hand.</summary>
    LeftOther,

    /// <summary>Every move of the right hand.</summary>
    Right,
}

/// <summary>The way of a hand from one onset to its next.</summary>
/// <param name="Mm">Bass and chord: distance of the lowest keys; else the least shift of the covering hand.</param>
/// <param name="Seconds">Time there is, at the tempo in force where the move begins.</param>
/// <param name="Rate">Bits per second.</param>
/// <param name="Limit">Bits per second that this hand may ask for in the metre.</param>
internal sealed record Move(MoveGroup Group, Onset From, Onset To, double Mm, double Seconds, double Rate, double Limit)
{
    private enum Role
    {
        Other,
        Bass,
        Chord,
    }

    /// <summary>The moves between the onsets of one hand, in time order.</summary>
    public static List<Move> Of(Passage passage, List<Onset> onsets, HandMeasures hand, Reach reach)
    {
        var moves = new List<Move>();
        var roles = onsets is [{ Hand: Hand.Left }, ..] ? Roles(passage, onsets) : [];
        for (var i = 1; i < onsets.Count; i++)
        {
            var (from, to) = (onsets[i - 1], onsets[i]);
            var group =
                from.Hand == Hand.Right ? MoveGroup.Right
                : (roles[i - 1], roles[i]) is (Role.Bass, Role.Chord) or (Role.Chord, Role.Bass)
                    ? MoveGroup.BassAndChord
                : MoveGroup.LeftOther;
            var mm =
                group == MoveGroup.BassAndChord
                    ? reach.Keyboard.Distance(from.Low, to.Low)
                    : Leap.Shift(reach, from.Low, from.High, to.Low, to.High);
            var seconds = (to.Start - from.Start).ToQuarters() * 60 / passage.TempoAt(from.Start);
            var rate = Leap.Rate(mm, seconds, reach.Keyboard);
            moves.Add(new(group, from, to, mm, seconds, rate, hand.LeapLimit(passage.Bars[from.Bar].Metre)));
        }
        return moves;
    }

    /// <summary>
    /// Bass: a single key, an octave or a tenth on a beat that takes a bass. Chord: any other keys elsewhere. In short
    /// bars and metres without a known pattern the shape alone decides.
    /// </summary>
    private static Role[] Roles(Passage passage, List<Onset> onsets)
    {
        var roles = new Role[onsets.Count];
        for (int first = 0, next; first < onsets.Count; first = next)
        {
            var bar = onsets[first].Bar;
            for (next = first + 1; next < onsets.Count && onsets[next].Bar == bar; next++) { }
            var places = BassPlaces(passage.Bars[bar], onsets.GetRange(first, next - first));
            for (var i = first; i < next; i++)
            {
                var onPlace = places is null ? onsets[i].IsBassShape : places.Contains(onsets[i].At);
                roles[i] =
                    onsets[i].IsBassShape != onPlace ? Role.Other
                    : onPlace ? Role.Bass
                    : Role.Chord;
            }
        }
        return roles;
    }

    /// <summary>Where a full bar takes its basses (common practice); null where the shape alone decides.</summary>
    private static ScoreTime[]? BassPlaces(ScoreBar bar, List<Onset> onsets)
    {
        if (bar.Length != bar.Metre.BarLength)
        {
            return null;
        }
        switch (bar.Metre.Count, bar.Metre.Unit)
        {
            case (2, 4):
                return [ScoreTime.Zero, ScoreTime.Quarter];
            case (4, 4) or (2, 2):
                return [ScoreTime.Zero, ScoreTime.Half];
            case (3, 4):
                return [ScoreTime.Zero];
            case (6, 8):
                var middle = new ScoreTime(3, 8);
                var oneChordOnly = onsets is [var a, var b] && a.At.IsZero && b.At == middle && !b.IsBassShape;
                return oneChordOnly ? [ScoreTime.Zero] : [ScoreTime.Zero, middle];
            default:
                return null;
        }
    }
}
