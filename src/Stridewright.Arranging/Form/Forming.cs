using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Grows a tune into a form. A strain is played once where its letter stands, with its last ending; its repeats are not
/// played out, since the line says how often it comes.
/// </summary>
internal sealed class Forming
{
    private const int IntroBars = 4,
        TagBars = 2,
        BreakEvery = 8,
        BreakBars = 2,
        HighestLifted = 100;

    private readonly List<TuneBar> _bars = [];
    private readonly List<Treatment> _treatments = [];
    private readonly List<List<TuneBar>> _sections;

    private Forming(Tune tune) => _sections = Sections(tune);

    /// <summary>The piece; a part that names a section the tune has not was refused by <see cref="Fault"/>.</summary>
    public static Piece Apply(Tune tune, FormLine? form)
    {
        if (form is null)
        {
            return Piece.Of(tune);
        }
        var forming = new Forming(tune);
        var heard = new Dictionary<char, int>();
        foreach (var part in form.Parts)
        {
            forming.Add(part, heard.GetValueOrDefault(part.Letter));
            if (HasLetter(part))
            {
                heard[part.Letter] = heard.GetValueOrDefault(part.Letter) + 1;
            }
        }
        var bars = forming._bars;
        bars[^1] = bars[^1] with { Marks = bars[^1].Marks with { FinalBarAfter = true } };
        return new Piece(tune with { Bars = bars.ToValueList() }, forming._treatments.ToValueList());
    }

    /// <summary>Why the form does not fit the tune; null: it does.</summary>
    public static string? Fault(Tune tune, FormLine form)
    {
        var sections = Sections(tune);
        var part = form.Parts.FirstOrDefault(p => HasLetter(p) && p.Letter - 'A' >= sections.Count);
        if (part is not null)
        {
            return FormMessages.NoSection(part.Letter, part.Place, sections.Count);
        }
        var played = form.Parts.Where(HasLetter).Select(p => sections[p.Letter - 'A']).ToList();
        var bars = played.Sum(s => s.Count);
        var notes = played.Sum(s => s.Sum(b => b.Notes.Count));
        return bars > Arranger.MostBars || notes > Arranger.MostNotes
            ? ArrangingMessages.TooLong(bars, Arranger.MostBars)
            : null;
    }

    private static bool HasLetter(FormPart part) => part.Kind is PartKind.Strain or PartKind.Trio;

    private void Add(FormPart part, int chorus)
    {
        var last = _sections[^1];
        var home = _sections[0][0].Key;
        var (name, bars) = part.Kind switch
        {
            PartKind.Intro => ("Intro", WholeBars(last).TakeLast(IntroBars)),
            PartKind.Vamp => ("Vamp", Vamp(WholeBars(last)[^1] with { Key = home })),
            PartKind.Tag => ("Tag", WholeBars(last).TakeLast(TagBars)),
            PartKind.End => ("End", [Close(WholeBars(last)[^1] with { Key = home })]),
            PartKind.Trio => ("Trio", Register.Move(AsTune(Section(part)), ToSubdominant).Bars),
            _ => (part.Letter.ToString(), Section(part).AsEnumerable()),
        };
        var played = Lifted(bars.ToList(), part.Treatment.Lift);
        for (var i = 0; i < played.Count; i++)
        {
            var isLast = i == played.Count - 1;
            _bars.Add(
                played[i] with
                {
                    Section = i == 0 ? name : null,
                    Marks =
                        part.Kind == PartKind.Vamp
                            ? new BarMarks { RepeatStart = i == 0, RepeatEnd = isLast ? 2 : 0 }
                            : new BarMarks { DoubleBarAfter = isLast },
                    Notes = isLast ? Untied(played[i].Notes) : played[i].Notes,
                }
            );
            _treatments.Add(
                part.Treatment with
                {
                    Part = name,
                    Chorus = chorus,
                    Heading = i == 0 ? name : null,
                    Dynamic = i == 0 ? part.Treatment.Dynamic : null,
                    IsAdded = !HasLetter(part),
                    Left =
                        part.Breaks && i % BreakEvery >= BreakEvery - BreakBars
                            ? LeftManner.Break
                            : part.Treatment.Left,
                }
            );
        }
    }

    private List<TuneBar> Section(FormPart part) => _sections[part.Letter - 'A'];

    // Sections in the order in which they first appear; the whole tune where none is named.
    private static List<List<TuneBar>> Sections(Tune tune)
    {
        var names = tune.Bars.Select(b => b.Section).OfType<string>().Distinct().ToList();
        var parts = new Dictionary<string, List<TuneBar>>();
        List<TuneBar>? open = names.Count == 0 ? parts[""] = [] : null;
        var pickUp = new List<TuneBar>();
        foreach (var bar in tune.Bars)
        {
            if (bar.Section is { } name)
            {
                open = [.. pickUp];
                pickUp.Clear();
                parts.TryAdd(name, open);
            }
            (open ?? pickUp).Add(bar);
        }
        return [.. parts.Values.Select(LastTime)];
    }

    private static List<TuneBar> LastTime(List<TuneBar> bars)
    {
        var last = bars.SelectMany(b => b.Marks.Ending).DefaultIfEmpty(0).Max();
        var played = bars.Where(b => b.Marks.Ending.Count == 0 || b.Marks.Ending.Contains(last)).ToList();
        return played;
    }

    private static List<TuneBar> WholeBars(List<TuneBar> bars)
    {
        var whole = bars.Where(b => b.Length == b.Metre.BarLength).ToList();
        return whole.Count > 0 ? whole : bars;
    }

    private static Interval ToSubdominant => Interval.PerfectFourth;

    private static Tune AsTune(List<TuneBar> bars) => new() { Title = "", Bars = bars.ToValueList() };

    private static List<TuneBar> Lifted(List<TuneBar> bars, int octaves)
    {
        var top = bars.SelectMany(b => b.Notes).Select(n => n.Pitch.Midi).DefaultIfEmpty(0).Max();
        if (octaves == 0 || top + 12 * octaves > HighestLifted)
        {
            return bars;
        }
        return [.. Register.Move(AsTune(bars), Interval.Octave).Bars];
    }

    private static ValueList<TuneNote> Untied(ValueList<TuneNote> notes) =>
        notes.Select((n, i) => i == notes.Count - 1 ? n with { TiedToNext = false } : n).ToValueList();

    private static IEnumerable<TuneBar> Vamp(TuneBar bar) =>
        [
            bar with
            {
                Notes = [],
                Chords = [new PlacedChord(ScoreTime.Zero, Tonic(bar.Key))],
            },
            bar with
            {
                Notes = [],
                Chords = [new PlacedChord(ScoreTime.Zero, Dominant(bar.Key))],
            },
        ];

    private TuneBar Close(TuneBar bar)
    {
        var before = _bars.SelectMany(b => b.Notes).LastOrDefault()?.Pitch.Midi ?? 72;
        var down = (before - bar.Key.Tonic.PitchClass + 120) % 12;
        var close = before - (down > 6 ? down - 12 : down);
        return bar with
        {
            Notes = [new TuneNote(ScoreTime.Zero, bar.Length, Pitch.At(close, bar.Key.Tonic))],
            Chords = [new PlacedChord(ScoreTime.Zero, Tonic(bar.Key))],
        };
    }

    private static ChordSymbol Tonic(Key key) => new(key.Tonic, key.IsMinor ? ChordKind.Minor : ChordKind.Major);

    private static ChordSymbol Dominant(Key key) => new(key.Tonic.PlusFifths(1), ChordKind.Dominant);
}
