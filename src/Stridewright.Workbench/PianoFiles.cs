using Stridewright.Music;
using Stridewright.Sound;

namespace Stridewright.Workbench;

/// <summary>The recordings of the piano, in the folder <c>piano</c> beside the program.</summary>
public static class PianoFiles
{
    /// <summary>Recorded keys as MIDI note numbers, low to high.</summary>
    public static ValueList<int> Keys { get; } = RecordedPiano.Files.Select(f => f.Key).ToValueList();

    /// <summary>The Ogg Vorbis recording of one of <see cref="Keys"/>; null for another key.</summary>
    public static Stream? OfKey(int key) =>
        RecordedPiano.Files.FirstOrDefault(f => f.Key == key).File is { } file ? Open(file) : null;

    internal static Stream Open(string file) => File.OpenRead(Path.Combine(AppContext.BaseDirectory, "piano", file));
}
