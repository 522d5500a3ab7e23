namespace Stridewright.Music.Notation;

/// <summary>The part of a stroke that falls into one bar. Places are in the bar.</summary>
internal sealed record Segment(Stroke Stroke, ScoreTime At, ScoreTime End, bool First, bool Last);

/// <summary>Spells the voices of one bar.</summary>
internal sealed class VoiceSpeller
{
    private readonly DraftBar _bar;
    private readonly string _id;
    private readonly MetreGrid _grid;
    private readonly int _length;
    private readonly int _offset;

    public VoiceSpeller(DraftBar bar, string id)
    {
        _bar = bar;
        _id = id;
        _length = Units(bar.Length);
        _grid = new MetreGrid(bar.Metre, _length);
        _offset =
            bar.Lead is { } lead ? Units(lead)
            : bar.Implicit ? Math.Max(0, Units(bar.Metre.BarLength) - _length)
            : 0;
    }

    /// <summary>The voices of a hand, from what falls into the bar, in time order per voice.</summary>
    public IEnumerable<ScoreVoice> Spell(Hand hand, List<Segment> upper, List<Segment> lower)
    {
        // A bar that is shorter than its metre, such as a pick-up, is not rested through but has rests of its length.
        var rests = upper.Count == 0 && _length == Units(_bar.Metre.BarLength);
        yield return new ScoreVoice(hand, 1, rests ? [WholeBarRest()] : Events(upper, hidden: false));
        if (lower.Count > 0)
        {
            yield return new ScoreVoice(hand, 2, Events(lower, hidden: true));
        }
    }

    private ScoreEvent WholeBarRest() => new(ScoreTime.Zero, _bar.Length, new NoteValue(1)) { WholeBarRest = true };

    private ValueList<ScoreEvent> Events(List<Segment> segments, bool hidden)
    {
        var events = new List<ScoreEvent>();
        var at = 0;
        foreach (var segment in segments)
        {
            var (start, end) = (Units(segment.At), Units(segment.End));
            if (start < at)
            {
                throw new ArgumentException(
                    $"bar {_bar.Number}, place {segment.At}: strokes overlap in voice {segment.Stroke.Voice} of the "
                        + $"{segment.Stroke.Hand} hand"
                );
            }
            AddRests(events, at, start, hidden);
            AddNotes(events, segment, start, end);
            at = end;
        }
        AddRests(events, at, _length, hidden);
        var spelled = events.ToArray();
        Beaming.Apply(spelled, _bar.Metre, MetreGrid.TimeOf(_offset));
        return ValueList.Create<ScoreEvent>(spelled);
    }

    private void AddRests(List<ScoreEvent> events, int start, int end, bool hidden)
    {
        foreach (var (from, to) in _grid.Divide(start + _offset, end + _offset, rest: true))
        {
            events.Add(Event(from, to) with { Hidden = hidden });
        }
    }

    private void AddNotes(List<ScoreEvent> events, Segment segment, int start, int end)
    {
        var stroke = segment.Stroke;
        foreach (var (from, to) in _grid.Divide(start + _offset, end + _offset, rest: false))
        {
            var struck = segment.First && from == start + _offset;
            var plain = Event(from, to);
            var piece = plain with
            {
                Notes = stroke
                    .Pitches.Select(p => new ScoreNote(p, NoteIds.OfNote(_id, stroke, plain.At, p))
                    {
                        TieStop = !struck,
                        TieStart = !segment.Last || to != end + _offset,
                    })
                    .ToValueList(),
            };
            events.Add(struck ? Marked(piece, stroke) : piece);
        }
    }

    private ScoreEvent Marked(ScoreEvent piece, Stroke stroke) =>
        piece with
        {
            Rolled = stroke.Rolled,
            Staccato = stroke.Staccato,
            Accent = stroke.Accent,
            Lyrics = stroke.Lyrics,
            Graces = stroke
                .Graces.Select((p, i) => new ScoreNote(p, NoteIds.OfNote(_id, stroke, piece.At, p, i + 1)))
                .ToValueList(),
        };

    private ScoreEvent Event(int from, int to) =>
        new(MetreGrid.TimeOf(from - _offset), MetreGrid.TimeOf(to - from), MetreGrid.ValueOf(to - from)!.Value);

    private int Units(ScoreTime time)
    {
        var units = MetreGrid.UnitsOf(time);
        return units >= 0
            ? units
            : throw new ArgumentException($"bar {_bar.Number}: {time} has no binary note value down to the 256th");
    }
}
