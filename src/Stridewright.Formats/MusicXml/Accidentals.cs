using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Which notes of a staff need an accidental in a bar, after the usual rule (common practice): it holds for its line
/// until the bar's end; a note tied over the bar line needs none, and what follows it on its line is marked afresh.
/// </summary>
internal sealed class Accidentals
{
    private readonly Key _key;
    private readonly HashSet<ScoreNote> _marked = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<int, int?> _lines = [];

    private Accidentals(Key key) => _key = key;

    public static Accidentals Of(Key key, IEnumerable<ScoreVoice> voices)
    {
        var accidentals = new Accidentals(key);
        foreach (var e in voices.SelectMany(v => v.Events).OrderBy(e => e.At))
        {
            foreach (var note in e.Graces.Concat(e.Notes))
            {
                accidentals.Take(note, e.At);
            }
        }
        return accidentals;
    }

    /// <summary>The accidental to print, or null.</summary>
    public string? For(ScoreNote note) =>
        !_marked.Contains(note)
            ? null
            : note.Pitch.Alter switch
            {
                0 => "natural",
                1 => "sharp",
                2 => "double-sharp",
                3 => "triple-sharp",
                -1 => "flat",
                -2 => "flat-flat",
                -3 => "triple-flat",
                _ => null,
            };

    private void Take(ScoreNote note, ScoreTime at)
    {
        var (line, alter) = (note.Pitch.DiatonicIndex, note.Pitch.Alter);
        var signature = _key.ToneOf(note.Pitch.Step).Alter;
        if (note.TieStop)
        {
            if (at.IsZero && alter != signature)
            {
                _lines[line] = null;
            }
            return;
        }
        if (_lines.GetValueOrDefault(line, signature) != alter)
        {
            _marked.Add(note);
        }
        _lines[line] = alter;
    }
}
