using System.Globalization;

namespace Stridewright.Formats.Midi;

/// <summary>What the MIDI readers say to their user.</summary>
internal static class MidiMessages
{
    private const string GetAgain = "copy or export the file again";

    public const string Empty = "the file is empty";
    public const string HeaderCut = $"the file ends inside its header: {GetAgain}";
    public const string BadDivision =
        $"the header gives no usable length of a tick, so nothing in the file has a time: {GetAgain}";
    public const string NoTracks = $"there is no track after the header: {GetAgain}";
    public const string NoNotes = "no note is played in the whole file: is it the right one?";
    public const string NumberTooLong =
        $"a time or length of more than four bytes stands here, the rest of the track cannot be read: {GetAgain}";
    public const string EventPastTrackEnd = "the track ends inside this event, which was left out";
    public const string NoEndOfTrack = "the track has no end mark; it was taken to end here";
    public const string RunningStatusAcrossMeta =
        "an event leaves its kind out after one that ends this; the kind before was taken";
    public const string NeverReleased =
        "this key is struck but not released; it was released at its next strike or the end of the track";
    public const string NeverStruck = "a key is released that was not down; that was passed over";
    public const string ZeroLength = "this note is released as it is struck; it was given the shortest length";
    public const string LongHeader = "the header is longer than today's; what is new in it was passed over";
    public const string SecondsNotBeats =
        "times are given in parts of a second; beats were laid on them at the first tempo, or at 120 a minute";
    public const string DefaultMetre = "no time signature is given; 4/4 was taken";
    public const string OnlyPercussion = "only percussion (channel 10) plays: there is no tune in it";
    public const string Untitled = "Untitled";
    public const string OtherParts = "the other parts together";
    public const string SamePart = "the same part";

    public static string TooLarge(int megabytes) =>
        Text($"the file is larger than {megabytes} MB, which no tune is: give a smaller one");

    public static string NoHeader(ReadOnlySpan<byte> bytes) =>
        "this is no MIDI file, for it does not begin with MThd: "
        + (
            bytes.StartsWith("SMF2CLIP"u8) ? "it is a MIDI 2 clip; export it as a Standard MIDI File"
            : bytes[0] is 0xF0 ? "it is a bare system-exclusive message, which has no notes"
            : bytes.StartsWith("RIFF"u8) ? "it is wrapped in RIFF; export it as a Standard MIDI File"
            : bytes[0] == (byte)'<' ? "it looks like a web page or XML; fetch the file itself"
            : "give a Standard MIDI File"
        );

    public static string UnknownFormat(int format) =>
        Text($"the header says format {format}, but there are only 0, 1 and 2: {GetAgain}");

    public static string CutOff(long declared, long there) =>
        Text(
            $"the track should have {declared} bytes but the file ends after {there}: it is cut off, or the length is wrong; {GetAgain}"
        );

    public static string IllegalStatus(byte status) =>
        Text($"the status byte {status:X2} may not stand in a file, what follows cannot be read: {GetAgain}");

    public static string RealTimeByte(byte status) =>
        Text($"the real-time byte {status:X2} does not belong in a file and was passed over");

    public static string NoStatus(byte data) =>
        Text($"an event begins with {data:X2}, which says no kind, and none came before it: {GetAgain}");

    public static string StatusInData(byte status) =>
        Text($"{status:X2} stands where a data byte of 00 to 7F is due, what follows cannot be read: {GetAgain}");

    public static string BytesAfterEnd(int count) =>
        Text($"{Count(count, "byte")} left out after the track's end mark");

    public static string BytesBetweenChunks(int count) =>
        Text($"{Count(count, "byte")} left out that lie outside any track");

    public static string TrackCount(int declared, int found) =>
        Text($"the header says that there are {declared} tracks, but there are {found}; these were read");

    public static string Format0(int found) =>
        Text($"a file of format 0 should have one track but has {found}; they were read as sounding together");

    public static string TooManyTracks(int most) => Text($"more than {most} tracks; the rest was left out");

    public static string TooManyStrokes(int most) => Text($"more than {most} notes; the rest was left out");

    public static string TooManyMarks(int most) =>
        Text($"more than {most} tempo, metre, key and lyric events; the rest was left out");

    public static string TooLong(int quarters) =>
        Text($"the track goes on for more than {quarters} quarter notes; the rest was left out");

    public static string BadMeta(byte type) =>
        (
            type switch
            {
                0x51 => "this tempo",
                0x58 => "this time signature",
                _ => "this key signature",
            }
        ) + " is none that can be; it was left out";

    public static string AndMore(string message, int more) => Text($"{message} (and in {more} more places)");

    public static string Patterns(string parts) =>
        $"a file of format 2 holds independent patterns, not one piece: name the part to take, of {parts}";

    public static string NoSuchPart(string wanted, string parts) =>
        $"there is no part '{Short(wanted)}': name one of {parts}, or give its number";

    public static string Taken(string part, string parts) =>
        $"the tune was taken from part {part}, of {parts}; another can be named";

    public static string ChordsTaken(string parts, int symbols) =>
        Text($"{Count(symbols, "chord symbol")} read from {parts}");

    public static string ChordsUnknown(int count) =>
        Text($"{Count(count, "group of notes", "groups of notes")} not known as a chord; the one before goes on there");

    public static string TopLine(int count) =>
        Text($"{Count(count, "note")} left out below the top line, which is taken for the tune");

    public static string Moved(int moved, int notes, double most) =>
        Text($"{moved} of {notes} notes moved onto the grid of the beats, by {most:0.###} of a quarter note at most");

    public static string GuessedKey(string key) =>
        $"no key signature is given; by its notes it was taken to be in {key}";

    public static string SilentBars(int count) => Text($"{Count(count, "bar")} left out before the tune begins");

    public static string TooManyBars(int most) => Text($"the tune has more than {most} bars; the rest was left out");

    /// <summary>Such as <c>2 'Soprano'</c>.</summary>
    public static string Part(int number, string name) => Text($"{number} '{Short(name)}'");

    /// <summary>All parts, or the first of many.</summary>
    public static string Parts(IReadOnlyList<MidiPart> parts) =>
        string.Join(", ", parts.Take(MidiLimits.NamedParts))
        + (parts.Count > MidiLimits.NamedParts ? Text($" and {parts.Count - MidiLimits.NamedParts} more") : "");

    public static string OnChannel(string name, int channel) => Text($"{name}, channel {channel}");

    public static string Nameless(int track, int channel) => Text($"track {track}, channel {channel}");

    public static string Number(int number) => Text($"{number}");

    // "1 byte was", "3 bytes were".
    private static string Count(int count, string what, string? many = null) =>
        Text($"{count} {(count == 1 ? what + " was" : (many ?? what + "s") + " were")}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // Input is quoted in one line, without control characters and at no great length.
    private static string Short(string text)
    {
        var clean = string.Concat(text.Take(40).Select(c => char.IsControl(c) || char.IsSurrogate(c) ? '?' : c));
        return text.Length > 40 ? clean + "…" : clean;
    }
}
