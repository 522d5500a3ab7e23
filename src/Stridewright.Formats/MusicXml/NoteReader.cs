using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Reads what a <c>note</c> element says besides its time (MusicXML 4.0).</summary>
internal static class NoteReader
{
    private const int MostTextParts = 16;

    /// <summary>The sounding pitch; null for rests, unpitched notes and pitches that no piano has, the last with a
    /// finding.</summary>
    public static Pitch? ReadPitch(Element note, Interval transpose, Place place, Findings findings)
    {
        if (note.Child("pitch") is not { } pitch || note.Has("cue") || note.TextOf("notehead") == "slash")
        {
            return null;
        }
        if (
            pitch.TextOf("step") is not { Length: 1 } letter
            || !Tone.TryParse(letter, out var natural)
            || !int.TryParse(
                pitch.TextOf("octave"),
                NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out var octave
            )
            || octave is < -1 or > 10
        )
        {
            findings.Warn(
                place,
                MusicXmlMessages.BadPitch(Element.Clean(pitch.TextOf("step")), Element.Clean(pitch.TextOf("octave")))
            );
            return null;
        }
        var sounding = new Pitch(natural.Step, Alteration.Read(pitch, "alter", place, findings), octave).Plus(
            transpose
        );
        if (sounding.Midi is < 0 or > 127)
        {
            findings.Warn(place, MusicXmlMessages.BadPitch(letter, octave.ToString(CultureInfo.InvariantCulture)));
            return null;
        }
        return sounding;
    }

    /// <summary>True when the note begins (or ends) a tie, by sound or by sign.</summary>
    public static bool HasTie(Element note, string type) =>
        note.All("tie").Any(t => t["type"] == type)
        || note.All("notations").Any(n => n.All("tied").Any(t => t["type"] == type));

    public static bool HasNotation(Element note, string name) => note.All("notations").Any(n => n.Has(name));

    public static bool HasArticulation(Element note, params string[] names) =>
        note.All("notations").Any(n => n.All("articulations").Any(a => names.Any(a.Has)));

    /// <summary>The finger that stands at a note, and the one that takes over from it.</summary>
    public static (int? Finger, int? Next) ReadFingers(Element note)
    {
        var signs = note.All("notations")
            .SelectMany(n => n.All("technical"))
            .SelectMany(t => t.All("fingering"))
            .ToList();
        var taking = signs.FirstOrDefault(s => s["substitution"] == "yes");
        return (Finger(signs.FirstOrDefault(s => s != taking)?.Text), Finger(taking?.Text));

        static int? Finger(string? text) =>
            text is [>= '1' and <= '5', ..] && (text.Length == 1 || !char.IsDigit(text[1])) ? text[0] - '0' : null;
    }

    public static ValueList<BeamState> ReadBeams(Element note)
    {
        var beams = new List<BeamState>();
        foreach (var beam in note.All("beam").Take(8).OrderBy(b => b["number"] ?? "1", StringComparer.Ordinal))
        {
            BeamState? state = beam.Text switch
            {
                "begin" => BeamState.Begin,
                "continue" => BeamState.Continue,
                "end" => BeamState.End,
                "forward hook" => BeamState.ForwardHook,
                "backward hook" => BeamState.BackwardHook,
                _ => null,
            };
            if (state is { } known)
            {
                beams.Add(known);
            }
        }
        return beams.ToValueList();
    }

    /// <summary>The syllables under a note, verse by verse.</summary>
    public static ValueList<Lyric> ReadLyrics(Element note)
    {
        var lyrics = new List<Lyric>();
        foreach (var lyric in note.All("lyric"))
        {
            var text = "";
            foreach (var part in lyric.Children.Take(MostTextParts))
            {
                text += part.Name switch
                {
                    "text" => part.Text,
                    "elision" => part.Text.Length > 0 ? part.Text : " ",
                    _ => "",
                };
            }
            if (Element.Clean(text) is not { } clean)
            {
                continue; // only a line that goes on
            }
            var numbered =
                int.TryParse(lyric["number"], NumberStyles.None, CultureInfo.InvariantCulture, out var verse)
                && verse is >= 1 and <= 99;
            lyrics.Add(
                new Lyric(
                    numbered ? verse : lyrics.Count + 1,
                    clean,
                    lyric.All("syllabic").LastOrDefault()?.Text is "begin" or "middle",
                    lyric.Has("extend")
                )
            );
        }
        return lyrics.OrderBy(l => l.Verse).ToValueList();
    }
}
