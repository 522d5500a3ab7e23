using System.Globalization;
using System.Numerics;
using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Writes the notes, rests and chord symbols of bars. Notes of a beat stand together; tuplets of three, five, seven and
/// nine are written as such; a symbol inside a note goes into a layer of invisible rests (<c>&amp;</c>; ABC 2.1, 7.4).
/// </summary>
internal sealed class AbcBarText(ScoreTime unit)
{
    // Longest rest in one sign, and most notes of a tuplet, that a reader takes.
    private static readonly ScoreTime LongestRest = new(4, 1);
    private const int LongestTuplet = 32;

    private readonly AbcPitchText _pitches = new();

    /// <summary>A stretch of the line; a rest where there is no note.</summary>
    private sealed record Event(ScoreTime At, ScoreTime Length, TuneNote? Note)
    {
        public ChordSymbol? Chord { get; set; }
    }

    /// <summary>What is written of a bar: its signs, and how many of its notes each has behind it.</summary>
    public sealed record Sign(string Text, TuneNote? Note, bool BeginsBeat);

    /// <param name="tied">Pitch that the note before the bar is tied to.</param>
    public List<Sign> Of(TuneBar bar, Pitch? tied)
    {
        _pitches.BeginBar(bar.Key, tied);
        var events = Events(bar);
        var left = PutChords(events, bar.Chords);
        var signs = new List<Sign>();
        for (int i = 0, next; i < events.Count; i = next)
        {
            var odd = OddPart(events[i].Length);
            next = odd is 3 or 5 or 7 or 9 ? TupletEnd(events, i, odd) : i + 1;
            var normal = next > i + 1 ? Normal(odd) : odd;
            for (var n = i; n < next; n++)
            {
                var mark = n == i && normal != odd ? Tuplet((int)odd, (int)normal, next - i) : "";
                signs.Add(
                    new Sign(
                        mark + Text(events[n], odd, normal),
                        events[n].Note,
                        events[n].At.IsMultipleOf(bar.Metre.Beat)
                    )
                );
            }
        }
        while (left.Count > 0)
        {
            signs.Add(new Sign("& " + Layer(bar, left, out left), null, true));
        }
        return signs;
    }

    private string Text(Event next, long odd, long normal)
    {
        var text = new StringBuilder();
        if (next.Note is { Graces.Count: > 0 } leaning)
        {
            text.Append('{').AppendJoin("", leaning.Graces.Select(_pitches.Grace)).Append('}');
        }
        if (next.Chord is not null)
        {
            text.Append('"').Append(ChordText.Format(next.Chord)).Append('"');
        }
        text.Append(_pitches.Next(next.Note?.Pitch));
        text.Append(AbcPitchText.Length(next.Length.Per(unit) * odd / normal));
        return text.Append(next.Note?.TiedToNext == true ? "-" : "").ToString();
    }

    private static string Tuplet(int odd, int normal, int count) =>
        odd == 3 && count == 3 ? "(3"
        : count == odd ? string.Create(CultureInfo.InvariantCulture, $"({odd}:{normal}")
        : string.Create(CultureInfo.InvariantCulture, $"({odd}:{normal}:{count}");

    // The power of two below: three in the time of two, five, six and seven of four, nine of eight.
    private static long Normal(long odd) => (long)BitOperations.RoundUpToPowerOf2((ulong)odd) / 2;

    private static long OddPart(ScoreTime length) =>
        length.Denominator >> BitOperations.TrailingZeroCount(length.Denominator);

    // The event after a tuplet: where its time comes out even, or the last of its kind.
    private static int TupletEnd(List<Event> events, int from, long odd)
    {
        var end = from;
        var sum = ScoreTime.Zero;
        while (end < events.Count && end - from < LongestTuplet && OddPart(events[end].Length) == odd)
        {
            sum += events[end++].Length;
            if (OddPart(sum) == 1)
            {
                break;
            }
        }
        return end;
    }

    private static List<Event> Events(TuneBar bar)
    {
        var events = new List<Event>();
        var at = ScoreTime.Zero;
        foreach (var note in bar.Notes)
        {
            Rest(events, at, note.At, bar.Chords);
            events.Add(new Event(note.At, note.Length, note));
            at = note.At + note.Length;
        }
        Rest(events, at, bar.Length, bar.Chords);
        return events;
    }

    // Rests are parted where a chord symbol stands.
    private static void Rest(List<Event> events, ScoreTime from, ScoreTime to, ValueList<PlacedChord> chords)
    {
        while (from < to)
        {
            var next = chords.Select(c => c.At).Where(at => at > from).Append(to).Min();
            var end = ScoreTime.Min(ScoreTime.Min(next, to), from + LongestRest);
            events.Add(new Event(from, end - from, null));
            from = end;
        }
    }

    // Symbols that stand at an event go there; the others are given back.
    private static List<PlacedChord> PutChords(List<Event> events, ValueList<PlacedChord> chords)
    {
        var left = new List<PlacedChord>();
        foreach (var chord in chords)
        {
            if (events.Find(e => e.At == chord.At) is { Chord: null } place)
            {
                place.Chord = chord.Chord;
            }
            else
            {
                left.Add(chord);
            }
        }
        return left;
    }

    // A layer has room for one symbol at a place.
    private string Layer(TuneBar bar, List<PlacedChord> chords, out List<PlacedChord> left)
    {
        var here = chords.DistinctBy(c => c.At).ToList();
        left = chords.Where(c => !here.Exists(h => ReferenceEquals(h, c))).ToList();
        var text = new StringBuilder();
        var at = ScoreTime.Zero;
        foreach (var (chord, end) in here.Zip(here.Skip(1).Select(c => c.At).Append(bar.Length)))
        {
            Silence(text, chord.At - at);
            text.Append('"').Append(ChordText.Format(chord.Chord)).Append('"');
            var length = end > chord.At ? end - chord.At : unit;
            Silence(text, length);
            at = chord.At + length;
        }
        return text.ToString();
    }

    private void Silence(StringBuilder text, ScoreTime length)
    {
        for (; length > ScoreTime.Zero; length -= LongestRest)
        {
            text.Append('x').Append(AbcPitchText.Length(ScoreTime.Min(length, LongestRest).Per(unit)));
        }
    }
}
