using System.Text;
using Stridewright.Arranging;

namespace Stridewright.Workbench.Inputs;

/// <summary>What a file holds.</summary>
internal enum InputKind
{
    Empty,
    Abc,
    MusicXml,
    Midi,

    /// <summary>An arrangement file of our own.</summary>
    Arrangement,
    Unknown,
}

/// <summary>Tells what a file holds: by its first bytes where they are clear, else by its ending, else by its fields.</summary>
internal static class InputKinds
{
    /// <summary>Endings that a folder is searched for: written tunes.</summary>
    public static readonly string[] WrittenEndings = [".abc", ".musicxml", ".mxl", ".xml"];

    /// <summary>Endings that a folder is searched for where scores are wanted.</summary>
    public static readonly string[] ScoreEndings = [".musicxml", ".mxl", ".xml"];

    /// <summary>Endings that a folder is searched for: tunes as played.</summary>
    public static readonly string[] PlayedEndings = [".mid", ".midi"];

    /// <summary>Ending of arrangement files; a folder is not searched for them, since their tunes may lie there too.</summary>
    public const string ArrangementEnding = ".stridewright";

    private static readonly byte[] FirstWords = Encoding.UTF8.GetBytes(ArrangementText.FirstWords);

    public static InputKind Of(string path, ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith("MThd"u8))
        {
            return InputKind.Midi;
        }
        var ending = Path.GetExtension(path).ToLowerInvariant();
        // A web page that is named like a MIDI file is no MusicXML either.
        var isNamedMidi = PlayedEndings.Contains(ending);
        if (bytes.IsEmpty && !isNamedMidi)
        {
            return InputKind.Empty;
        }
        if (bytes.StartsWith("PK"u8) || (FirstMark(bytes) == '<' && !isNamedMidi))
        {
            return InputKind.MusicXml;
        }
        var text = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        if (text.StartsWith(FirstWords))
        {
            return InputKind.Arrangement;
        }
        return ending switch
        {
            ArrangementEnding => InputKind.Arrangement,
            ".abc" => InputKind.Abc,
            ".musicxml" or ".xml" or ".mxl" => InputKind.MusicXml,
            _ when isNamedMidi => InputKind.Midi,
            _ => HasKeyField(bytes) ? InputKind.Abc : InputKind.Unknown,
        };
    }

    // The first byte that is no byte order mark, white space or (in two-byte text) zero.
    private static byte FirstMark(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> passed = [0xEF, 0xBB, 0xBF, 0xFE, 0xFF, 0, (byte)' ', (byte)'\t', (byte)'\r', (byte)'\n'];
        var at = bytes.IndexOfAnyExcept(passed);
        return at < 0 ? (byte)0 : bytes[at];
    }

    /// <summary>Whether typed text has a field of ABC, a letter and a colon at the start of a line.</summary>
    public static bool HasFields(string text) =>
        text.Split('\n').Any(line => line.Length > 1 && char.IsAsciiLetter(line[0]) && line[1] == ':');

    // Every ABC tune has a key field at the start of a line (ABC 2.1, section 2.2).
    private static bool HasKeyField(ReadOnlySpan<byte> bytes) =>
        bytes.StartsWith("K:"u8) || bytes.IndexOf("\nK:"u8) >= 0;
}
