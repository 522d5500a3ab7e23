using System.Globalization;
using System.Xml.Linq;

namespace Stridewright.Testing;

/// <summary>What is struck together in one voice of one staff.</summary>
/// <param name="At">Quarters from the beginning of the piece.</param>
/// <param name="Length">Quarters, ties merged.</param>
/// <param name="Keys">MIDI numbers, lowest first.</param>
/// <param name="Id">Of its first note.</param>
public sealed record SheetStroke(double At, double Length, int Voice, IReadOnlyList<int> Keys, string Id)
{
    public double End => At + Length;

    public int Low => Keys[0];

    public int High => Keys[^1];

    /// <summary>Crushed notes before it.</summary>
    public IReadOnlyList<int> Graces { get; init; } = [];

    /// <summary>True for what is there as this, by its id.</summary>
    public bool Is(string role) => Id.Contains("-" + role + "-", StringComparison.Ordinal);
}

/// <summary>One bar of a sheet: what is struck in it, in time order.</summary>
/// <param name="Start">Quarters from the beginning of the piece.</param>
public sealed record SheetBar(
    string Number,
    double Start,
    double Length,
    IReadOnlyList<SheetStroke> Right,
    IReadOnlyList<SheetStroke> Left
);

/// <summary>
/// A score as it stands in a MusicXML file, read by itself: staves, voices, ties and chords of the standard, and nothing
/// of the project but the ids, so that what is found in it is found in what was written.
/// </summary>
public static class Sheet
{
    private const double Same = 1e-6;

    /// <summary>The bars of a score on two staves, or with a left hand alone.</summary>
    public static IReadOnlyList<SheetBar> Read(Stream musicXml)
    {
        var root = XDocument.Load(musicXml).Root!;
        var parts = root.Elements("part").ToList();
        var part = parts.First(p => p.Descendants("staff").Any(s => s.Value == "2"));
        var strokes = new List<(int Staff, SheetStroke Stroke)>();
        var bars = new List<(string Number, double Start, double Length)>();
        double start = 0,
            divisions = 1;
        foreach (var measure in part.Elements("measure"))
        {
            double at = 0,
                last = 0,
                length = 0;
            var graces = new List<int>();
            foreach (var element in measure.Elements())
            {
                divisions =
                    element.Name == "attributes" && element.Element("divisions") is { } d ? Number(d) : divisions;
                var duration = element.Element("duration") is { } given ? Number(given) / divisions : 0;
                switch (element.Name.LocalName)
                {
                    case "backup":
                        at -= duration;
                        break;
                    case "forward":
                        at += duration;
                        break;
                    case "note" when element.Element("grace") is not null:
                        graces.Add(Key(element));
                        break;
                    case "note":
                        var together = element.Element("chord") is not null;
                        last = together ? last : at;
                        at = together ? at : at + duration;
                        Add(strokes, element, start + last, duration, together, graces);
                        break;
                }
                length = Math.Max(length, at);
            }
            bars.Add((measure.Attribute("number")!.Value, start, length));
            start += length;
        }
        return
        [
            .. bars.Select(b => new SheetBar(
                b.Number,
                b.Start,
                b.Length,
                Of(b.Start, b.Length, 1),
                Of(b.Start, b.Length, 2)
            )),
        ];

        IReadOnlyList<SheetStroke> Of(double from, double length, int staff) =>
            [
                .. strokes
                    .Where(s => s.Staff == staff && s.Stroke.At > from - Same && s.Stroke.At < from + length - Same)
                    .Select(s => s.Stroke with { Keys = [.. s.Stroke.Keys.Order()] })
                    .OrderBy(s => s.At)
                    .ThenBy(s => s.Voice),
            ];
    }

    private static void Add(
        List<(int Staff, SheetStroke Stroke)> strokes,
        XElement note,
        double at,
        double duration,
        bool together,
        List<int> graces
    )
    {
        if (note.Element("pitch") is null)
        {
            return;
        }
        var staff = (int?)note.Element("staff") ?? 1;
        var voice = (int)note.Element("voice")!;
        var key = Key(note);
        if (note.Elements("tie").Any(t => (string?)t.Attribute("type") == "stop"))
        {
            var held = strokes.FindLastIndex(s =>
                s.Staff == staff && s.Stroke.Keys.Contains(key) && Math.Abs(s.Stroke.End - at) < Same
            );
            if (held >= 0)
            {
                strokes[held] = (staff, strokes[held].Stroke with { Length = strokes[held].Stroke.Length + duration });
            }
            return;
        }
        var open = strokes.FindLastIndex(s =>
            s.Staff == staff && s.Stroke.Voice == voice && Math.Abs(s.Stroke.At - at) < Same
        );
        if (together && open >= 0)
        {
            strokes[open] = (staff, strokes[open].Stroke with { Keys = [.. strokes[open].Stroke.Keys, key] });
            return;
        }
        strokes.Add(
            (
                staff,
                new SheetStroke(at, duration, voice, [key], (string?)note.Attribute("id") ?? "")
                {
                    Graces = [.. graces],
                }
            )
        );
        graces.Clear();
    }

    private static double Number(XElement element) => double.Parse(element.Value, CultureInfo.InvariantCulture);

    private static int Key(XElement note)
    {
        var pitch = note.Element("pitch")!;
        var step = "C D EF G A B".IndexOf(pitch.Element("step")!.Value, StringComparison.Ordinal);
        return 12 * ((int)pitch.Element("octave")! + 1) + step + ((int?)pitch.Element("alter") ?? 0);
    }
}
