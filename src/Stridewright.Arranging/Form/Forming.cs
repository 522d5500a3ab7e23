using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Grows a tune into a form. A strain is played once where its letter stands, with its last ending; its repeats are not
/// played out, since the line says how often it comes, unless a star asks for it as written. A pick-up goes into the bar
/// before its strain.
/// </summary>
internal sealed class Forming
{
    /// <summary>Name of the part before the tune.</summary>
    public const string IntroductionName = "Intro";

    private const int IntroBars = 4,
        TagBars = 2,
        BreakEvery = 8,
        BreakBars = 2,
        HalvedFrom = 8,
        HighestLifted = 100;

    private readonly List<TuneBar> _bars = [];
    private readonly List<Treatment> _treatments = [];
    private readonly List<string> _notes = [];

    // The strain that was played last.
    private List<TuneBar> _played = [];
    private readonly Strains _strains;
    private readonly Brief _brief;

    private Forming(Tune tune, Brief brief)
    {
        _strains = Strains.Of(tune);
        _brief = brief;
    }

    /// <summary>The piece in the form of the brief; a part that names a section the tune has not was refused by
    /// <see cref="Fault"/>.</summary>
    public static Piece Apply(Tune tune, Brief brief)
    {
        if (brief.Form is not { } form)
        {
            return Piece.Of(tune);
        }
        var forming = new Forming(tune, brief);
        var heard = new Dictionary<char, int>();
        foreach (var part in form.Parts)
        {
            forming.Add(part, heard.GetValueOrDefault(part.Letter));
            if (part.HasLetter)
            {
                heard[part.Letter] = heard.GetValueOrDefault(part.Letter) + 1;
            }
        }
        var bars = forming._bars;
        if (!PickUps.Is(bars))
        {
            // Nothing before the first bar is to be made up for in the last.
            bars[^1] = PickUps.Filled(bars[^1]);
        }
        bars[^1] = bars[^1] with { Marks = bars[^1].Marks with { FinalBarAfter = true } };
        return new Piece(tune with { Bars = bars.ToValueList() }, forming._treatments.ToValueList())
        {
            Notes = forming._notes.Distinct().ToValueList(),
        };
    }

    /// <summary>Why the form does not fit the tune; null: it does.</summary>
    public static string? Fault(Tune tune, FormLine form)
    {
        var strains = Strains.Of(tune);
        var part = form.Parts.FirstOrDefault(p => p.HasLetter && !strains.Has(p));
        if (part is not null)
        {
            return FormMessages.NoSection(part.Letter, part.Place, strains.All.Count);
        }
        var played = form.Parts.Where(p => p.HasLetter).Select(strains.AsWritten).ToList();
        var bars = played.Sum(s => s.Count);
        var notes = played.Sum(s => s.Sum(b => b.Notes.Count));
        return bars > Arranger.MostBars || notes > Arranger.MostNotes
            ? ArrangingMessages.TooLong(bars, Arranger.MostBars)
            : null;
    }

    private void Add(FormPart part, int chorus)
    {
        var last = _strains.LastWhole();
        var atHome = last[^1] with { Key = _strains.Home };
        var (name, bars) = part.Kind switch
        {
            PartKind.Intro when part.Run => (IntroductionName, Additions.Run(atHome)),
            PartKind.Intro => (IntroductionName, Unsung(Strains.From(last, Math.Max(0, last.Count - IntroBars)))),
            PartKind.Vamp => ("Vamp", Additions.Vamp(atHome)),
            PartKind.Tag => ("Tag", Tag(Strains.Whole(_played.Count > 0 ? _played : last))),
            PartKind.End => ("End", [Additions.Close(atHome, LastKey())]),
            _ => (part.Kind == PartKind.Trio ? "Trio" : part.Letter.ToString(), Strain(part)),
        };
        if (part.HasLetter)
        {
            _played = bars;
        }
        var played = Lifted(bars, part, name);
        if (part.Kind != PartKind.Vamp && !part.Repeated)
        {
            played = [.. played.Select(b => b with { Marks = BarMarks.None })];
        }
        else if (part.Kind == PartKind.Vamp)
        {
            played[0] = played[0] with { Marks = new BarMarks { RepeatStart = true } };
            played[^1] = played[^1] with { Marks = new BarMarks { RepeatEnd = 2 } };
        }
        if (!part.Segue && part.Kind != PartKind.Vamp)
        {
            played[^1] = played[^1] with { Marks = played[^1].Marks with { DoubleBarAfter = true } };
        }
        played[^1] = played[^1] with { Notes = Untied(played[^1].Notes) };
        Place(part, name, chorus, Joined(played));
    }

    // The last bars once more: two, or four where two would only stay on the tonic.
    private static List<TuneBar> Tag(List<TuneBar> strain)
    {
        var tag = Of(TagBars);
        return strain.Count > 2 * TagBars && tag.All(b => b.Chords.All(c => c.Chord.Root == b.Key.Tonic))
            ? Of(2 * TagBars)
            : tag;

        List<TuneBar> Of(int bars) => Strains.From(strain, Math.Max(0, strain.Count - bars));
    }

    // Nobody sings the arranger's own bars.
    private static List<TuneBar> Unsung(List<TuneBar> bars) =>
        [.. bars.Select(b => b with { Notes = b.Notes.Select(n => n with { Lyrics = [] }).ToValueList() })];

    private void Place(FormPart part, string name, int chorus, List<TuneBar> played)
    {
        var treatment = part.For(_brief);
        var pickUp = PickUps.Is(played) ? 1 : 0;
        for (var i = 0; i < played.Count; i++)
        {
            _bars.Add(played[i] with { Section = i == 0 ? name : null });
            _treatments.Add(
                treatment with
                {
                    Part = name,
                    Chorus = chorus,
                    Heading = i == 0 ? name : null,
                    Dynamic = i == 0 ? treatment.Dynamic : null,
                    IsAdded = !part.HasLetter,
                    Segue = part.Segue && i == played.Count - 1,
                    Raggedness = part.Run ? 0 : treatment.Raggedness,
                    Left =
                        part.Breaks && i >= pickUp && (i - pickUp) % BreakEvery >= BreakEvery - BreakBars
                            ? LeftManner.Break
                        : part.Run && i < played.Count - 1 ? LeftManner.Break
                        : treatment.Left,
                }
            );
        }
    }

    // A pick-up goes into the bar before; else that bar is filled up, so that every strain begins on a beat.
    private List<TuneBar> Joined(List<TuneBar> played)
    {
        if (_bars.Count == 0)
        {
            return played;
        }
        var before = _bars[^1];
        if (
            PickUps.Is(played)
            && before.Marks.RepeatEnd == 0
            && !played[0].Marks.RepeatStart
            && PickUps.Joined(before, played[0], _treatments[^1].IsAdded) is { } joined
        )
        {
            _bars[^1] = joined;
            _treatments[^1] = _treatments[^1] with { PickUpAt = joined.Length - played[0].Length };
            return played[1..];
        }
        if (!PickUps.Is(played) || before.Marks.RepeatEnd == 0)
        {
            _bars[^1] = PickUps.Filled(before);
        }
        return played;
    }

    private List<TuneBar> Strain(FormPart part)
    {
        var bars = part.Repeated ? Repeated(part) : Turned(_strains.Once(part), part);
        if (part.Kind == PartKind.Half)
        {
            bars = Half(bars, part);
        }
        return part.Kind == PartKind.Trio ? [.. Register.Move(AsTune(bars), ToTrio(bars[^1].Key)).Bars] : bars;
    }

    private List<TuneBar> Turned(List<TuneBar> bars, FormPart part)
    {
        if (!part.Turnaround)
        {
            return bars;
        }
        var turned = Turnarounds.Applied(bars);
        var name = part.Letter.ToString();
        _notes.Add(turned is null ? FormMessages.NoTurnaround(name) : FormMessages.Turned(name));
        return turned ?? bars;
    }

    // As written where the tune repeats the strain itself, else with endings where the first time leads back.
    private List<TuneBar> Repeated(FormPart part)
    {
        var written = _strains.AsWritten(part).ToList();
        var end = written.FindIndex(b => b.Marks.RepeatEnd > 0);
        var start = PickUps.Is(written) ? 1 : 0;
        if (end >= 0)
        {
            if (written.FindIndex(b => b.Marks.RepeatStart) is var first && (first < 0 || first > end))
            {
                written[0] = written[0] with { Marks = written[0].Marks with { RepeatStart = true } };
            }
            return written;
        }
        var once = Turned(written, part).Skip(start).ToList();
        var last = written[^1];
        if (start == 1)
        {
            if (PickUps.Joined(once[^1], written[0], givesWay: false) is not { } joined)
            {
                // No room for the pick-up in the last bar: it is repeated with the strain.
                written[0] = written[0] with
                {
                    Marks = new BarMarks { RepeatStart = true },
                };
                written[^1] = last with { Marks = new BarMarks { RepeatEnd = 2 } };
                return written;
            }
            once[^1] = joined;
        }
        var same = 0;
        while (same < once.Count && once[same] == written[start + same])
        {
            same++;
        }
        once[0] = once[0] with { Marks = new BarMarks { RepeatStart = true } };
        if (same == once.Count)
        {
            once[^1] = once[^1] with { Marks = once[^1].Marks with { RepeatEnd = 2 } };
            return once;
        }
        for (var i = same; i < once.Count; i++)
        {
            var isLast = i == once.Count - 1;
            once[i] = once[i] with { Marks = once[i].Marks with { Ending = [1], RepeatEnd = isLast ? 2 : 0 } };
        }
        var second = written.Skip(start + same).Select(b => b with { Marks = new BarMarks { Ending = [2] } });
        return [.. written.Take(start), .. once, .. second];
    }

    private List<TuneBar> Half(List<TuneBar> bars, FormPart part)
    {
        var whole = bars.Skip(PickUps.Is(bars) ? 1 : 0).ToList();
        if (whole.Count < HalvedFrom)
        {
            _notes.Add(FormMessages.NotHalved(part.Letter.ToString()));
            return bars;
        }
        return Strains.From(whole, whole.Count / 2);
    }

    private List<TuneBar> Lifted(List<TuneBar> bars, FormPart part, string name)
    {
        if (part.Treatment.Lift == 0)
        {
            return [.. bars];
        }
        if (!CanLift(bars, part.Treatment.Lift))
        {
            _notes.Add(FormMessages.NotLifted(name));
            return [.. bars];
        }
        return [.. Register.Move(AsTune(bars), Interval.Octave).Bars];
    }

    /// <summary>True where a strain does not rise too high.</summary>
    /// <param name="octaves">How far it is to rise.</param>
    public static bool CanLift(List<TuneBar> bars, int octaves) =>
        bars.SelectMany(b => b.Notes).Select(n => n.Pitch.Midi).DefaultIfEmpty(0).Max() + 12 * octaves <= HighestLifted;

    private int LastKey() => _bars.SelectMany(b => b.Notes).LastOrDefault()?.Pitch.Midi ?? 72;

    // A section that is written in the subdominant stays there.
    private Interval ToTrio(Key key) =>
        key.Tonic == _strains.Home.Tonic.Plus(Interval.PerfectFourth) ? Interval.Unison : Interval.PerfectFourth;

    private static Tune AsTune(List<TuneBar> bars) => new() { Title = "", Bars = bars.ToValueList() };

    private static ValueList<TuneNote> Untied(ValueList<TuneNote> notes) =>
        notes.Select((n, i) => i == notes.Count - 1 ? n with { TiedToNext = false } : n).ToValueList();
}
