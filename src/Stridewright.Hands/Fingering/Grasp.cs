using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>How a grasp stands to what the hand can do at once.</summary>
internal enum GraspKind
{
    /// <summary>Everything that is down has its finger, within reach.</summary>
    Within,

    /// <summary>A rolled chord wider than the hand: one key after the other.</summary>
    RolledWide,

    /// <summary>What is struck lies beyond the hand.</summary>
    Beyond,
}

/// <summary>
/// What a hand strikes at one moment and still holds, with all fingerings of it. Keys stand from the thumb's side to the
/// little finger's, in a left hand from the highest down.
/// </summary>
internal sealed record Grasp
{
    public required Onset Onset { get; init; }

    public required int[] Keys { get; init; }

    /// <summary>For each of <see cref="Keys"/>: struck now, not held.</summary>
    public required bool[] IsStruck { get; init; }

    /// <summary>Fingerings, each with a finger for each of <see cref="Keys"/>, 0 for a key that stays without; at least one.</summary>
    public required byte[][] Fingerings { get; init; }

    public GraspKind Kind { get; init; }

    /// <summary>The hand comes from elsewhere: by a leap or after a rest, or it begins.</summary>
    public bool IsFree { get; init; }

    /// <summary>A left hand's single key that a leap leads down to or up from.</summary>
    public bool IsBass { get; init; }

    /// <summary>The same single key was struck so shortly before that one finger cannot repeat it.</summary>
    public bool IsFastRepeat { get; init; }

    /// <summary>The finger that a long run expects, 0 where it is none.</summary>
    public int ExpectedFinger { get; init; }

    /// <summary>Stands for what a run would come from or go on to, and is no part of the music.</summary>
    public bool IsImagined { get; init; }

    /// <summary>Indexes in <see cref="Keys"/> of the struck key on the thumb's side and on the little finger's.</summary>
    public int Inner { get; private init; }

    public int Outer { get; private init; }

    public int StruckCount { get; private init; }

    public int InnerKey => Keys[Inner];

    public int OuterKey => Keys[Outer];

    /// <summary>One key is struck.</summary>
    public bool IsSingle => StruckCount == 1;

    /// <summary>Fills in what follows from <see cref="IsStruck"/>.</summary>
    public Grasp Settled() =>
        this with
        {
            Inner = Array.IndexOf(IsStruck, true),
            Outer = Array.LastIndexOf(IsStruck, true),
            StruckCount = IsStruck.Count(s => s),
        };

    /// <summary>Keys of a hand from the thumb's side.</summary>
    public static int[] FromThumb(int[] lowestFirst, Hand side)
    {
        var keys = (int[])lowestFirst.Clone();
        if (side == Hand.Left)
        {
            Array.Reverse(keys);
        }
        return keys;
    }
}
