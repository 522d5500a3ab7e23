using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Writes the measures of a score one by one.</summary>
internal sealed class BarWriter
{
    private const int SmallStaffPercent = 80;

    /// <summary>Middle C, on the first line below the treble staff.</summary>
    private const int LowestInTreble = 60;
    private readonly XmlOut _xml;
    private readonly Score _score;
    private readonly bool _isLeadSheet;
    private readonly bool _isCue;
    private readonly Divisions _divisions;
    private readonly SymbolWriter _symbols;
    private readonly NoteWriter _notes;

    /// <param name="isLeadSheet">The right hand alone, on one staff.</param>
    /// <param name="isCue">A small staff of cue notes.</param>
    public BarWriter(XmlOut xml, Score score, bool isLeadSheet, bool isCue = false)
    {
        isLeadSheet |= score.RightHandOnly;
        _isLeadSheet = isLeadSheet;
        _isCue = isCue;
        _xml = xml;
        _score = score;
        _divisions = Divisions.Of(score);
        _symbols = new SymbolWriter(xml, _divisions, isLeadSheet || score.LeftHandOnly ? 1 : 2);
        _notes = new NoteWriter(xml, _divisions, score.LeftHandOnly, isCue);
    }

    private bool HasBoth => !_isLeadSheet && !_score.LeftHandOnly;

    public void Write(int index)
    {
        var bar = _score.Bars[index];
        var before = index > 0 ? _score.Bars[index - 1] : null;
        var after = index + 1 < _score.Bars.Count ? _score.Bars[index + 1] : null;
        using (
            _xml.Open(
                "measure",
                ("number", bar.Number),
                ("implicit", bar.Implicit ? "yes" : null),
                ("id", bar.Id.Length > 0 ? bar.Id : null)
            )
        )
        {
            WriteLeftBarline(bar.Marks, before?.Marks);
            WriteAttributes(bar, before);
            if (!_score.LeftHandOnly)
            {
                WriteHand(bar, Hand.Right);
            }
            if (HasBoth)
            {
                Back(bar);
            }
            if (!_isLeadSheet)
            {
                WriteHand(bar, Hand.Left);
            }
            WriteRightBarline(bar.Marks, after?.Marks);
        }
    }

    private void WriteAttributes(ScoreBar bar, ScoreBar? before)
    {
        var (newKey, newMetre) = (bar.Key != before?.Key, bar.Metre != before?.Metre);
        if (!newKey && !newMetre)
        {
            return;
        }
        using (_xml.Open("attributes"))
        {
            if (before is null)
            {
                _xml.Number("divisions", _divisions.PerQuarter);
            }
            if (newKey)
            {
                using (_xml.Open("key"))
                {
                    _xml.Number("fifths", bar.Key.Signature);
                    _xml.Text("mode", bar.Key.Mode.ToString().ToLowerInvariant());
                }
            }
            if (newMetre)
            {
                using (_xml.Open("time", ("symbol", SignOf(bar.Metre))))
                {
                    _xml.Number("beats", bar.Metre.Count);
                    _xml.Number("beat-type", bar.Metre.Unit);
                }
            }
            if (before is null)
            {
                WriteStaves();
            }
        }
    }

    private void WriteStaves()
    {
        if (!_score.LeftHandOnly)
        {
            _xml.Number("staves", _isLeadSheet ? 1 : 2);
            WriteClef("1", "G", 2, _isCue && LiesLow ? -1 : 0);
        }
        if (!_isLeadSheet)
        {
            WriteClef(_score.LeftHandOnly ? "1" : "2", "F", 4);
        }
        if (_isCue)
        {
            using (_xml.Open("staff-details"))
            {
                _xml.Number("staff-size", SmallStaffPercent);
            }
        }
    }

    private static string? SignOf(Metre metre) =>
        metre.Sign switch
        {
            MetreSign.Common => "common",
            MetreSign.Cut => "cut",
            _ => null,
        };

    // True where most notes would need lines below the treble clef: a man's voice, printed an octave above its sound.
    private bool LiesLow
    {
        get
        {
            var keys = _score
                .Bars.SelectMany(b => b.Voices)
                .SelectMany(v => v.Events)
                .SelectMany(e => e.Notes)
                .Select(n => n.Pitch.Midi)
                .ToList();
            return 2 * keys.Count(k => k < LowestInTreble) > keys.Count;
        }
    }

    private void WriteClef(string staff, string sign, int line, int octaves = 0)
    {
        using (_xml.Open("clef", ("number", staff)))
        {
            _xml.Text("sign", sign);
            _xml.Number("line", line);
            if (octaves != 0)
            {
                _xml.Number("clef-octave-change", octaves);
            }
        }
    }

    private void WriteHand(ScoreBar bar, Hand hand)
    {
        var rest = new ScoreEvent(ScoreTime.Zero, bar.Length, new NoteValue(1)) { WholeBarRest = true };
        var voices = bar.Voices.Where(v => v.Hand == hand).DefaultIfEmpty(new ScoreVoice(hand, 1, [rest])).ToList();
        var accidentals = Accidentals.Of(bar.Key, voices);
        for (var i = 0; i < voices.Count; i++)
        {
            if (i > 0)
            {
                Back(bar);
            }
            var stem = voices.Count > 1 ? (i == 0 ? "up" : "down") : null;
            foreach (var e in voices[i].Events)
            {
                if (i == 0 && hand == (_score.LeftHandOnly ? Hand.Left : Hand.Right))
                {
                    _symbols.Write(bar, e, last: ReferenceEquals(e, voices[i].Events[^1]));
                }
                _notes.Write(voices[i], e, accidentals, stem);
            }
            _notes.EndVoice();
        }
    }

    private void Back(ScoreBar bar)
    {
        using (_xml.Open("backup"))
        {
            _xml.Number("duration", _divisions.Of(bar.Length));
        }
    }

    private void WriteLeftBarline(BarMarks marks, BarMarks? before)
    {
        var ending = marks.Ending.Count > 0 && !marks.Ending.Equals(before?.Ending);
        if (!marks.RepeatStart && !ending)
        {
            return;
        }
        using (_xml.Open("barline", ("location", "left")))
        {
            if (marks.RepeatStart)
            {
                _xml.Text("bar-style", "heavy-light");
            }
            if (ending)
            {
                WriteEnding(marks, "start");
            }
            if (marks.RepeatStart)
            {
                _xml.Empty("repeat", ("direction", "forward"));
            }
        }
    }

    private void WriteRightBarline(BarMarks marks, BarMarks? after)
    {
        var repeat = marks.RepeatEnd >= 2;
        var ending = marks.Ending.Count > 0 && !marks.Ending.Equals(after?.Ending);
        var style =
            repeat || marks.FinalBarAfter ? "light-heavy"
            : marks.DoubleBarAfter ? "light-light"
            : null;
        if (style is null && !ending)
        {
            return;
        }
        using (_xml.Open("barline", ("location", "right")))
        {
            if (style is not null)
            {
                _xml.Text("bar-style", style);
            }
            if (ending)
            {
                // The bracket is closed where the piece turns back or ends there, else left open.
                WriteEnding(marks, repeat || marks.FinalBarAfter ? "stop" : "discontinue");
            }
            if (repeat)
            {
                var times = marks.RepeatEnd > 2 ? marks.RepeatEnd.ToString(CultureInfo.InvariantCulture) : null;
                _xml.Empty("repeat", ("direction", "backward"), ("times", times));
            }
        }
    }

    private void WriteEnding(BarMarks marks, string type) =>
        _xml.Empty("ending", ("number", string.Join(", ", marks.Ending)), ("type", type));
}
