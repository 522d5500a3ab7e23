using NAudio.Midi;

namespace Stridewright.Testing;

/// <summary>
/// The melodies as played that come with the outside tunes. Three of them begin the tune anew at a repeat end without a
/// start; ABC 2.1, 4.8 goes back to the last double bar or repeat end. Those are cut into spans of their own notes and
/// put together in the standard's order.
/// </summary>
public static class AnswerKeys
{
    // Spans of the key in quarters, in the order in which the standard plays them.
    private static readonly Dictionary<string, (double From, double To)[]> InTheStandardsOrder = new()
    {
        ["gingerhogs-no2"] = [(0, 54), (90, 108)],
        ["falling-about"] = [(0, 96), (160, 192)],
        ["wassail-1"] = [(0, 54.5), (79, 106.5)],
    };

    /// <summary>Path of the melody beside a tune, written anew into <paramref name="folder"/> where its order is not the
    /// standard's; null: there is none.</summary>
    public static string? Melody(string tunePath, string folder)
    {
        var key = Path.ChangeExtension(tunePath, ".melody.mid");
        if (!File.Exists(key))
        {
            return null;
        }
        if (!InTheStandardsOrder.TryGetValue(Path.GetFileNameWithoutExtension(tunePath), out var spans))
        {
            return key;
        }
        var anew = Path.Combine(folder, Path.GetFileName(key));
        if (!File.Exists(anew))
        {
            Write(key, spans, anew);
        }
        return anew;
    }

    private static void Write(string key, (double From, double To)[] spans, string path)
    {
        var read = new MidiFile(key, strictChecking: false);
        var notes = read.Events.SelectMany(track => track.OfType<NoteOnEvent>()).Where(n => n.OffEvent is not null);
        var written = new MidiEventCollection(0, read.DeltaTicksPerQuarterNote);
        var begin = 0.0;
        foreach (var (from, to) in spans)
        {
            foreach (var note in notes.Where(n => At(n) >= from && At(n) < to))
            {
                var at = note.AbsoluteTime + Ticks(begin - from);
                var again = new NoteOnEvent(at, 1, note.NoteNumber, note.Velocity, note.NoteLength);
                written.AddEvent(again, 0);
                written.AddEvent(again.OffEvent!, 0);
            }
            begin += to - from;
        }
        written.PrepareForExport();
        MidiFile.Export(path, written);

        double At(NoteOnEvent note) => (double)note.AbsoluteTime / read.DeltaTicksPerQuarterNote;
        long Ticks(double quarters) => (long)Math.Round(quarters * read.DeltaTicksPerQuarterNote);
    }
}
