using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Walks the bars of one part in document order with a cursor (MusicXML 4.0: notes, <c>backup</c>, <c>forward</c>),
/// and keeps what it finds at exact places. A fault inside a bar costs that element only.
/// </summary>
internal sealed class PartReader
{
    private readonly Findings _findings;
    private readonly TimeGrid _grid = new();
    private readonly BarlineReader _barlines;
    private readonly List<WrittenBar> _bars = [];

    private Metre? _metre;
    private bool _senzaMisura;
    private (Key Written, int Staff)? _writtenKey;
    private Key? _key; // as it sounds
    private readonly Transposition _transposition;

    private WrittenBar _bar = null!; // the bar being read; set before any element of it
    private ScoreTime _cursor;
    private WrittenNote? _lastNote;
    private bool _toldRounding;
    private (Key Key, ScoreTime At, Place Place)? _laterKey;
    private (Metre? Metre, ScoreTime At, Place Place)? _laterMetre;

    private PartReader(bool isConcert, Findings findings)
    {
        _findings = findings;
        _transposition = new Transposition(isConcert);
        _barlines = new BarlineReader(findings);
    }

    public static List<WrittenBar> Read(ScorePart part, Findings findings)
    {
        var reader = new PartReader(part.IsConcert, findings);
        foreach (var measure in part.Measures)
        {
            if (reader._bars.Count == MusicXmlLimits.Bars)
            {
                findings.Warn(measure.PlaceIn(measure["number"]), MusicXmlMessages.TooManyBars);
                break;
            }
            reader.ReadBar(measure);
        }
        if (reader._bars.Count > 0)
        {
            reader._barlines.Finish(reader._bars);
        }
        return reader._bars;
    }

    private void ReadBar(Element measure)
    {
        var number = Element.Clean(measure["number"]) ?? (_bars.Count + 1).ToString(CultureInfo.InvariantCulture);
        _bar = new WrittenBar
        {
            Place = measure.PlaceIn(number),
            Number = number,
            Implicit = measure["implicit"] == "yes",
            Id = Element.Clean(measure["id"]) ?? "",
            Metre = _metre,
            SenzaMisura = _senzaMisura,
            Key = _key,
        };
        _cursor = ScoreTime.Zero;
        (_lastNote, _toldRounding) = (null, false);
        foreach (var child in measure.Children)
        {
            ReadChild(child, child.PlaceIn(number));
        }
        TellLaterChanges();
        _barlines.Finish(_bar);
        _bars.Add(_bar);
    }

    private void ReadChild(Element child, Place place)
    {
        switch (child.Name)
        {
            case "note":
                ReadNote(child, place);
                break;
            case "backup" or "forward":
                Move(child, place);
                break;
            case "attributes":
                ReadAttributes(child, place);
                break;
            case "barline":
                _barlines.Read(child, _bar, _bars.Count > 0 ? _bars[^1] : null);
                break;
            case "harmony":
                ReadHarmony(child, place);
                break;
            case "direction" or "sound":
                _bar.Routes |= DirectionReader.ReadRoutes(child);
                _bar.Section ??= DirectionReader.ReadSection(child);
                if (DirectionReader.Read(child, Shifted(child, place), place, _findings) is { } direction)
                {
                    _bar.Directions.Add(direction);
                }
                break;
            default:
                break;
        }
    }

    private void ReadNote(Element note, Place place)
    {
        var grace = note.Has("grace");
        var value = NoteValues.Read(note);
        var inChord = note.Has("chord");
        if (inChord && (_lastNote is null || _lastNote.Grace != grace))
        {
            _findings.Warn(place, MusicXmlMessages.ChordWithoutNote);
            inChord = false;
        }
        if (ReadLength(note, grace, value, place) is not { } length)
        {
            return;
        }
        var at = inChord ? _lastNote!.At : _cursor;
        if (at + length > new ScoreTime(MusicXmlLimits.BarWholes, 1))
        {
            _findings.Warn(place, MusicXmlMessages.BarTooLong);
            return;
        }
        var staff = StaffOf(note);
        var (finger, next) = NoteReader.ReadFingers(note);
        var read = new WrittenNote
        {
            Place = place,
            At = at,
            Length = length,
            Pitch = NoteReader.ReadPitch(note, _transposition.Of(staff), place, _findings),
            Grace = grace,
            InChord = inChord,
            Voice = Element.Clean(note.TextOf("voice")) ?? (inChord ? _lastNote!.Voice : "1"),
            Staff = staff,
            TieStart = NoteReader.HasTie(note, "start"),
            TieStop = NoteReader.HasTie(note, "stop"),
            Value = value,
            Hidden = note["print-object"] == "no",
            WholeBar = note.Child("rest")?["measure"] == "yes",
            Rolled = NoteReader.HasNotation(note, "arpeggiate"),
            Staccato = NoteReader.HasArticulation(note, "staccato", "staccatissimo"),
            Accent = NoteReader.HasArticulation(note, "accent", "strong-accent"),
            Ornamented = NoteReader.HasNotation(note, "ornaments"),
            Finger = finger,
            NextFinger = next,
            Beams = NoteReader.ReadBeams(note),
            Lyrics = NoteReader.ReadLyrics(note),
            Id = Element.Clean(note["id"]) ?? "",
        };
        _bar.Notes.Add(read);
        _lastNote = read;
        if (!inChord)
        {
            _cursor = at + length;
        }
        _bar.Extent = ScoreTime.Max(_bar.Extent, at + length);
    }

    private static int StaffOf(Element element) =>
        int.TryParse(element.TextOf("staff"), NumberStyles.None, CultureInfo.InvariantCulture, out var staff)
            ? Math.Clamp(staff, 1, 99)
            : 1;

    private ScoreTime? ReadLength(Element note, bool grace, NoteValue? value, Place place)
    {
        if (grace)
        {
            return ScoreTime.Zero;
        }
        var text = note.TextOf("duration");
        if (_grid.TryRead(text, out var length, out var rounded))
        {
            TellRounding(rounded, place);
            if (!length.IsZero)
            {
                return length;
            }
        }
        var printed = value is { } known ? _grid.Fit(known.Length, out _) : ScoreTime.Zero;
        if (printed.IsZero)
        {
            _findings.Warn(place, MusicXmlMessages.NoteWithoutLength(Element.Clean(text)));
            return null;
        }
        _findings.Warn(place, MusicXmlMessages.PrintedLengthUsed(Element.Clean(text)));
        return printed;
    }

    private void Move(Element move, Place place)
    {
        var text = move.TextOf("duration");
        if (!_grid.TryRead(text, out var length, out var rounded))
        {
            if (move.Name == "backup" && text is not null && text.All(char.IsAsciiDigit))
            {
                _findings.Warn(place, MusicXmlMessages.MoveOutOfBar);
                (_cursor, _lastNote) = (ScoreTime.Zero, null);
                return;
            }
            _findings.Warn(place, MusicXmlMessages.BadMove(Element.Clean(text)));
            return;
        }
        TellRounding(rounded, place);
        var to = move.Name == "backup" ? _cursor - length : _cursor + length;
        if (to < ScoreTime.Zero || to > new ScoreTime(MusicXmlLimits.BarWholes, 1))
        {
            _findings.Warn(place, MusicXmlMessages.MoveOutOfBar);
            to = to < ScoreTime.Zero ? ScoreTime.Zero : _cursor;
        }
        _cursor = to;
        _lastNote = null;
        _bar.Extent = ScoreTime.Max(_bar.Extent, to);
    }

    // Once a bar: such files have hundreds.
    private void TellRounding(bool rounded, Place place)
    {
        if (rounded && !_toldRounding)
        {
            _findings.Warn(place, MusicXmlMessages.LengthRounded);
            _toldRounding = true;
        }
    }

    private void ReadAttributes(Element attributes, Place place)
    {
        if (attributes.Child("divisions") is { } divisions && !_grid.TrySetDivisions(divisions.Text))
        {
            _findings.Warn(
                divisions.PlaceIn(_bar.Number),
                MusicXmlMessages.BadDivisions(Element.Clean(divisions.Text))
            );
        }
        _transposition.Read(attributes, place, _findings);
        if (
            attributes.Child("key") is { } key
            && AttributeReader.ReadKey(key, key.PlaceIn(_bar.Number), _findings) is { } written
        )
        {
            _writtenKey = (written, int.TryParse(key["number"], out var staff) ? staff : 1);
        }
        SetKey(place);
        if (attributes.Child("time") is { } time)
        {
            ReadTime(time, place);
        }
    }

    // A change of transposition alone changes the sounding key as well.
    private void SetKey(Place place)
    {
        var sounding = _writtenKey is var (written, staff) ? written.Plus(_transposition.Of(staff)) : (Key?)null;
        if (sounding is not { } key || sounding == _key)
        {
            return;
        }
        _key = key;
        if (_cursor.IsZero)
        {
            _bar.Key = key;
        }
        else
        {
            _laterKey = (key, _cursor, place);
        }
    }

    private void ReadTime(Element time, Place place)
    {
        if (time.Has("senza-misura"))
        {
            (_metre, _senzaMisura) = (null, true);
        }
        else if (AttributeReader.ReadMetre(time, time.PlaceIn(_bar.Number), _findings) is { } metre)
        {
            (_metre, _senzaMisura) = (metre, false);
        }
        if (_cursor.IsZero)
        {
            (_bar.Metre, _bar.SenzaMisura) = (_metre, _senzaMisura);
        }
        else
        {
            _laterMetre = (_metre, _cursor, place);
        }
    }

    // A change inside a bar counts from the next bar on; at the bar's very end that is where it belongs.
    private void TellLaterChanges()
    {
        if (_laterKey is { } key && key.At < _bar.Extent && key.Key != _bar.Key)
        {
            _findings.Note(key.Place, MusicXmlMessages.KeyChangesInsideBar);
        }
        if (_laterMetre is { } metre && metre.At < _bar.Extent && metre.Metre != _bar.Metre)
        {
            _findings.Warn(metre.Place, MusicXmlMessages.MetreChangesInsideBar);
        }
        (_laterKey, _laterMetre) = (null, null);
    }

    private void ReadHarmony(Element harmony, Place place)
    {
        if (HarmonyReader.Read(harmony, place, _findings) is { } chord)
        {
            var sounding = chord.IsNoChord ? chord : chord.Plus(_transposition.Of(StaffOf(harmony)));
            _bar.Chords.Add(new WrittenChord(place, Shifted(harmony, place), sounding));
        }
    }

    // The cursor moved by an offset, which may be negative; never before the bar.
    private ScoreTime Shifted(Element element, Place place)
    {
        if (element.TextOf("offset") is not { } text)
        {
            return _cursor;
        }
        var back = text.StartsWith('-');
        if (!_grid.TryRead(text.TrimStart('-', '+'), out var offset, out _))
        {
            _findings.Warn(place, MusicXmlMessages.BadOffset(Element.Clean(text)));
            return _cursor;
        }
        var at = back ? _cursor - offset : _cursor + offset;
        if (at < ScoreTime.Zero)
        {
            _findings.Note(place, MusicXmlMessages.OffsetBeforeBar);
            return ScoreTime.Zero;
        }
        return at;
    }
}
