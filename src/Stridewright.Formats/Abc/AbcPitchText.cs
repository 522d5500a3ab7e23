using System.Globalization;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Writes pitches with the accidentals they need after what stands before them in their bar, whether a program takes an
/// accidental for its octave or for all octaves (ABC 2.1, 11.3); and lengths.
/// </summary>
internal sealed class AbcPitchText
{
    private readonly Dictionary<(Step, int), int> _inOctave = [];
    private readonly Dictionary<Step, int> _inAll = [];
    private Key _key;
    private Pitch? _tied; // the pitch that a tie over the bar line leads to, until a note or rest begins the bar

    public void BeginBar(Key key, Pitch? tied)
    {
        _inOctave.Clear();
        _inAll.Clear();
        (_key, _tied) = (key, tied);
    }

    /// <summary>A note of the line; null: a rest.</summary>
    public string Next(Pitch? note)
    {
        var isTied = note is not null && note == _tied;
        var text = note is { } pitch ? (isTied ? "" : Accidental(pitch)) + Letter(pitch) : "z";
        _tied = null;
        return text;
    }

    public string Grace(Pitch pitch) => Accidental(pitch) + Letter(pitch);

    /// <summary>A length in unit lengths: nothing for 1.</summary>
    public static string Length(ScoreTime units) =>
        (units.Numerator == 1 ? "" : units.Numerator.ToString(CultureInfo.InvariantCulture))
        + (units.Denominator == 1 ? "" : "/" + units.Denominator.ToString(CultureInfo.InvariantCulture));

    private string Accidental(Pitch pitch)
    {
        var usual = _key.ToneOf(pitch.Step).Alter;
        var isPlain =
            _inOctave.GetValueOrDefault((pitch.Step, pitch.Octave), usual) == pitch.Alter
            && _inAll.GetValueOrDefault(pitch.Step, usual) == pitch.Alter
            && !(_tied is { } tied && tied.Step == pitch.Step && tied.Octave == pitch.Octave);
        if (isPlain)
        {
            return "";
        }
        _inOctave[(pitch.Step, pitch.Octave)] = _inAll[pitch.Step] = pitch.Alter;
        return pitch.Alter == 0 ? "=" : new string(pitch.Alter > 0 ? '^' : '_', Math.Abs(pitch.Alter));
    }

    // C is middle C, c the octave above it.
    private static string Letter(Pitch pitch)
    {
        var text = new StringBuilder();
        var letter = pitch.Step.ToString();
        text.Append(pitch.Octave >= 5 ? letter.ToLowerInvariant() : letter);
        text.Append(pitch.Octave >= 5 ? '\'' : ',', pitch.Octave >= 5 ? pitch.Octave - 5 : 4 - pitch.Octave);
        return text.ToString();
    }
}
