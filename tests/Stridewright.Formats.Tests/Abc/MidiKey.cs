using NAudio.Midi;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>Notes of an answer-key MIDI file, read by a general library: onset and length in quarters, key number.</summary>
internal sealed record MidiKey(double Tick, IReadOnlyList<(double Onset, double Length, int Key)> Notes)
{
    public static MidiKey Read(string path)
    {
        var file = new MidiFile(path, strictChecking: false);
        double quarter = file.DeltaTicksPerQuarterNote;
        var notes = file
            .Events.SelectMany(track => track)
            .OfType<NoteOnEvent>()
            .Where(note => note.Velocity > 0 && note.OffEvent is not null)
            .Select(note => (note.AbsoluteTime / quarter, note.NoteLength / quarter, note.NoteNumber))
            .OrderBy(note => note.Item1)
            .ThenBy(note => note.NoteNumber)
            .ToList();
        return new MidiKey(1 / quarter, notes);
    }
}
