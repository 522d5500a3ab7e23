using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>A chord at a time of the file's time line.</summary>
internal readonly record struct TimedChord(ScoreTime At, ChordSymbol Chord);

/// <summary>
/// Chord symbols read off an accompaniment. Block chords are named one by one; figures (bass and chord, broken chords,
/// several lines) beat by beat, by the cheapest sequence of triads and sevenths, where a change has its price.
/// </summary>
/// <param name="keyAt">The key at a time, for the spelling.</param>
internal sealed class Harmony(MidiContents file, BarPlan plan, Func<ScoreTime, Key> keyAt)
{
    private const double BlockShare = 0.8;

    /// <summary>Of a part alone, the share of its strikes that must be chords for it to be its own accompaniment.</summary>
    private const double OwnShare = 0.2;

    /// <summary>Groups of notes that no chord could be named for.</summary>
    public int Unknown { get; private set; }

    /// <summary>Where the chords were found; empty when there are none.</summary>
    public string Source { get; private set; } = "";

    public List<TimedChord> Read(MidiPart melody, IReadOnlyList<MidiPart> parts)
    {
        var others = parts.Where(p => p.Number != melody.Number).ToList();
        var block = others.Where(p => Chordal(p) >= BlockShare).MaxBy(p => p.Strokes.Count);
        if (block is not null)
        {
            return Found(Blocks(block), block.ToString());
        }
        if (others.Count > 0)
        {
            var all = others.SelectMany(p => p.Strokes).OrderBy(s => s.Tick).ThenBy(s => s.Key).ToArray();
            return Found(new FiguredHarmony(file, plan, keyAt).Read(all, melody.Strokes), MidiMessages.OtherParts);
        }
        return Chordal(melody) switch
        {
            >= BlockShare => Found(Blocks(melody), MidiMessages.SamePart),
            >= OwnShare => Found(
                new FiguredHarmony(file, plan, keyAt).Read([.. melody.Strokes], []),
                MidiMessages.SamePart
            ),
            _ => [],
        };
    }

    private List<TimedChord> Found(List<TimedChord> chords, string source)
    {
        Source = chords.Count > 0 ? source : "";
        return chords;
    }

    // Share of strikes with three pitch classes or more.
    private double Chordal(MidiPart part)
    {
        var groups = MidiPart.Struck([.. part.Strokes], file.TicksPerQuarter).ToList();
        return groups.Count(g => int.PopCount(MidiPart.PitchClasses(g)) >= 3) / (double)groups.Count;
    }

    private List<TimedChord> Blocks(MidiPart part)
    {
        var grid = new BeatGrid(plan, file.TicksPerQuarter, part.Strokes.Select(s => s.Tick));
        var chords = new List<TimedChord>();
        foreach (var group in MidiPart.Struck([.. part.Strokes], file.TicksPerQuarter))
        {
            var at = grid.Place(group[0].Tick);
            var set = MidiPart.PitchClasses(group);
            if (int.PopCount(set) < 3)
            {
                continue;
            }
            if (ChordNaming.Name(set, group.Min(s => s.Key), keyAt(at)) is not { } chord)
            {
                Unknown++;
            }
            else if (chords.Count == 0 || (chords[^1].Chord != chord && chords[^1].At < at))
            {
                chords.Add(new(at, chord));
            }
        }
        return chords;
    }
}
