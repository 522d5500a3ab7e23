namespace Stridewright.Formats.Midi;

/// <summary>What one player plays: the strokes of a track on one channel, percussion left out.</summary>
/// <param name="Number">Place among the parts, from 1, by which it can be named.</param>
/// <param name="Strokes">By tick, then key. Never empty.</param>
internal sealed record MidiPart(int Number, string Name, MidiTrack Track, IReadOnlyList<MidiStroke> Strokes)
{
    private const int Percussion = 10; // General MIDI

    public override string ToString() => MidiMessages.Part(Number, Name);

    /// <summary>The parts of a file in the order of its tracks and channels.</summary>
    public static List<MidiPart> Of(MidiContents file)
    {
        var parts = new List<MidiPart>();
        foreach (var track in file.Tracks)
        {
            var channels = track.Strokes.Where(s => s.Channel != Percussion).GroupBy(s => s.Channel).ToList();
            foreach (var channel in channels.OrderBy(c => c.Key))
            {
                var name =
                    track.Name.Length > 0 && channels.Count > 1 ? MidiMessages.OnChannel(track.Name, channel.Key)
                    : track.Name.Length > 0 ? track.Name
                    : MidiMessages.Nameless(track.Number, channel.Key);
                parts.Add(new MidiPart(parts.Count + 1, name, track, channel.ToList()));
            }
        }
        return parts;
    }

    /// <summary>The part with this number or name, or whose name alone holds these words; null: there is none.</summary>
    public static MidiPart? Named(IReadOnlyList<MidiPart> parts, string wanted)
    {
        var text = wanted.Trim();
        bool Is(MidiPart part) => part.Name.Equals(text, StringComparison.OrdinalIgnoreCase);
        bool Holds(MidiPart part) => part.Name.Contains(text, StringComparison.OrdinalIgnoreCase);
        return parts.FirstOrDefault(p => MidiMessages.Number(p.Number) == text)
            ?? parts.FirstOrDefault(Is)
            ?? (text.Length > 0 && parts.Count(Holds) == 1 ? parts.First(Holds) : null);
    }

    /// <summary>Strokes that are struck together, within a 32nd note of the first of them.</summary>
    public static IEnumerable<ArraySegment<MidiStroke>> Struck(MidiStroke[] strokes, int ticksPerQuarter)
    {
        for (var from = 0; from < strokes.Length; )
        {
            var to = from + 1;
            while (to < strokes.Length && strokes[to].Tick - strokes[from].Tick <= ticksPerQuarter / 16)
            {
                to++;
            }
            yield return new(strokes, from, to - from);
            from = to;
        }
    }

    /// <summary>Pitch classes as a set of twelve bits, bit 0 = C.</summary>
    public static int PitchClasses(IEnumerable<MidiStroke> strokes) =>
        strokes.Aggregate(0, (set, s) => set | 1 << (s.Key % 12));
}
