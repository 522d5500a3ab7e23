using System.Globalization;
using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Writes the events of a voice: chords, rests, crushed notes.</summary>
/// <param name="oneStaff">The left hand stands alone.</param>
/// <param name="isCue">Small notes that are not played.</param>
internal sealed class NoteWriter(XmlOut xml, Divisions divisions, bool oneStaff, bool isCue = false)
{
    private readonly HashSet<int> _versesInWord = []; // verses whose last syllable ended in a hyphen
    private ScoreTime? _tuplet; // length of the open tuplet so far

    private readonly record struct Place(ScoreVoice Voice, Accidentals Accidentals, string? Stem, int Staff)
    {
        public int Number => Voice.Number + (Voice.Hand == Hand.Left ? 4 : 0);
    }

    public void Write(ScoreVoice voice, ScoreEvent e, Accidentals accidentals, string? stem)
    {
        var place = new Place(voice, accidentals, stem, voice.Hand == Hand.Left && !oneStaff ? 2 : 1);
        if (e.Notes.Count == 0)
        {
            WriteRest(e, place);
            return;
        }
        for (var i = 0; i < e.Graces.Count; i++)
        {
            WriteGrace(e, i, place);
        }
        var tuplet = TupletAt(e);
        for (var i = 0; i < e.Notes.Count; i++)
        {
            WriteNote(e, i, place, i == 0 ? tuplet : null);
        }
    }

    /// <summary>A tuplet does not run over the bar line.</summary>
    public void EndVoice() => _tuplet = null;

    private void WriteRest(ScoreEvent e, Place place)
    {
        if (e.Hidden)
        {
            using (xml.Open("forward"))
            {
                xml.Number("duration", divisions.Of(e.Length));
                xml.Number("voice", place.Number);
                xml.Number("staff", place.Staff);
            }
            return;
        }
        var tuplet = TupletAt(e);
        using (xml.Open("note"))
        {
            xml.Empty("rest", ("measure", e.WholeBarRest ? "yes" : null));
            xml.Number("duration", divisions.Of(e.Length));
            xml.Number("voice", place.Number);
            if (!e.WholeBarRest)
            {
                WriteValue(e.Value, accidental: null);
            }
            xml.Number("staff", place.Staff);
            if (tuplet is not null)
            {
                using (xml.Open("notations"))
                {
                    xml.Empty("tuplet", ("type", tuplet));
                }
            }
        }
    }

    private void WriteGrace(ScoreEvent e, int index, Place place)
    {
        var (note, single) = (e.Graces[index], e.Graces.Count == 1);
        using (xml.Open("note", ("id", IdOf(note))))
        {
            xml.Empty("grace", ("slash", single ? "yes" : null));
            WritePitch(note.Pitch);
            xml.Number("voice", place.Number);
            WriteValue(new NoteValue(single ? 8 : 16), place.Accidentals.For(note));
            xml.Text("stem", "up");
            xml.Number("staff", place.Staff);
            if (!single)
            {
                var state =
                    index == 0 ? BeamState.Begin
                    : index == e.Graces.Count - 1 ? BeamState.End
                    : BeamState.Continue;
                WriteBeams([state, state]);
            }
            if (note.Finger is not null)
            {
                using (xml.Open("notations"))
                {
                    WriteFingers(note, place);
                }
            }
        }
    }

    private void WriteNote(ScoreEvent e, int index, Place place, string? tuplet)
    {
        var note = e.Notes[index];
        using (xml.Open("note", ("id", IdOf(note))))
        {
            if (isCue)
            {
                xml.Empty("cue");
            }
            if (index > 0)
            {
                xml.Empty("chord");
            }
            WritePitch(note.Pitch);
            xml.Number("duration", divisions.Of(e.Length));
            if (!isCue)
            {
                WriteTies("tie", note); // the schema has no sounding tie for a note that does not sound
            }
            xml.Number("voice", place.Number);
            WriteValue(e.Value, place.Accidentals.For(note));
            if (place.Stem is { } stem && e.Value.Part > 1)
            {
                xml.Text("stem", stem);
            }
            xml.Number("staff", place.Staff);
            if (index == 0)
            {
                WriteBeams(e.Beams);
            }
            WriteNotations(e, index, tuplet, place);
            if (index == 0)
            {
                WriteLyrics(e.Lyrics);
            }
        }
    }

    private static string? IdOf(ScoreNote note) => note.Id.Length > 0 ? note.Id : null;

    private void WritePitch(Pitch pitch)
    {
        if (pitch.Octave is < 0 or > 9)
        {
            throw new ArgumentException($"{pitch} lies outside the octaves 0 to 9 of MusicXML");
        }
        using (xml.Open("pitch"))
        {
            xml.Text("step", pitch.Step.ToString());
            if (pitch.Alter != 0)
            {
                xml.Number("alter", pitch.Alter);
            }
            xml.Number("octave", pitch.Octave);
        }
    }

    private void WriteTies(string name, ScoreNote note)
    {
        if (note.TieStop)
        {
            xml.Empty(name, ("type", "stop"));
        }
        if (note.TieStart)
        {
            xml.Empty(name, ("type", "start"));
        }
    }

    private void WriteValue(NoteValue value, string? accidental)
    {
        xml.Text("type", WrittenNames.TypeOf(value));
        for (var i = 0; i < value.Dots; i++)
        {
            xml.Empty("dot");
        }
        if (accidental is not null)
        {
            xml.Text("accidental", accidental);
        }
        if (value.Actual != value.Normal)
        {
            using (xml.Open("time-modification"))
            {
                xml.Number("actual-notes", value.Actual);
                xml.Number("normal-notes", value.Normal);
            }
        }
    }

    private void WriteBeams(ValueList<BeamState> beams)
    {
        for (var level = 0; level < beams.Count; level++)
        {
            var number = (level + 1).ToString(CultureInfo.InvariantCulture);
            xml.Text("beam", WrittenNames.StateOf(beams[level]), ("number", number));
        }
    }

    private void WriteNotations(ScoreEvent e, int index, string? tuplet, Place place)
    {
        var note = e.Notes[index];
        var marked = index == 0 && (e.Staccato || e.Accent);
        if (!note.TieStart && !note.TieStop && tuplet is null && note.Finger is null && !marked && !e.Rolled)
        {
            return;
        }
        using (xml.Open("notations"))
        {
            WriteTies("tied", note);
            if (tuplet is not null)
            {
                xml.Empty("tuplet", ("type", tuplet));
            }
            WriteFingers(note, place);
            if (marked)
            {
                WriteArticulations(e);
            }
            if (e.Rolled)
            {
                xml.Empty("arpeggiate");
            }
        }
    }

    private void WriteFingers(ScoreNote note, Place place)
    {
        if (note.Finger is not { } finger)
        {
            return;
        }
        using (xml.Open("technical"))
        {
            // Outside the two staves, where neither hand's notes are in the way (common practice).
            var side = place.Voice.Hand == Hand.Left ? "below" : "above";
            xml.Text("fingering", finger.ToString(CultureInfo.InvariantCulture), ("placement", side));
            if (note.NextFinger is { } next)
            {
                xml.Text(
                    "fingering",
                    next.ToString(CultureInfo.InvariantCulture),
                    ("substitution", "yes"),
                    ("placement", side)
                );
            }
        }
    }

    private void WriteArticulations(ScoreEvent e)
    {
        using (xml.Open("articulations"))
        {
            if (e.Accent)
            {
                xml.Empty("accent");
            }
            if (e.Staccato)
            {
                xml.Empty("staccato");
            }
        }
    }

    private void WriteLyrics(ValueList<Lyric> lyrics)
    {
        foreach (var lyric in lyrics)
        {
            var goesOn = _versesInWord.Contains(lyric.Verse);
            var syllabic = (goesOn, lyric.HyphenAfter) switch
            {
                (false, false) => "single",
                (false, true) => "begin",
                (true, true) => "middle",
                (true, false) => "end",
            };
            _ = lyric.HyphenAfter ? _versesInWord.Add(lyric.Verse) : _versesInWord.Remove(lyric.Verse);
            using (xml.Open("lyric", ("number", lyric.Verse.ToString(CultureInfo.InvariantCulture))))
            {
                xml.Text("syllabic", syllabic);
                xml.Text("text", lyric.Text);
                if (lyric.Extends)
                {
                    xml.Empty("extend");
                }
            }
        }
    }

    /// <summary>Whether a tuplet starts or stops here: it stops when its notes add up to a plain length.</summary>
    private string? TupletAt(ScoreEvent e)
    {
        if (e.Value.Actual == e.Value.Normal)
        {
            _tuplet = null;
            return null;
        }
        var opens = _tuplet is null;
        var length = (_tuplet ?? ScoreTime.Zero) + e.Length;
        var closes = BitOperations.IsPow2(length.Denominator);
        _tuplet = closes ? null : length;
        return opens ? "start"
            : closes ? "stop"
            : null;
    }
}
