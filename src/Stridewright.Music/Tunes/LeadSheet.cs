using System.Numerics;
using Stridewright.Music.Notation;

namespace Stridewright.Music;

/// <summary>
/// Spells a tune as a score of one staff: its notes, rests, chord symbols, words, sections and form as written. The notes
/// are the first voice of the right hand; there is no left hand. A note keeps its length in one value, dots and triplets
/// included, where there is one; else it is tied.
/// </summary>
public static class LeadSheet
{
    private const int MostDots = 2;

    public static Score Of(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var bars = new List<ScoreBar>();
        Pitch? tied = null; // pitch that the note before is tied to
        foreach (var bar in tune.Bars)
        {
            var spelling = new Spelling(bar, tied);
            bars.Add(
                new ScoreBar
                {
                    Number = bar.Number,
                    Implicit = bar.Length < bar.Metre.BarLength,
                    Metre = bar.Metre,
                    Key = bar.Key,
                    Length = bar.Length,
                    Chords = bar.Chords,
                    Directions = Directions(bar, bars.Count == 0 ? tune.QuartersPerMinute : null),
                    Marks = bar.Marks,
                    Voices = [new ScoreVoice(Hand.Right, 1, spelling.Events())],
                }
            );
            tied = spelling.Tied;
        }
        return new Score
        {
            Title = tune.Title,
            Composer = tune.Composer,
            Bars = bars.ToValueList(),
        };
    }

    private static ValueList<Direction> Directions(TuneBar bar, double? quartersPerMinute)
    {
        var beat = bar.Metre.IsCompound ? new NoteValue(bar.Metre.Unit / 2, 1) : new NoteValue(4);
        ValueList<Direction> section = bar.Section is { } name ? [new(ScoreTime.Zero) { Section = name }] : [];
        return quartersPerMinute is { } tempo
            ? [.. section, new(ScoreTime.Zero) { BeatsPerMinute = tempo / beat.Length.ToQuarters(), BeatUnit = beat }]
            : section;
    }

    private sealed class Spelling(TuneBar bar, Pitch? tied)
    {
        private readonly List<ScoreEvent> _events = [];

        /// <summary>Pitch that the bar's last note is tied to.</summary>
        public Pitch? Tied { get; private set; } = tied;

        public ValueList<ScoreEvent> Events()
        {
            if (bar.Notes.Count == 0)
            {
                Tied = null;
                return [new ScoreEvent(ScoreTime.Zero, bar.Length, new NoteValue(1)) { WholeBarRest = true }];
            }
            var at = ScoreTime.Zero;
            foreach (var note in bar.Notes)
            {
                Rest(at, note.At);
                Write(note, isTied: note.At == at && Tied == note.Pitch);
                Tied = note.TiedToNext ? note.Pitch : null;
                at = note.At + note.Length;
            }
            Rest(at, bar.Length);
            Tied = at == bar.Length ? Tied : null;
            var spelled = _events.ToArray();
            var missing = bar.Metre.BarLength - bar.Length;
            Beaming.Apply(spelled, bar.Metre, ScoreTime.Max(ScoreTime.Zero, missing));
            return ValueList.Create<ScoreEvent>(spelled);
        }

        private void Write(TuneNote note, bool isTied)
        {
            var at = note.At;
            var values = Values(note.Length).ToList();
            for (var i = 0; i < values.Count; i++)
            {
                var (first, last) = (i == 0, i == values.Count - 1);
                var head = new ScoreNote(note.Pitch)
                {
                    TieStop = !first || isTied,
                    TieStart = !last || note.TiedToNext,
                };
                _events.Add(
                    new ScoreEvent(at, values[i].Length, values[i])
                    {
                        Notes = [head],
                        Graces = first ? note.Graces.Select(g => new ScoreNote(g)).ToValueList() : [],
                        Lyrics = first ? note.Lyrics : [],
                    }
                );
                at += values[i].Length;
            }
        }

        // Rests show the beats.
        private void Rest(ScoreTime from, ScoreTime to)
        {
            while (from < to)
            {
                var beats = from.Per(bar.Metre.Beat);
                var beat = bar.Metre.Beat * (beats.Numerator / beats.Denominator + 1);
                var end = ScoreTime.Min(to, beat);
                foreach (var value in Values(end - from))
                {
                    _events.Add(new ScoreEvent(from, value.Length, value));
                    from += value.Length;
                }
            }
        }
    }

    // The fewest values of a length, longest first; a divisor that is no power of two becomes a tuplet's ratio.
    private static IEnumerable<NoteValue> Values(ScoreTime length)
    {
        var actual = length.Denominator >> BitOperations.TrailingZeroCount(length.Denominator);
        var normal = actual == 1 ? 1L : (long)(BitOperations.RoundUpToPowerOf2((ulong)actual) / 2);
        var left = length * actual / normal; // now made of halves of halves
        while (left > ScoreTime.Zero)
        {
            var value = Largest(left);
            left -= value.Length;
            yield return value with
            {
                Actual = (int)actual,
                Normal = (int)normal,
            };
        }
    }

    private static NoteValue Largest(ScoreTime length)
    {
        for (var part = 1; part < 1024; part *= 2)
        {
            for (var dots = MostDots; dots >= 0; dots--)
            {
                var value = new NoteValue(part, dots);
                if (value.Length == length || (dots == 0 && value.Length < length))
                {
                    return value;
                }
            }
        }
        return new NoteValue(1024);
    }
}
