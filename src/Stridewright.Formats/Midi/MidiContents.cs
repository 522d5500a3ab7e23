using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>What a Standard MIDI File holds of music: its tracks on one time line.</summary>
public sealed record MidiContents
{
    /// <summary>0: one track; 1: tracks that sound together; 2: patterns that are independent of each other.</summary>
    public required int Format { get; init; }

    /// <summary>Ticks to a quarter note, 1 to 32767.</summary>
    public required int TicksPerQuarter { get; init; }

    /// <summary>Tracks in the file's order, those without notes too. Never empty.</summary>
    public required ValueList<MidiTrack> Tracks { get; init; }
}

/// <summary>One track of a file. Ticks count from the start of the file (in format 2: of the track).</summary>
public sealed record MidiTrack
{
    /// <summary>Place among the file's tracks, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The track's name, else its instrument's; empty when it has neither.</summary>
    public string Name { get; init; } = "";

    /// <summary>Strokes by tick, then key.</summary>
    public ValueList<MidiStroke> Strokes { get; init; } = [];

    /// <summary>Lyric events by tick, as they stand in the file.</summary>
    public ValueList<MidiLyric> Lyrics { get; init; } = [];

    /// <summary>The sustain pedal by tick: a controller below half way is up, from half way down (MIDI 1.0).</summary>
    public ValueList<PedalChange> Pedal { get; init; } = [];

    public ValueList<TempoChange> Tempi { get; init; } = [];

    public ValueList<MetreChange> Metres { get; init; } = [];

    public ValueList<KeyChange> Keys { get; init; } = [];

    /// <summary>Last tick, at or after the last release.</summary>
    public required long EndTick { get; init; }
}

/// <summary>One key struck and released.</summary>
/// <param name="Tick">When it is struck.</param>
/// <param name="Length">Ticks until its release, at least 1.</param>
/// <param name="Key">MIDI note number 0 to 127.</param>
/// <param name="Velocity">1 to 127.</param>
/// <param name="Channel">1 to 16; 10 is percussion (General MIDI).</param>
/// <param name="Byte">Where the stroke stands in the file.</param>
public readonly record struct MidiStroke(long Tick, long Length, int Key, int Velocity, int Channel, long Byte)
{
    public long End => Tick + Length;
}

/// <summary>A syllable or word sung at a tick.</summary>
public sealed record MidiLyric(long Tick, string Text);
