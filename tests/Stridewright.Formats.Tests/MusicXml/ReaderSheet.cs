using System.Text;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>Writes small MusicXML files for the reader's tests and shows what was read as text.</summary>
internal static class ReaderSheet
{
    public const string FourFour =
        "<attributes><divisions>4</divisions><key><fifths>0</fifths></key>"
        + "<time><beats>4</beats><beat-type>4</beat-type></time></attributes>";

    public const string PianoFourFour =
        "<attributes><divisions>4</divisions><key><fifths>0</fifths></key>"
        + "<time><beats>4</beats><beat-type>4</beat-type></time><staves>2</staves></attributes>";

    /// <summary>A file of one part; each text is the inside of a bar, numbered from 1.</summary>
    public static string Part(params string[] bars) =>
        Score(
            "<part id='P1'>"
                + string.Concat(bars.Select((b, i) => $"<measure number='{i + 1}'>{b}</measure>"))
                + "</part>"
        );

    public static string Score(string parts, string head = "") =>
        $"<score-partwise version='4.0'>{head}<part-list><score-part id='P1'><part-name>One</part-name></score-part>"
        + $"<score-part id='P2'><part-name>Two</part-name></score-part></part-list>{parts}</score-partwise>";

    /// <summary>A note such as <c>F#4</c> of so many divisions (16 to a whole note), or a rest <c>r</c>.</summary>
    public static string Note(string pitch, int duration, string more = "", string before = "")
    {
        var sound = "<rest/>";
        if (pitch != "r")
        {
            var p = Pitch.Parse(pitch);
            sound = $"<pitch><step>{p.Step}</step><alter>{p.Alter}</alter><octave>{p.Octave}</octave></pitch>";
        }
        var length = duration > 0 ? $"<duration>{duration}</duration>" : "";
        return $"<note>{before}{sound}{length}{more}</note>";
    }

    /// <summary>Notes of so many divisions each.</summary>
    public static string Notes(int duration, params string[] pitches) =>
        string.Concat(pitches.Select(p => Note(p, duration)));

    public static string Chord(string root, string kind, string more = "") =>
        $"<harmony><root><root-step>{root}</root-step></root><kind>{kind}</kind>{more}</harmony>";

    public static Reading<Tune> Tune(string xml) => MusicXmlReader.ReadTune(Bytes(xml));

    public static Reading<Score> ScoreOf(string xml) => MusicXmlReader.ReadScore(Bytes(xml));

    public static MemoryStream Bytes(string xml) => new(Encoding.UTF8.GetBytes(xml));

    /// <summary>Bars as <c>C4@0+1/4 …</c>, one text each; <c>~</c> marks a tie.</summary>
    public static string[] Line(Reading<Tune> reading) =>
        reading
            .Value!.Bars.Select(b =>
                string.Join(' ', b.Notes.Select(n => $"{n.Pitch}@{n.At}+{n.Length}{(n.TiedToNext ? "~" : "")}"))
            )
            .ToArray();

    /// <summary>Chord symbols as <c>0 C Dominant</c>.</summary>
    public static string[] Chords(Reading<Tune> reading) =>
        reading
            .Value!.Bars.Select(b => string.Join(", ", b.Chords.Select(c => $"{c.At} {c.Chord.Root} {c.Chord.Kind}")))
            .ToArray();

    /// <summary>A voice as <c>C4+E4@0+1/4 r@1/4+1/4 h@…</c>; <c>h</c> is a hidden rest, <c>R</c> one for the bar.</summary>
    public static string Show(ScoreVoice voice) =>
        $"{voice.Hand} {voice.Number}: "
        + string.Join(
            ' ',
            voice.Events.Select(e =>
                (
                    e.Notes.Count > 0 ? string.Join('+', e.Notes.Select(n => n.Pitch))
                    : e.Hidden ? "h"
                    : e.WholeBarRest ? "R"
                    : "r"
                ) + $"@{e.At}+{e.Length}"
            )
        );

    public static string[] Voices(Reading<Score> reading, int bar = 0) =>
        reading.Value!.Bars[bar].Voices.Select(Show).ToArray();

    public static Diagnostic Only(ValueList<Diagnostic> findings, Severity severity) =>
        Assert.Single(findings, d => d.Severity == severity);
}
