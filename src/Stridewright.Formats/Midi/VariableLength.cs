namespace Stridewright.Formats.Midi;

/// <summary>
/// Variable-length quantities of the Standard MIDI File 1.0: seven bits a byte, most significant first, the top bit set
/// on all but the last byte; 0 to 0FFFFFFF.
/// </summary>
public static class VariableLength
{
    public const long Largest = 0x0FFFFFFF;

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
}
