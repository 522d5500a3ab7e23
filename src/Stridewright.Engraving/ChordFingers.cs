using System.Xml.Linq;

namespace Stridewright.Engraving;

/// <summary>
/// The fingers of a chord, made ready for the engraver. It sets each above or below the head of its own note, so that heads
/// which stand aside for a neighbour pull the column apart; all at one note make one column.
/// </summary>
internal static class ChordFingers
{
    /// <summary>Gathers the fingers of each chord at one of its notes, the nearest to the staff first.</summary>
    public static void Stack(XElement root)
    {
        foreach (var chord in Chords(root).Where(c => c.Count > 1))
        {
            var fingered = chord.Where(n => Fingers(n).Any()).ToList();
            if (fingered.Count < 2)
            {
                continue;
            }
            var isBelow = Fingers(fingered[0]).Any(f => (string?)f.Attribute("placement") == "below");
            var ordered = fingered.OrderBy(n => isBelow ? -Height(n) : Height(n)).ToList();
            var column = ordered.SelectMany(Fingers).ToList();
            column.ForEach(f => f.Remove());
            ordered[0].Element("notations")!.Element("technical")!.Add(column);
        }
    }

    private static IEnumerable<XElement> Fingers(XElement note) =>
        note.Elements("notations").Elements("technical").Elements("fingering");

    private static IEnumerable<List<XElement>> Chords(XElement root)
    {
        foreach (var measure in root.Elements("part").Elements("measure"))
        {
            var chord = new List<XElement>();
            foreach (var note in measure.Elements("note"))
            {
                if (note.Element("chord") is null && chord.Count > 0)
                {
                    yield return chord;
                    chord = [];
                }
                chord.Add(note);
            }
            yield return chord;
        }
    }

    /// <summary>Steps of the staff, seven to the octave.</summary>
    private static int Height(XElement note) =>
        note.Element("pitch") is { } pitch
            ? 7 * ((int?)pitch.Element("octave") ?? 0)
                + "CDEFGAB".IndexOf((string?)pitch.Element("step") ?? "C", StringComparison.Ordinal)
            : 0;
}
