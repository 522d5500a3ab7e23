using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Reads one tune line by line: the header up to K:, then the body.</summary>
internal sealed class AbcTuneReader(AbcFindings findings, AbcSpot start)
{
    private readonly AbcVoices _voices = new(findings);
    private readonly AbcDirectives _directives = new();
    private readonly CommonGrid _grid = new();
    private readonly List<(AbcVoiceField Field, AbcSpot Spot)> _headerVoices = [];
    private AbcVoice? _voice;
    private string? _title;
    private string? _composer;
    private Metre? _metre;
    private bool _hasMetre;
    private ScoreTime? _unit;
    private AbcKey? _key;
    private string? _tempo;
    private AbcSpot _tempoSpot;
    private ValueList<string> _order = [];
    private AbcSpot _orderSpot;
    private AbcScope _scope;
    private string? _headerPart;
    private bool _hasPlayingOrder; // by Y:
    private AbcClef _clef = AbcClef.Usual;
    private bool _inBody;
    private bool _goesOn; // the last music line ended with a continuation mark

    /// <summary>The voice that music goes to now.</summary>
    public AbcVoice Voice => _voice ??= _voices.All.Count > 0 ? _voices.All[0] : Take(AbcVoiceField.Parse(""), start);

    public bool HasReference { get; private set; }

    public void Read(AbcLine line)
    {
        var spot = new AbcSpot(line.Number, 1);
        if (line.Field is { } letter)
        {
            if (_inBody)
            {
                ReadBodyField(letter, line.FieldText, spot);
            }
            else
            {
                ReadHeaderField(letter, line.FieldText, spot);
            }
            return;
        }
        if (!_inBody)
        {
            if (!line.LooksLikeMusic)
            {
                findings.Warn(spot, AbcMessages.NotAHeader);
                return;
            }
            findings.Warn(spot, AbcMessages.NoKey);
            BeginBody();
        }
        if (!_goesOn)
        {
            Voice.Line.Clear();
            Voice.Verses = 0;
        }
        if (Voice.IsFull)
        {
            findings.Once(Severity.Warning, spot, AbcMessages.TooManyBars(AbcLimits.Bars));
            return;
        }
        new AbcMusicLine(this, line, findings).Read();
        _goesOn = line.Text.EndsWith('\\');
    }

    /// <summary>A field among the music, on its own line or in brackets.</summary>
    public void ReadBodyField(char letter, string text, AbcSpot spot)
    {
        switch (letter)
        {
            case 'K':
                if (ReadKey(text, spot, Voice.Key) is { } key)
                {
                    Voice.Key = key;
                    Voice.Clef = ReadClef(text, spot, Voice.Clef);
                }
                break;
            case 'M':
                if (ReadMetre(text, spot, out var metre))
                {
                    Voice.Metre = metre;
                    _hasMetre = true;
                    if (_unit is null && !Voice.HasNotes)
                    {
                        Voice.Unit = AbcFields.DefaultUnit(metre);
                    }
                }
                break;
            case 'L':
                if (ReadUnit(text, spot) is { } unit)
                {
                    Voice.Unit = unit;
                }
                break;
            case 'P':
                Voice.Section(PartName(text));
                break;
            case 'V':
                _voice = Take(AbcVoiceField.Parse(text), spot);
                break;
            case 'w':
                ReadWords(text, spot);
                break;
            default:
                ReadOtherField(letter, text, spot);
                break;
        }
    }

    /// <summary>The tune of a voice; null when it has no notes.</summary>
    /// <param name="asked">The voice asked for; null for the likeliest.</param>
    public Tune? Finish(string? asked)
    {
        foreach (var voice in _voices.All)
        {
            voice.CloseBar();
        }
        if (_voices.Choose(asked, start) is not { } taken)
        {
            return null;
        }
        if (_title is null)
        {
            findings.Warn(start, AbcMessages.NoTitle);
        }
        NameFirstPart(taken.Bars[0]);
        var bars = _voices.Borrow(taken, new AbcBars(taken.Bars, _directives, findings).Build(!_hasMetre));
        double? tempo = null;
        if (_tempo is not null && !AbcFields.TryTempo(_tempo, _unit ?? AbcFields.DefaultUnit(_metre), out tempo))
        {
            findings.Warn(_tempoSpot, AbcMessages.BadTempo(_tempo));
            tempo = null;
        }
        foreach (var part in _order.Distinct().Where(p => bars.All(b => b.Section != p)))
        {
            findings.Warn(_orderSpot, AbcMessages.UnknownPart(part));
        }
        return new Tune
        {
            Title = _title ?? "Untitled",
            Composer = _composer,
            Bars = bars,
            QuartersPerMinute = tempo,
            SectionOrder = _directives.Order?.ToValueList() ?? _order,
        };
    }

    private void ReadHeaderField(char letter, string text, AbcSpot spot)
    {
        switch (letter)
        {
            case 'X':
                HasReference = true;
                break;
            case 'T':
                _title ??= text.Length > 0 ? AbcText.Unescape(text) : null;
                break;
            case 'C':
                _composer ??= text.Length > 0 ? AbcText.Unescape(text) : null;
                break;
            case 'M':
                if (ReadMetre(text, spot, out var metre))
                {
                    (_metre, _hasMetre) = (metre, true);
                }
                break;
            case 'L':
                _unit = ReadUnit(text, spot) ?? _unit;
                break;
            case 'P':
                _headerPart = text;
                if (!_hasPlayingOrder)
                {
                    ReadOrder(text, spot);
                }
                break;
            case 'V':
                _headerVoices.Add((AbcVoiceField.Parse(text), spot));
                break;
            case 'K':
                _key = ReadKey(text, spot, AbcKey.CMajor);
                _clef = _key is null ? _clef : ReadClef(text, spot, _clef);
                BeginBody();
                break;
            default:
                ReadOtherField(letter, text, spot);
                break;
        }
    }

    private void ReadOtherField(char letter, string text, AbcSpot spot)
    {
        switch (letter)
        {
            case 'Q' when _tempo is null && !_voices.All.Any(v => v.HasNotes):
                (_tempo, _tempoSpot) = (text, spot);
                break;
            case 'Y':
                _hasPlayingOrder = true;
                ReadOrder(text, spot);
                break;
            case 'I':
                ReadInstruction(text, spot);
                break;
            case 'm':
                findings.Once(Severity.Note, spot, AbcMessages.Macros);
                break;
            default:
                break;
        }
    }

    private void ReadInstruction(string text, AbcSpot spot)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length > 0 && !_directives.Read(words[0], words[1..]))
        {
            findings.Warn(spot, AbcMessages.BadDirective(words[0]));
        }
        if (words is ["propagate-accidentals", var scope, ..])
        {
            _scope =
                scope == "not" ? AbcScope.Not
                : scope == "octave" ? AbcScope.Octave
                : AbcScope.Pitch;
        }
    }

    // Where Y: gives the order, a P: in the header is the name of the first part.
    private void NameFirstPart(AbcBar first)
    {
        if (_hasPlayingOrder && _headerPart is not null)
        {
            first.Section ??= PartName(_headerPart);
        }
    }

    private static string PartName(string text)
    {
        var name = AbcText.Unescape(text);
        return name.Length > AbcLimits.PartName ? name[..AbcLimits.PartName] : name;
    }

    private void ReadOrder(string text, AbcSpot spot)
    {
        if (AbcFields.Order(text) is { } order)
        {
            (_order, _orderSpot) = (order, spot);
        }
        else
        {
            findings.Warn(spot, AbcMessages.BadOrder(text));
        }
    }

    private void ReadWords(string text, AbcSpot spot)
    {
        var line = Voice.Verses++;
        var verse = _directives.VerseNumbers is { } given && line < given.Count ? given[line] : line + 1;
        if (line < AbcLimits.Verses && !AbcLyrics.Place(text, verse, Voice.Line))
        {
            findings.Warn(spot, AbcMessages.MoreLyrics);
        }
    }

    private AbcKey? ReadKey(string text, AbcSpot spot, AbcKey before)
    {
        if (AbcKey.TryParse(text, before, _directives.KeepsFarKeys, out var key))
        {
            return key;
        }
        findings.Warn(spot, AbcMessages.BadKey(text));
        return null;
    }

    private bool ReadMetre(string text, AbcSpot spot, out Metre? metre)
    {
        if (AbcFields.TryMetre(text, out metre))
        {
            return true;
        }
        findings.Warn(spot, AbcMessages.BadMetre(text));
        return false;
    }

    private ScoreTime? ReadUnit(string text, AbcSpot spot)
    {
        if (AbcFields.TryUnit(text, out var unit))
        {
            return unit;
        }
        findings.Warn(spot, AbcMessages.BadUnit(text));
        return null;
    }

    private AbcClef ReadClef(string text, AbcSpot spot, AbcClef before)
    {
        var clef = AbcClef.Read(text.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries), before, out var bad);
        if (bad is not null)
        {
            findings.Warn(spot, AbcMessages.BadProperty(bad));
        }
        return clef;
    }

    // The header's voices stand in its order, in the tune's own key and unit.
    private void BeginBody()
    {
        _inBody = true;
        foreach (var (field, at) in _headerVoices)
        {
            Take(field, at);
        }
        findings.BodyBegins();
    }

    private AbcVoice Take(AbcVoiceField field, AbcSpot spot) =>
        _voices.Take(
            field,
            spot,
            () =>
                new AbcVoice(findings)
                {
                    Unit = _unit ?? AbcFields.DefaultUnit(_metre),
                    Key = _key ?? AbcKey.CMajor,
                    Clef = _clef,
                    Metre = _metre,
                    Scope = _scope,
                    Grid = _grid,
                }
        );
}
