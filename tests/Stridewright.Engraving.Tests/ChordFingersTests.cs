using System.Globalization;
using System.Xml.Linq;

namespace Stridewright.Engraving.Tests;

/// <summary>Fingers of chords on the page.</summary>
public sealed class ChordFingersTests(WarmEngraver warm)
{
    // Common practice: one column a chord, in the order of the keys, above the right hand's staff and below the left's.
    [Fact]
    public void Fingers_of_a_chord_stand_in_one_column_outside_the_staves_in_the_order_of_its_keys()
    {
        var bar =
            "<measure number=\"1\">"
            + PianoXml.Start
            + Chord(1, "above", ("C", 5, 1), ("D", 5, 2), ("G", 5, 5))
            + "<backup><duration>8</duration></backup>"
            + Chord(2, "below", ("E", 3, 5), ("F", 3, 4), ("B", 3, 1))
            + "</measure>";
        var page = XDocument.Parse(warm.Engrave(PianoXml.Score(bar)).Pages[0]);
        var fingers = page.Descendants()
            .Where(e => (string?)e.Attribute("class") == "fing")
            .Select(e => e.Elements().First(t => t.Name.LocalName == "text"))
            .Select(t => (Digit: t.Value.Trim(), X: Number(t, "x"), Y: Number(t, "y")))
            .ToList();
        Assert.Equal(6, fingers.Count);
        var heads = page.Descendants().Where(e => (string?)e.Attribute("class") == "notehead").ToList();
        var ys = heads
            .SelectMany(h => h.Descendants())
            .Where(e => e.Attribute("transform") is not null)
            .Select(Y)
            .ToList();
        var right = fingers.Where(f => f.Y < ys.Min()).OrderBy(f => f.Y).ToList();
        var left = fingers.Where(f => f.Y > ys.Max()).OrderBy(f => f.Y).ToList();
        Assert.Equal(["5", "2", "1"], right.Select(f => f.Digit));
        Assert.Equal(["1", "4", "5"], left.Select(f => f.Digit));
        Assert.Single(right.Select(f => f.X).Distinct());
        Assert.Single(left.Select(f => f.X).Distinct());
    }

    private static string Chord(int staff, string placement, params (string Step, int Octave, int Finger)[] notes) =>
        string.Concat(
            notes.Select(
                (n, i) =>
                    $"<note>{(i > 0 ? "<chord/>" : "")}<pitch><step>{n.Step}</step><octave>{n.Octave}</octave></pitch>"
                    + $"<duration>8</duration><voice>{staff}</voice><type>half</type><staff>{staff}</staff><notations>"
                    + $"<technical><fingering placement=\"{placement}\">{n.Finger}</fingering></technical></notations></note>"
            )
        );

    private static double Number(XElement e, string name) =>
        double.Parse((string)e.Attribute(name)!, CultureInfo.InvariantCulture);

    // Such as translate(2000, 1500) scale(0.72, 0.72).
    private static double Y(XElement head) =>
        double.Parse(((string)head.Attribute("transform")!).Split(',', ')')[1], CultureInfo.InvariantCulture);
}
