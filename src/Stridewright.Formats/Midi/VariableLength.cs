namespace Stridewright.Formats.Midi;

/// <summary>
/// Variable-length quantities of the Standard MIDI File 1.0: seven bits a byte, most significant first, the top bit set
/// on all but the last byte; 0 to 0FFFFFFF.
/// </summary>
public static class VariableLength
{
    public const int Largest = 0x0FFFFFFF;
    public const int MostBytes = 4;

    /// <exception cref="ArgumentOutOfRangeException">The value is negative or over <see cref="Largest"/>.</exception>
    public static void Write(Stream stream, long value)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(value, Largest);
        for (var shift = 21; shift > 0; shift -= 7)
        {
            if (value >> shift != 0)
            {
                stream.WriteByte((byte)(0x80 | ((value >> shift) & 0x7F)));
            }
        }
        stream.WriteByte((byte)(value & 0x7F));
    }

    /// <summary>
    /// Reads a quantity at the start of <paramref name="bytes"/>; longer forms than needed are taken. When it fails,
    /// <paramref name="count"/> is <see cref="MostBytes"/> for a quantity of more than four bytes, and less where the
    /// bytes end too soon.
    /// </summary>
    /// <param name="count">Bytes read.</param>
    public static bool TryRead(ReadOnlySpan<byte> bytes, out int value, out int count)
    {
        value = 0;
        count = 0;
        while (count < Math.Min(bytes.Length, MostBytes))
        {
            var next = bytes[count++];
            value = (value << 7) | (next & 0x7F);
            if (next < 0x80)
            {
                return true;
            }
        }
        return false;
    }
}
