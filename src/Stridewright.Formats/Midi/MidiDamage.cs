using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>The kinds of damage and oddity that a file can have.</summary>
internal enum MidiDamage
{
    TooLarge,
    Empty,
    NoHeader,
    HeaderCut,
    UnknownFormat,
    BadDivision,
    NoTracks,
    NoNotes,
    IllegalStatus,
    NoStatus,
    StatusInData,
    NumberTooLong,
    CutOffEarly,
    CutOff,
    TrackCount,
    TooManyTracks,
    EventPastTrackEnd,
    NoEndOfTrack,
    BytesAfterEnd,
    BytesBetweenChunks,
    RunningStatusAcrossMeta,
    RealTimeByte,
    NeverReleased,
    ZeroLength,
    BadMeta,
    TooLong,
    TooManyStrokes,
    TooManyMarks,
    NeverStruck,
    LongHeader,
    SecondsNotBeats,
}

/// <summary>
/// What the reader does about each kind of damage. Error: the file is refused, for what is left could not be trusted.
/// Warning: it is mended or left out, and said. Note: it is read as it is, and said.
/// </summary>
internal static class MidiPolicy
{
    public static Severity Of(MidiDamage damage) =>
        damage switch
        {
            // What follows cannot be found or timed, or there is nothing to play.
            <= MidiDamage.CutOffEarly => Severity.Error,
            MidiDamage.NeverStruck or MidiDamage.LongHeader or MidiDamage.SecondsNotBeats => Severity.Note,
            _ => Severity.Warning,
        };
}
