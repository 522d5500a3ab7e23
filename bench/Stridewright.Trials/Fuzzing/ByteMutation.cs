using System.Buffers.Binary;

namespace Stridewright.Trials;

/// <summary>Damage to a binary file: flipped bits, odd numbers, pieces dropped, doubled or cut off.</summary>
internal static class ByteMutation
{
    private const int LongestResult = 1 << 20;
    private static readonly uint[] Numbers =
    [
        0,
        1,
        0x7F,
        0x80,
        0xFF,
        0x7FFF,
        0x8000,
        0xFFFF,
        0x7FFFFFFF,
        0x80000000,
        0xFFFFFFFF,
    ];

    public static byte[] Of(byte[] bytes, byte[] other, Random random)
    {
        var list = bytes.ToList();
        var changes = 1 + random.Next(1, 8) * random.Next(0, 3);
        for (var i = 0; i < changes && list.Count > 0; i++)
        {
            Change(list, other, random);
        }
        return [.. list.Take(LongestResult)];
    }

    private static void Change(List<byte> bytes, byte[] other, Random random)
    {
        // As often as not near the beginning, where the headers are.
        var at = random.Next(random.Next(2) == 0 ? bytes.Count : Math.Min(64, bytes.Count));
        var length = Math.Min(bytes.Count - at, 1 + random.Next(1 << random.Next(0, 10)));
        switch (random.Next(8))
        {
            case 0:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                var number = new byte[4];
                BinaryPrimitives.WriteUInt32BigEndian(number, Numbers[random.Next(Numbers.Length)]);
                for (var i = 4 - (1 << random.Next(3)); i < 4 && at < bytes.Count; i++, at++)
                {
                    bytes[at] = number[i];
                }
                break;
            case 3:
                bytes.RemoveRange(at, length);
                break;
            case 4:
                bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                break;
            case 5:
                var start = random.Next(other.Length);
                bytes.InsertRange(at, other.AsSpan(start, Math.Min(other.Length - start, length)).ToArray());
                break;
            case 6:
                bytes.InsertRange(at, Enumerable.Repeat(bytes[at], 1 << random.Next(1, 16)));
                break;
            default:
                if (random.Next(4) == 0)
                {
                    bytes.RemoveRange(at, bytes.Count - at);
                }
                break;
        }
    }
}
