using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>
/// The plain tune laid beside a score without the arranger's help: stretched by the length of both, moved by the octave
/// in which most of its notes are found, each note then sought at its plain place, one unit before and one after.
/// </summary>
internal sealed class PlainTune
{
    private readonly List<(ScoreTime At, int Key, ScoreTime? Struck, string? Syllable)> _notes = [];

    /// <param name="unit">Of the ragging: a sixteenth of 2/4, an eighth elsewhere.</param>
    public PlainTune(Tune tune, ScoreFacts facts, ScoreTime unit)
    {
        var plain = Arranger.Plain(tune).Tune;
        var written = plain.Bars.Aggregate(ScoreTime.Zero, (sum, b) => sum + b.Length);
        var scale = facts.Starts[^1].Per(written);
        var flat = new List<(ScoreTime At, int Key, string? Syllable)>();
        var now = ScoreTime.Zero;
        foreach (var bar in plain.Bars)
        {
            foreach (var note in bar.Notes)
            {
                var syllable = note.Lyrics.FirstOrDefault(l => l.Verse == 1)?.Text;
                flat.Add(((now + note.At) * scale, note.Pitch.Midi, syllable));
            }
            now += bar.Length;
        }
        var tonic = facts.Score.Bars[0].Key.Tonic.PitchClass - tune.Bars[0].Key.Tonic.PitchClass;
        var struck = facts.Right.Select(s => (s.Start, s.High)).ToHashSet();
        var by = Enumerable
            .Range(-4, 9)
            .Select(octave => 12 * octave + tonic)
            .MaxBy(semitones => flat.Count(n => struck.Contains((n.At, n.Key + semitones))));
        var last = new ScoreTime(-1, 1);
        foreach (var (at, key, syllable) in flat)
        {
            // Triplets and quicker ornaments have no place on the grid: they stand within half a unit of it.
            var found = facts
                .Right.Where(s => s.Start > last && s.Keys.Contains(key + by))
                .Select(s => (s.Start, Off: Distance(s.Start, at)))
                .Where(s => s.Off <= unit + unit * new ScoreTime(1, 2))
                .OrderBy(s => s.Off)
                .ThenBy(s => s.Start)
                .Select(s => (ScoreTime?)s.Start)
                .FirstOrDefault();
            last = found ?? last;
            _notes.Add((at, key + by, found, syllable));
        }
    }

    /// <summary>Share of the notes that were found.</summary>
    public double Found => (double)_notes.Count(n => n.Struck is not null) / _notes.Count;

    /// <summary>How many notes are struck in a stretch.</summary>
    public int StruckIn(ScoreTime from, ScoreTime to) => _notes.Count(n => n.Struck >= from && n.Struck < to);

    /// <summary>True where a note of this key stands plainly at a place, within less than half a unit.</summary>
    public bool Stands(ScoreTime place, int key, ScoreTime unit) =>
        _notes.Any(n => n.Key == key && Distance(n.At, place) < unit * new ScoreTime(1, 2));

    public string? SyllableAt(ScoreTime place, int key) =>
        _notes.FirstOrDefault(n => n.Key == key && n.At == place).Syllable;

    private static ScoreTime Distance(ScoreTime a, ScoreTime b) => a < b ? b - a : a - b;
}
