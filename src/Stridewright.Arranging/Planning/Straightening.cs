using System.Numerics;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A tune put back on the beat.</summary>
/// <param name="Tune">The plain tune: the same bars, keys, repeats, and the same notes in the same order.</param>
/// <param name="Moved">Notes that were put back or are struck again on the beat.</param>
public sealed record Straightened(Tune Tune, int Moved);

/// <summary>
/// Takes the syncopation out of a tune, so that it can be ragged afresh. A sound is a note with those tied to it, and
/// with repetitions that are held on the same syllable. The beat is the metre's unit, in 6/8, 9/8 and 12/8 three of them;
/// in 6/4, which moves in quarters, the quarter. Two kinds are syncopated:
/// <list type="bullet">
/// <item>in every metre, triplets included: it begins off the beat and lasts past the next beat or bar line;</item>
/// <item>in metres other than 6/8, 9/8 and 12/8: it begins on a place of the binary grid finer than the half-beat and
/// lasts past the next half-beat. A dotted pair that fills the beat is none, whichever of the two is the short
/// one.</item>
/// </list>
/// Such a sound returns to the place that it was held through, if that is at most half a beat away; the note before it
/// lasts until then where that makes no new syncopation. The place is always free: only the sound itself was sounding
/// there. A chord symbol printed over the part that is given up goes along. What begins earlier is no anticipation: it
/// stays, and is struck again on the beat. Nothing moves over a repeat or an ending: what is tied over one is struck
/// again behind it. A tune without syncopation is not changed. Source: common practice (a song since the 1920s is sung
/// off the beat and taught on it).
/// </summary>
public static class Straightening
{
    // Shorter than any written note: tells whether a sound that ends on a place would be held through it by a tie.
    private static readonly ScoreTime AMoment = new(1, 4096);

    public static Straightened Apply(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        var grid = new Grid(tune);
        var sounds = grid.Sounds();
        var moved = sounds.Count(s => s.IsStruckAgain);
        for (var i = 0; i < sounds.Count; i++)
        {
            var sound = sounds[i];
            if (grid.Returns(sounds, i, sound.End) is { } place)
            {
                moved++;
                if (i > 0 && sounds[i - 1].End == sound.Start && sounds[i - 1].Pieces[^1].Bar == sound.Pieces[0].Bar)
                {
                    var longer = sounds[i - 1] with { End = place };
                    var before = sounds[i - 1];
                    sounds[i - 1] = longer;
                    sounds[i - 1] = grid.Returns(sounds, i - 1, place) is null ? longer : before;
                }
                sounds[i] = sound with { Start = place };
            }
            if (sound.Pieces[^1].Note.TiedToNext && grid.Returns(sounds, i, sound.End + AMoment) is not null)
            {
                sounds[i] = sounds[i] with { TieEnds = true };
            }
        }
        return moved == 0 && !sounds.Exists(s => s.TieEnds)
            ? new Straightened(tune, 0)
            : new Straightened(grid.Write(sounds), moved);
    }

    private sealed record Piece(int Bar, ScoreTime Start, TuneNote Note)
    {
        public ScoreTime End => Start + Note.Length;
    }

    private sealed record Sound(ValueList<Piece> Pieces, ScoreTime Start, ScoreTime End)
    {
        /// <summary>A tie from its last note would hold it through a beat: it ends there.</summary>
        public bool TieEnds { get; init; }

        /// <summary>The rest of a sound that began more than half a beat before the place where this begins.</summary>
        public bool IsStruckAgain { get; init; }

        public bool IsMoved => Start != Pieces[0].Start;
    }

    /// <summary>The tune's bars on one time line.</summary>
    private sealed class Grid
    {
        private readonly Tune _tune;
        private readonly ScoreTime[] _starts;
        private readonly ScoreTime[] _leads;
        private readonly bool[] _turns;

        public Grid(Tune tune)
        {
            _tune = tune;
            _starts = new ScoreTime[tune.Bars.Count + 1];
            for (var i = 0; i < tune.Bars.Count; i++)
            {
                _starts[i + 1] = _starts[i] + tune.Bars[i].Length;
            }
            var marked = Unfolding.WithRepeatStarts(tune);
            _leads = [.. tune.Bars.Select((_, i) => BarSeams.Lead(tune, i))];
            _turns =
            [
                .. marked.Bars.Select(
                    (bar, i) =>
                        BarSeams.TurnBefore(marked, i) || (bar.Section is not null && tune.SectionOrder.Count > 0)
                ),
            ];
        }

        public List<Sound> Sounds()
        {
            var pieces = _tune
                .Bars.SelectMany((bar, i) => bar.Notes.Select(n => new Piece(i, _starts[i] + n.At, n)))
                .ToList();
            var sounds = new List<Sound>();
            for (var i = 0; i < pieces.Count; )
            {
                var end = i + 1;
                var held = pieces[i].Note.Lyrics.Any(l => l.Extends);
                while (end < pieces.Count && GoesOn(pieces[end - 1], pieces[end], held))
                {
                    end++;
                }
                AddSound(sounds, pieces[i..end]);
                i = end;
            }
            return sounds;
        }

        // One sound, or two where it begins too early to return to the beat that it is held through.
        private void AddSound(List<Sound> sounds, List<Piece> pieces)
        {
            var (start, end) = (pieces[0].Start, pieces[^1].End);
            var bar = pieces[0].Bar;
            var next = NextBeat(start, bar);
            var most = BeatOf(bar) * new ScoreTime(1, 2);
            if (end <= next || next - start <= most || IsOnBeat(start, bar))
            {
                sounds.Add(new Sound(pieces.ToValueList(), start, end));
                return;
            }
            var cut = pieces.FindIndex(p => p.End > next);
            var (before, after) = (pieces[..cut], pieces[cut..]);
            if (after[0].Start < next)
            {
                var (piece, note) = (after[0], after[0].Note);
                before.Add(piece with { Note = note with { Length = next - piece.Start } });
                var rest = new TuneNote(next - _starts[piece.Bar], piece.End - next, note.Pitch);
                after[0] = new Piece(piece.Bar, next, rest with { TiedToNext = note.TiedToNext });
            }
            sounds.Add(new Sound(before.ToValueList(), start, next) { TieEnds = true });
            sounds.Add(new Sound(after.ToValueList(), next, end) { IsStruckAgain = true });
        }

        /// <summary>Where a sound that lasts until <paramref name="end"/> returns to; null where it stays.</summary>
        public ScoreTime? Returns(List<Sound> sounds, int index, ScoreTime end)
        {
            var start = sounds[index].Start;
            var bar = BarAt(start);
            var metre = _tune.Bars[bar].Metre;
            if (!IsOnBeat(start, bar) && NextBeat(start, bar) is var beat && end > beat)
            {
                return beat;
            }
            var part = BeatOf(bar) * new ScoreTime(1, 2);
            var place = PlaceOf(start, bar);
            if (IsThreefold(metre) || place.IsMultipleOf(part) || !BitOperations.IsPow2(place.Per(part).Denominator))
            {
                return null;
            }
            var half = Next(start, bar, part);
            return end <= half || IsSnap(sounds, index, end, half - part, half + part) ? null : half;
        }

        private ScoreTime PlaceOf(ScoreTime time, int bar) => time - _starts[bar] + _leads[bar];

        private bool IsOnBeat(ScoreTime time, int bar) => PlaceOf(time, bar).IsMultipleOf(BeatOf(bar));

        private ScoreTime NextBeat(ScoreTime time, int bar) => Next(time, bar, BeatOf(bar));

        private ScoreTime BeatOf(int bar) =>
            _tune.Bars[bar].Metre is var metre && IsThreefold(metre) ? metre.Beat : new ScoreTime(1, metre.Unit);

        private static bool IsThreefold(Metre metre) => metre.IsCompound && metre.Unit >= 8;

        // The next multiple of a step, or the bar's end.
        private ScoreTime Next(ScoreTime time, int bar, ScoreTime step)
        {
            var place = PlaceOf(time, bar);
            var times = place.Per(step);
            var within = place - step * (times.Numerator / times.Denominator);
            return ScoreTime.Min(time + step - within, _starts[bar + 1]);
        }

        // A short note on the half-beat's first place and a long one that fills the beat: a dotted pair reversed.
        private static bool IsSnap(List<Sound> sounds, int index, ScoreTime end, ScoreTime from, ScoreTime to) =>
            end == to && index > 0 && sounds[index - 1].Start == from && sounds[index - 1].End == sounds[index].Start;

        public Tune Write(List<Sound> sounds)
        {
            var notes = _tune.Bars.Select(_ => new List<TuneNote>()).ToArray();
            for (var i = 0; i < sounds.Count; i++)
            {
                var goesOn = i + 1 < sounds.Count && sounds[i + 1].Pieces[0].Note.Lyrics.Count == 0;
                foreach (var piece in sounds[i].IsMoved ? Afresh(sounds[i], goesOn) : AsWritten(sounds[i]))
                {
                    notes[piece.Bar].Add(piece.Note);
                }
            }
            var chords = Chords(sounds);
            return _tune with
            {
                Bars = _tune
                    .Bars.Select(
                        (bar, i) => bar with { Notes = notes[i].ToValueList(), Chords = chords[i].ToValueList() }
                    )
                    .ToValueList(),
            };
        }

        private static IEnumerable<Piece> AsWritten(Sound sound)
        {
            foreach (var piece in sound.Pieces.SkipLast(1))
            {
                yield return piece;
            }
            var last = sound.Pieces[^1];
            var longer = last.End != sound.End;
            yield return last with
            {
                Note = last.Note with
                {
                    Length = sound.End - last.Start,
                    TiedToNext = last.Note.TiedToNext && !sound.TieEnds && !longer,
                },
            };
        }

        // A moved sound, cut at the bar lines.
        private IEnumerable<Piece> Afresh(Sound sound, bool goesOn)
        {
            var first = sound.Pieces[0].Note;
            for (var at = sound.Start; at < sound.End; )
            {
                var bar = BarAt(at);
                var end = ScoreTime.Min(sound.End, _starts[bar + 1]);
                var isFirst = at == sound.Start;
                var isLast = end == sound.End;
                var note = new TuneNote(at - _starts[bar], end - at, first.Pitch)
                {
                    TiedToNext = !isLast || (sound.Pieces[^1].Note.TiedToNext && !sound.TieEnds),
                    Graces = isFirst ? first.Graces : [],
                    Lyrics = isFirst
                        ? first.Lyrics.Select(l => l with { Extends = l.Extends && (!isLast || goesOn) }).ToValueList()
                        : [],
                };
                yield return new Piece(bar, at, note);
                at = end;
            }
        }

        // Anticipated symbols go back with their notes, unless another one stands there.
        private List<PlacedChord>[] Chords(List<Sound> sounds)
        {
            var chords = _tune.Bars.Select(bar => bar.Chords.ToList()).ToArray();
            foreach (var sound in sounds.Where(s => s.IsMoved))
            {
                var from = sound.Pieces[0];
                var to = BarAt(sound.Start);
                var place = sound.Start - _starts[to];
                bool Given(PlacedChord c) =>
                    _starts[from.Bar] + c.At >= from.Start && _starts[from.Bar] + c.At < sound.Start;
                if (chords[from.Bar].FindLast(Given) is not { } early)
                {
                    continue;
                }
                var there = chords[to].Find(c => c.At == place);
                if (there is null || there.Chord.Equals(early.Chord))
                {
                    chords[from.Bar].Remove(early);
                }
                if (there is null)
                {
                    var after = chords[to].FindIndex(c => c.At > place);
                    chords[to].Insert(after < 0 ? chords[to].Count : after, new PlacedChord(place, early.Chord));
                }
            }
            return chords;
        }

        private bool GoesOn(Piece from, Piece to, bool held) =>
            (from.Note.TiedToNext || held)
            && to.Start == from.End
            && to.Note.Pitch == from.Note.Pitch
            && to.Note is { Lyrics.Count: 0, Graces.Count: 0 }
            && !Enumerable.Range(from.Bar + 1, to.Bar - from.Bar).Any(bar => _turns[bar]);

        private int BarAt(ScoreTime time)
        {
            var found = Array.BinarySearch(_starts, 0, _tune.Bars.Count, time);
            return found >= 0 ? found : ~found - 1;
        }
    }
}
