using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// Reads a tune from a Standard MIDI File: the melody from the part that is named or most like one, its top line, put on
/// the grid of the beats; chord symbols from the other parts where they make chords. What was chosen, moved and left out
/// is said. Whatever the input, there is a result with findings and no exception.
/// </summary>
public static class MidiTuneReader
{
    /// <param name="part">Name or number (from 1) of the part that has the tune; null: it is found.</param>
    public static Reading<Tune> Read(Stream source, string? part = null)
    {
        var reading = MidiReader.Read(source);
        if (reading.Value is not { } file)
        {
            return new(null, reading.Diagnostics);
        }
        var findings = new List<Diagnostic>(reading.Diagnostics);
        var tune = Read(file, part, findings);
        return new(tune, findings.ToValueList());
    }

    private static Tune? Read(MidiContents file, string? wanted, List<Diagnostic> findings)
    {
        var parts = MidiPart.Of(file);
        if (Choose(file, parts, wanted, findings) is not { } melody)
        {
            return null;
        }
        if (file.Format == 2)
        {
            // Its patterns have nothing to do with each other.
            file = file with
            {
                Tracks = [melody.Track],
            };
            parts = parts.Where(p => p.Track.Number == melody.Track.Number).ToList();
        }
        return new MidiTuneBuilder(file, findings).Build(melody, parts);
    }

    private static MidiPart? Choose(MidiContents file, List<MidiPart> parts, string? wanted, List<Diagnostic> findings)
    {
        if (parts.Count == 0)
        {
            var first = file.Tracks.SelectMany(t => t.Strokes).First();
            findings.Insert(0, new(Severity.Error, PlaceOf(first), MidiMessages.OnlyPercussion));
            return null;
        }
        var names = MidiMessages.Parts(parts);
        if (wanted is not null)
        {
            var named = MidiPart.Named(parts, wanted);
            if (named is null)
            {
                findings.Insert(
                    0,
                    new(Severity.Error, PlaceOf(parts[0].Strokes[0]), MidiMessages.NoSuchPart(wanted, names))
                );
            }
            return named;
        }
        if (file.Format == 2 && parts.Exists(p => p.Track.Number != parts[0].Track.Number))
        {
            var second = parts.Find(p => p.Track.Number != parts[0].Track.Number)!;
            findings.Insert(0, new(Severity.Error, PlaceOf(second.Strokes[0]), MidiMessages.Patterns(names)));
            return null;
        }
        var found = MelodyFinding.Find(parts, file.TicksPerQuarter);
        if (parts.Count > 1)
        {
            findings.Add(new(Severity.Note, PlaceOf(found.Strokes[0]), MidiMessages.Taken(found.ToString(), names)));
        }
        return found;
    }

    internal static Place PlaceOf(MidiStroke stroke) => new(Byte: stroke.Byte, Tick: stroke.Tick);
}
