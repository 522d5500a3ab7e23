using System.Globalization;
using System.Xml.Linq;

namespace Stridewright.Cli.Tests;

/// <summary>One measure of a written MusicXML score, read by itself.</summary>
/// <param name="Fifths">Signature in force.</param>
/// <param name="Divisions">Of a quarter.</param>
internal sealed record Bar(XElement Measure, int Fifths, int Divisions)
{
    public bool Implicit => (string?)Measure.Attribute("implicit") == "yes";

    public string? Heading => (string?)Measure.Descendants("rehearsal").FirstOrDefault();

    public IEnumerable<string> Words => Measure.Descendants("words").Select(w => w.Value);

    public IEnumerable<string> Chords =>
        Measure
            .Elements("harmony")
            .Select(h => h.Element("root")!.Element("root-step")!.Value + " " + h.Element("kind")!.Value);

    /// <summary>Quarters a minute printed here.</summary>
    public double Tempo =>
        double.Parse(Measure.Descendants("sound").First().Attribute("tempo")!.Value, CultureInfo.InvariantCulture);

    public static Bar[] Of(XDocument score)
    {
        var (fifths, divisions) = (0, 1);
        var bars = new List<Bar>();
        foreach (var measure in score.Root!.Elements("part").Single().Elements("measure"))
        {
            fifths = (int?)measure.Descendants("fifths").FirstOrDefault() ?? fifths;
            divisions = (int?)measure.Descendants("divisions").FirstOrDefault() ?? divisions;
            bars.Add(new Bar(measure, fifths, divisions));
        }
        return [.. bars];
    }

    public bool Has(string element) => Measure.Descendants(element).Any();

    public bool Has(string element, string attribute, string value) =>
        Measure.Descendants(element).Any(e => (string?)e.Attribute(attribute) == value);

    public double Seconds(double quartersPerMinute) => Length * 60 / quartersPerMinute;

    /// <summary>In quarters, by the first voice.</summary>
    private double Length =>
        Measure
            .Elements("note")
            .Where(n => (string?)n.Element("voice") == "1" && n.Element("chord") is null)
            .Sum(n => (double?)n.Element("duration") ?? 0) / Divisions;

    public int Strokes(string staff) => Onsets(staff).Count;

    /// <summary>What a staff strikes, ties left out: place in quarters, keys as semitones.</summary>
    public List<(double At, List<int> Keys)> Onsets(string staff)
    {
        var found = new SortedDictionary<int, List<int>>();
        var (now, start) = (0, 0);
        foreach (var e in Measure.Elements())
        {
            var duration = (int?)e.Element("duration") ?? 0;
            if (e.Name == "backup")
            {
                now -= duration;
            }
            else if (e.Name == "note")
            {
                var isChord = e.Element("chord") is not null;
                start = isChord ? start : now;
                now += isChord ? 0 : duration;
                var isTied = e.Elements("tie").Any(t => (string?)t.Attribute("type") == "stop");
                if (e.Element("pitch") is { } pitch && !isTied && (string?)e.Element("staff") == staff)
                {
                    var keys = found.TryGetValue(start, out var there) ? there : found[start] = [];
                    keys.Add(Key(pitch));
                }
            }
        }
        return [.. found.Select(o => ((double)o.Key / Divisions, o.Value))];
    }

    private static int Key(XElement pitch) =>
        12 * ((int)pitch.Element("octave")! + 1)
        + "C.D.EF.G.A.B".IndexOf(pitch.Element("step")!.Value, StringComparison.Ordinal)
        + ((int?)pitch.Element("alter") ?? 0);
}
