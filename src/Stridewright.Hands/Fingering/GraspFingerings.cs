namespace Stridewright.Hands;

/// <summary>
/// All fingerings of some keys, from the thumb's side: within the practical span of every pair; struck keys in the order
/// of the fingers; a held key may be passed by the thumb only, as its spans allow. A thumb may take two neighbouring
/// white keys of a chord of three or more.
/// </summary>
internal sealed class GraspFingerings(LineCosts line, FingerHand hand)
{
    private const int LeastForTwo = 3;

    /// <param name="isStruck">For each key.</param>
    /// <param name="wanted">For each key its finger, 0 where any will do.</param>
    /// <param name="withinReach">False: only the order counts.</param>
    public byte[][] Of(int[] keys, bool[] isStruck, byte[] wanted, bool withinReach = true)
    {
        var found = new List<byte[]>();
        var mayTakeTwo = isStruck.Count(s => s) >= LeastForTwo;
        Extend(new byte[keys.Length], 0);
        return [.. found];

        void Extend(byte[] fingers, int at)
        {
            if (at == keys.Length)
            {
                found.Add((byte[])fingers.Clone());
                return;
            }
            foreach (var finger in hand.Fingers)
            {
                if (wanted[at] != 0 && wanted[at] != finger)
                {
                    continue;
                }
                fingers[at] = (byte)finger;
                if (Fits(fingers, at))
                {
                    Extend(fingers, at + 1);
                }
            }
        }

        bool Fits(byte[] fingers, int at)
        {
            for (var i = 0; i < at; i++)
            {
                if (fingers[i] == fingers[at])
                {
                    var isTwo = fingers[at] == 1 && i == at - 1 && mayTakeTwo && isStruck[i] && isStruck[at];
                    if (!isTwo || !IsTwoWhites(keys[i], keys[at]) || (i > 0 && fingers[i - 1] == 1))
                    {
                        return false;
                    }
                }
                else if (fingers[i] > fingers[at] && (!withinReach || (isStruck[i] && isStruck[at])))
                {
                    return false;
                }
                else if (withinReach && !line.CanSpan(keys[i], fingers[i], keys[at], fingers[at]))
                {
                    return false;
                }
            }
            return true;
        }
    }

    private static bool IsTwoWhites(int a, int b) =>
        Math.Abs(a - b) <= 2 && !Keyboard.IsBlack(a) && !Keyboard.IsBlack(b);
}
