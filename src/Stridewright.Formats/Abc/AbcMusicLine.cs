using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Reads one line of music into the voice at hand (ABC 2.1, section 4). One pass, no recursion.</summary>
internal sealed class AbcMusicLine(AbcTuneReader tune, AbcLine line, AbcFindings findings)
{
    private readonly AbcScanner _scan = new(line, findings);

    private AbcVoice Voice => tune.Voice;

    public void Read()
    {
        var told = false;
        while (!_scan.AtEnd)
        {
            if (ReadOne())
            {
                continue;
            }
            if (!told)
            {
                findings.Warn(_scan.Spot, AbcMessages.NotUnderstood($"'{_scan.Now}'"), Voice.Current);
            }
            told = true; // one message a line is enough
            _scan.At++;
        }
    }

    // False, at the character, when it means nothing here.
    private bool ReadOne()
    {
        var c = _scan.Now;
        switch (c)
        {
            case '|':
            case ':' when _scan.Next is '|' or ':':
            case '[' when _scan.Next == '|':
                AbcBarSigns.ReadBarLine(_scan, Voice, findings);
                return true;
            case '[':
                ReadBracket();
                return true;
            case '"':
                ReadQuoted();
                return true;
            case '{':
                ReadGraces();
                return true;
            case '(' when char.IsAsciiDigit(_scan.Next):
                ReadTuplet();
                return true;
            case '>' or '<':
                ReadBroken();
                return true;
            case '-':
                _scan.At++;
                Voice.Tie();
                return true;
            case '!' or '+':
                SkipDecoration(c);
                return true;
            case '&':
                _scan.At++;
                Voice.BeginLayer();
                return true;
            case 'z' or 'x':
                ReadRest();
                return true;
            case 'Z' or 'X':
                ReadBarsOfRest();
                return true;
            case 'y':
                _scan.At++;
                _scan.Number(9999, out _);
                return true;
            default:
                return ReadNote() || SkipSilently(c);
        }
    }

    // Spaces, slurs, line breaks and one-letter decorations (ABC 2.1, 4.14: . ~ and the letters H–W, h–w).
    private bool SkipSilently(char c)
    {
        var known =
            c
            is ' '
                or '\t'
                or '('
                or ')'
                or '.'
                or '~'
                or '`'
                or '\\'
                or '$'
                or '*'
                or ';'
                or (>= 'H' and <= 'W')
                or (>= 'h' and <= 'w');
        if (known)
        {
            _scan.At++;
            return true;
        }
        return false;
    }

    private bool ReadNote()
    {
        var spot = _scan.Spot;
        if (_scan.Letter(Voice.Current) is not { } letter)
        {
            return false;
        }
        var pitch = PitchOf(letter, spot);
        var length = _scan.Length(Voice.Unit, Voice.Current);
        Voice.Add(spot, pitch, length, false);
        return true;
    }

    private Pitch? PitchOf((Step Step, int Octave, int? Accidental) letter, AbcSpot spot)
    {
        var pitch = Voice.PitchOf(letter.Step, letter.Octave, letter.Accidental);
        if (Voice.Sounding(pitch).Midi is >= 0 and <= 127)
        {
            return pitch;
        }
        findings.Warn(spot, AbcMessages.OutOfRange, Voice.Current);
        return null;
    }

    private void ReadRest()
    {
        var spot = _scan.Spot;
        _scan.At++;
        Voice.Add(spot, null, _scan.Length(Voice.Unit, Voice.Current), false);
    }

    private void ReadBarsOfRest()
    {
        var spot = _scan.Spot;
        _scan.At++;
        var count = _scan.Number(AbcLimits.Bars, out var tooLarge) ?? 1;
        if (tooLarge)
        {
            findings.Warn(spot, AbcMessages.BadLength, Voice.Current);
        }
        Voice.AddBarsOfRest(spot, count);
    }

    private void ReadBracket()
    {
        var start = _scan.At++;
        if (char.IsAsciiLetter(_scan.Now) && _scan.Next == ':')
        {
            ReadInlineField();
            return;
        }
        _scan.SkipSpaces();
        if (char.IsAsciiDigit(_scan.Now))
        {
            AbcBarSigns.ReadEnding(_scan, Voice, findings);
            return;
        }
        ReadChord(new AbcSpot(line.Number, start + 1));
    }

    private void ReadInlineField()
    {
        var spot = _scan.Spot;
        var end = _scan.Find(']', _scan.At);
        if (end < 0)
        {
            findings.Warn(spot, AbcMessages.NotClosed("the field in brackets"), Voice.Current);
            end = line.Text.Length;
        }
        var field = new AbcLine(line.Number, _scan.Slice(_scan.At, end));
        _scan.At = Math.Min(end + 1, line.Text.Length);
        if (field.Text[0] != 'w')
        {
            tune.ReadBodyField(field.Text[0], field.FieldText, spot);
        }
    }

    // Notes together: the highest is kept. Its length is the first note's, times what stands after the bracket.
    private void ReadChord(AbcSpot spot)
    {
        var pitches = new List<Pitch>();
        ScoreTime? first = null;
        var tie = false;
        while (!_scan.AtEnd && _scan.Now is not (']' or '|'))
        {
            var noteSpot = _scan.Spot;
            if (_scan.Letter(Voice.Current) is { } letter)
            {
                if (PitchOf(letter, noteSpot) is { } pitch)
                {
                    pitches.Add(pitch);
                }
                var length = _scan.Length(Voice.Unit, Voice.Current);
                first ??= length;
            }
            else if (_scan.Now == '"')
            {
                ReadQuoted();
            }
            else if (_scan.Now is '!' or '+')
            {
                SkipDecoration(_scan.Now);
            }
            else
            {
                tie |= _scan.Now == '-';
                _scan.At++;
            }
        }
        if (_scan.Now == ']')
        {
            _scan.At++;
        }
        else
        {
            findings.Warn(spot, AbcMessages.NotClosed("the bracket ["), Voice.Current);
        }
        if (first is not { } inner)
        {
            findings.Warn(spot, AbcMessages.EmptyChord, Voice.Current);
            return;
        }
        if (pitches.Count > 1)
        {
            findings.Once(Severity.Note, spot, AbcMessages.TopNotes, Voice.Current);
        }
        var times = inner * _scan.Length(Voice.Unit * inner, Voice.Current);
        Voice.Add(spot, pitches.Count == 0 ? null : pitches.Max(), times, tie);
    }

    private void ReadGraces()
    {
        var spot = _scan.Spot;
        _scan.At++;
        while (!_scan.AtEnd && _scan.Now is not ('}' or '|'))
        {
            var noteSpot = _scan.Spot;
            if (_scan.Letter(Voice.Current) is { } letter)
            {
                if (PitchOf(letter, noteSpot) is { } pitch)
                {
                    Voice.AddGrace(pitch);
                }
                _scan.Length(Voice.Unit, Voice.Current);
            }
            else
            {
                _scan.At++;
            }
        }
        if (_scan.Now == '}')
        {
            _scan.At++;
        }
        else
        {
            findings.Warn(spot, AbcMessages.NotClosed("the grace group {"), Voice.Current);
        }
    }

    // (p:q:r  p notes in the time of q for the next r notes (ABC 2.1, 4.13).
    private void ReadTuplet()
    {
        var spot = _scan.Spot;
        var start = _scan.At++;
        var of = _scan.Number(9, out var bad) ?? 0;
        int? inTime = null;
        int? notes = null;
        if (_scan.Now == ':' && _scan.Next != '|')
        {
            _scan.At++;
            inTime = _scan.Number(16, out var tooLarge);
            bad |= tooLarge;
            if (_scan.Now == ':' && _scan.Next != '|')
            {
                _scan.At++;
                notes = _scan.Number(64, out tooLarge);
                bad |= tooLarge;
            }
        }
        if (bad || of < 2)
        {
            findings.Warn(spot, AbcMessages.BadTuplet(_scan.Since(start)), Voice.Current);
            return;
        }
        var odd = Voice.Metre is { IsCompound: true } ? 3 : 2;
        int[] usual = [0, 0, 3, 2, 3, odd, 2, odd, 3, odd];
        Voice.Tuplet(spot, of, inTime ?? usual[of], notes ?? of);
    }

    private void ReadBroken()
    {
        var spot = _scan.Spot;
        var mark = _scan.Now;
        var start = _scan.At;
        while (_scan.Now == mark)
        {
            _scan.At++;
        }
        var marks = _scan.At - start;
        if (marks > 3)
        {
            findings.Warn(spot, AbcMessages.NotUnderstood(_scan.Since(start)), Voice.Current);
            return;
        }
        Voice.Break(spot, marks, mark == '>');
    }

    private void ReadQuoted()
    {
        var spot = _scan.Spot;
        var start = _scan.At + 1;
        var end = _scan.Find('"', start);
        if (end < 0)
        {
            findings.Warn(spot, AbcMessages.NotClosed("a quotation mark"), Voice.Current);
            _scan.At = line.Text.Length;
            return;
        }
        _scan.At = end + 1;
        var text = _scan.Slice(start, end);
        // An annotation begins with its place (ABC 2.1, 4.19).
        if (string.IsNullOrWhiteSpace(text) || text[0] is '^' or '_' or '<' or '>' or '@')
        {
            return;
        }
        if (AbcChords.TryParse(text, out var chord))
        {
            Voice.AddChord(spot, chord);
        }
        else
        {
            findings.Add(Severity.Note, spot, AbcMessages.NoChordSymbol(text), Voice.Current);
        }
    }

    // !trill! or the old +trill+; a mark on its own is an old line break.
    private void SkipDecoration(char mark)
    {
        var start = ++_scan.At;
        var end = _scan.Find(mark, start);
        var name = end < 0 || end - start > 30 ? null : _scan.Slice(start, end);
        if (
            name is null
            || name.Contains('|', StringComparison.Ordinal)
            || (mark == '+' && name.Contains(' ', StringComparison.Ordinal))
        )
        {
            return;
        }
        _scan.At = end + 1;
        var word = name.ToUpperInvariant().Replace(".", "", StringComparison.Ordinal);
        if (
            word.StartsWith("DC", StringComparison.Ordinal)
            || word.StartsWith("DS", StringComparison.Ordinal)
            || word is "FINE" or "DACAPO" or "DACODA" or "SEGNO" or "CODA"
        )
        {
            findings.Once(Severity.Note, new AbcSpot(line.Number, start), AbcMessages.Jumps, Voice.Current);
        }
    }
}
