using System.Text.RegularExpressions;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads one stroke, word by word.</summary>
internal sealed partial class StrokeReader(TextLine line, TextFaults faults)
{
    /// <summary>Keys struck together at most.</summary>
    public const int MostKeys = 10;

    // The keys of a piano, A0 to C8.
    private const int LowestKey = 21,
        HighestKey = 108;

    private static readonly ScoreTime Longest = new(64, 1);

    private TextLine _rest = line;
    private TextLine _at; // what a fault is about

    /// <summary>Null with a fault when it is none.</summary>
    public KeptStroke? Read()
    {
        if (Place(Next()) is not var (at, length))
        {
            return null;
        }
        if (Role().Match(Next().Text) is not { Success: true } role)
        {
            return Fault(ArrangementTextMessages.NoRole);
        }
        int? tune = null;
        if (role.Groups["note"] is { Success: true } note)
        {
            tune = Number(note.Value, KeptText.MostTuneNote);
            if (tune is null)
            {
                return Fault(ArrangementTextMessages.NoRole);
            }
        }
        var graces = _rest.Text.StartsWith('{') ? Graces() : [];
        var keys = graces is null ? null : Keys(areOne: true);
        if (keys is null)
        {
            return null;
        }
        if (keys.Count == 0)
        {
            return Fault(ArrangementTextMessages.NoPitches);
        }
        var (rolled, voice) = (false, 1);
        while (_rest.Text.Length > 0)
        {
            switch (Next().Text)
            {
                case "rolled":
                    rolled = true;
                    break;
                case "voice":
                    if (Number(Next().Text, 2) is not { } number)
                    {
                        return Fault(ArrangementTextMessages.NoVoice);
                    }
                    voice = number;
                    break;
                case var other:
                    return Fault(ArrangementTextMessages.AfterKeys(other));
            }
        }
        var name = role.Groups["role"].Value;
        return new KeptStroke(
            at,
            length,
            keys.Order().ToValueList(),
            name,
            rolled,
            graces!.ToValueList(),
            voice,
            tune - 1
        );
    }

    private TextLine Next()
    {
        (var word, var rest) = _rest.Split();
        _at = _rest with { Text = word };
        _rest = rest;
        return _at;
    }

    private KeptStroke? Fault(string message)
    {
        faults.Add(_at, message);
        return null;
    }

    private (ScoreTime At, ScoreTime Length)? Place(TextLine word)
    {
        if (Span(word.Text) is { } span)
        {
            return span;
        }
        faults.Add(word, ArrangementTextMessages.NoStrokePlace);
        return null;
    }

    /// <summary>Reads a place and a length such as <c>1/8+1/16</c>, in whole notes; null: it is none.</summary>
    public static (ScoreTime At, ScoreTime Length)? Span(string text) =>
        text.Split('+') is [var at, var length]
        && Fraction(at) is { } from
        && Fraction(length) is { IsZero: false } time
            ? (from, time)
            : null;

    private static ScoreTime? Fraction(string text)
    {
        const int most = 1 << 20;
        var parts = text.Split('/');
        return
            parts.Length is 1 or 2
            && (parts[0] == "0" ? 0 : Number(parts[0], most)) is { } above
            && (parts.Length == 1 ? 1 : Number(parts[1], most)) is { } below
            && new ScoreTime(above, below) is var time
            && time <= Longest
            ? time
            : null;
    }

    private List<Pitch>? Graces()
    {
        var close = _rest.Text.IndexOf('}', StringComparison.Ordinal);
        if (close < 0)
        {
            faults.Add(_rest, ArrangementTextMessages.GracesOpen);
            return null;
        }
        var inside = TextLine.Of(_rest.Text[1..close], _rest.Number);
        var after = TextLine.Of(_rest.Text[(close + 1)..], _rest.Number);
        var behind = after with { Column = _rest.Column + close + after.Column };
        _rest = inside with { Column = _rest.Column + inside.Column };
        var graces = Keys(areOne: false);
        if (graces is not null && _rest.Text.Length > 0)
        {
            faults.Add(_rest, ArrangementTextMessages.NoPitch(_rest.Text));
            graces = null;
        }
        _rest = behind;
        return graces;
    }

    /// <summary>Reads a key of a piano such as <c>F#4</c>; null: it is none.</summary>
    public static Pitch? Key(string text) =>
        Pitch.TryParse(text, out var pitch) && pitch.Midi is >= LowestKey and <= HighestKey ? pitch : null;

    // The pitches that come next, up to a word that is none; those struck as one are all different.
    private List<Pitch>? Keys(bool areOne)
    {
        var keys = new List<Pitch>();
        while (_rest.Text.Length > 0 && _rest.Split().Word is not ("rolled" or "voice"))
        {
            var word = Next();
            if (Key(word.Text) is not { } pitch)
            {
                faults.Add(word, ArrangementTextMessages.NoPitch(word.Text));
                return null;
            }
            if (areOne && keys.Exists(k => k.Midi == pitch.Midi))
            {
                faults.Add(word, ArrangementTextMessages.PitchTwice(word.Text));
                return null;
            }
            keys.Add(pitch);
            if (keys.Count > MostKeys)
            {
                faults.Add(word, ArrangementTextMessages.TooMany("keys at once", MostKeys));
                return null;
            }
        }
        return keys;
    }

    private static int? Number(string text, int most) => KeptText.Number(text, most);

    [GeneratedRegex("^(?<role>[a-z][a-z-]*)(:(?<note>[0-9]+))?$")]
    private static partial Regex Role();
}
