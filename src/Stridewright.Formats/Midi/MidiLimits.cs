using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>What the reader takes in at most; beyond it there is a message, so that a broken file costs little.</summary>
internal static class MidiLimits
{
    /// <summary>Bytes: an hour of dense playing has about one million.</summary>
    public const int Size = 8 * 1024 * 1024;

    public const int Tracks = 256;

    /// <summary>Strokes of all tracks together: three hours at ten a second are 108,000.</summary>
    public const int Strokes = 150_000;

    /// <summary>Tempo, metre, key and lyric events of all tracks together.</summary>
    public const int Marks = 20_000;

    /// <summary>Bytes of a name or syllable that are read.</summary>
    public const int Text = 120;

    /// <summary>Quarter notes of time from the start: nine hours at 120 a minute.</summary>
    public const int Quarters = 65_536;

    /// <summary>Bars of a tune, as in the other readers.</summary>
    public const int Bars = 2000;

    /// <summary>Beats in which chords are looked for.</summary>
    public const int Beats = 32_000;

    /// <summary>A file that is cut off is still read when it has this many notes left: a phrase.</summary>
    public const int UsableStrokes = 8;

    /// <summary>Units of a bar and their smallest value, beyond which a time signature is not believed.</summary>
    public const int MetreCount = 32,
        MetreUnitPower = 5;

    /// <summary>Quarter notes a minute within which a tempo is believed.</summary>
    public const double SlowestTempo = 10,
        FastestTempo = 600;

    public static bool Believes(TempoChange tempo) =>
        60e6 / tempo.MicrosecondsPerQuarter is >= SlowestTempo and <= FastestTempo;

    public const int Graces = 4;

    /// <summary>Parts named in a message.</summary>
    public const int NamedParts = 12;
}
