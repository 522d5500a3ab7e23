using System.Globalization;
using System.Text;

namespace Stridewright.Engraving.Tests;

/// <summary>Two-staff piano scores in MusicXML 4.0, made for these tests.</summary>
internal static class PianoXml
{
    public const string Title = "The Broken Kettle";
    public const string Subtitle = "A made-up rag";
    public const string Composer = "Nobody at All";

    private const string Steps = "CDEFGAB";

    /// <summary>Bars of 2/4 with sixteenths, ties over mid-bar, octaves, a striding left hand and one chord symbol
    /// each. The right hand's notes are <c>n{bar}.{index}</c>, the first bass <c>l{bar}</c>, the bars <c>b{bar}</c>.</summary>
    public static string Rag(int bars, Func<int, string>? harmony = null)
    {
        harmony ??= bar => Harmony(Steps[bar * 3 % 7].ToString(), bar % 3 == 0 ? -1 : 0, "dominant", "7");
        var text = new StringBuilder();
        for (var bar = 1; bar <= bars; bar++)
        {
            text.Append(CultureInfo.InvariantCulture, $"<measure number=\"{bar}\" id=\"b{bar}\">");
            text.Append(bar == 1 ? Start : "").Append(harmony(bar));
            RightHand(text, bar);
            text.Append("<backup><duration>8</duration></backup>");
            LeftHand(text, bar);
            text.Append(bar == bars ? "<barline location=\"right\"><bar-style>light-heavy</bar-style></barline>" : "");
            text.Append("</measure>\n");
        }
        return Score(text.ToString());
    }

    /// <summary>A score of these bars, with a page layout that is not ours.</summary>
    public static string Score(string measures) =>
        $"""
            <?xml version="1.0" encoding="UTF-8"?>
            <score-partwise version="4.0"><work><work-title>{Title}</work-title></work>
            <identification><creator type="composer">{Composer}</creator></identification>
            <defaults><scaling><millimeters>7</millimeters><tenths>40</tenths></scaling><page-layout>
            <page-height>1100</page-height><page-width>800</page-width></page-layout></defaults>
            <credit page="1"><credit-type>subtitle</credit-type><credit-words>{Subtitle}</credit-words></credit>
            <part-list><score-part id="P1"><part-name print-object="no">Piano</part-name></score-part></part-list>
            <part id="P1">{measures}</part></score-partwise>
            """;

    /// <summary>A chord symbol; the text of the kind is what is to be printed after the root.</summary>
    public static string Harmony(string root, int alter, string kind, string text, string bass = "") =>
        $"<harmony><root><root-step>{root}</root-step>{(alter == 0 ? "" : $"<root-alter>{alter}</root-alter>")}</root>"
        + $"<kind text=\"{text}\">{kind}</kind>"
        + (bass.Length == 0 ? "" : $"<bass><bass-step>{bass}</bass-step></bass>")
        + "</harmony>";

    /// <summary>A note of the first staff.</summary>
    public static string Note(string id, string pitch, int duration, string type, string more = "", int staff = 1) =>
        $"<note id=\"{id}\">{(pitch.StartsWith('+') ? "<chord/>" : "")}<pitch><step>{pitch.TrimStart('+')[0]}</step>"
        + $"<octave>{pitch[^1]}</octave></pitch><duration>{duration}</duration><voice>{(staff == 1 ? 1 : 5)}</voice>"
        + $"<type>{type}</type>{more}<staff>{staff}</staff></note>";

    /// <summary>Attributes, words and tempo of a first bar.</summary>
    public const string Start =
        "<attributes><divisions>4</divisions><key><fifths>-3</fifths></key><time><beats>2</beats>"
        + "<beat-type>4</beat-type></time><staves>2</staves><clef number=\"1\"><sign>G</sign><line>2</line></clef>"
        + "<clef number=\"2\"><sign>F</sign><line>4</line></clef></attributes>"
        + "<direction placement=\"above\"><direction-type><words font-weight=\"bold\">Not fast </words>"
        + "</direction-type><direction-type><metronome><beat-unit>quarter</beat-unit><per-minute>84</per-minute>"
        + "</metronome></direction-type><staff>1</staff><sound tempo=\"84\"/></direction>";

    private static void RightHand(StringBuilder text, int bar)
    {
        // Sixteenth, eighth, sixteenth tied on, three sixteenths: the figure that ragtime is made of.
        (int Length, string Type, int Up, string Beams)[] figure =
        [
            (1, "16th", 0, "begin begin"),
            (2, "eighth", 2, "continue"),
            (1, "16th", 4, "end backward-hook"),
            (1, "16th", 4, "begin begin"),
            (1, "16th", 5, "continue continue"),
            (1, "16th", 3, "continue continue"),
            (1, "16th", 1, "end end"),
        ];
        for (var i = 0; i < figure.Length; i++)
        {
            var (length, type, up, beams) = figure[i];
            var tie =
                i == 2 ? "start"
                : i == 3 ? "stop"
                : "";
            var levels = beams
                .Split(' ')
                .Select((b, level) => $"<beam number=\"{level + 1}\">{b.Replace('-', ' ')}</beam>");
            var pitch = bar % 5 + up;
            text.Append(Tied($"n{bar}.{i}", Pitch(pitch, 5), length, type, tie, string.Concat(levels)));
            if (i == 0)
            {
                text.Append(Tied($"n{bar}.o", "+" + Pitch(pitch, 6), length, type, "", ""));
            }
        }
    }

    private static void LeftHand(StringBuilder text, int bar)
    {
        for (var half = 0; half < 2; half++)
        {
            var root = (bar * 3 + half * 4) % 7;
            var id = half == 0 ? $"l{bar}" : $"m{bar}";
            text.Append(Note(id, Pitch(root, 2), 2, "eighth", staff: 2));
            foreach (var (up, index) in new[] { 0, 2, 4 }.Select((up, index) => (up, index)))
            {
                text.Append(
                    Note($"{id}.{index}", (index > 0 ? "+" : "") + Pitch(root % 4 + up, 3), 2, "eighth", staff: 2)
                );
            }
        }
    }

    private static string Tied(string id, string pitch, int length, string type, string tie, string beams)
    {
        if (tie.Length == 0)
        {
            return Note(id, pitch, length, type).Replace("</note>", beams + "</note>", StringComparison.Ordinal);
        }
        return Note(id, pitch, length, type)
            .Replace("<voice>", $"<tie type=\"{tie}\"/><voice>", StringComparison.Ordinal)
            .Replace(
                "</note>",
                $"{beams}<notations><tied type=\"{tie}\"/></notations></note>",
                StringComparison.Ordinal
            );
    }

    private static string Pitch(int steps, int octave) =>
        string.Create(CultureInfo.InvariantCulture, $"{Steps[steps % 7]}{octave + steps / 7}");
}
