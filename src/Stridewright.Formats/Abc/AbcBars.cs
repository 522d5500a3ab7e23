using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>
/// Makes tune bars of the bars that were read: lengths, numbers, places and ties, in separate passes. A short bar keeps
/// its length at the beginning, and on either side of a repeat, ending, part or double bar line; elsewhere it is filled
/// up with silence. A bar that is too full keeps what it holds.
/// </summary>
internal sealed class AbcBars(List<AbcBar> bars, AbcDirectives directives, AbcFindings findings)
{
    private readonly ScoreTime[] _contents = bars.Select(b => b.Contents).ToArray();
    private readonly ScoreTime[] _lengths = bars.Select(b => b.Contents).ToArray();
    private readonly HashSet<int> _freeBars = [];
    private readonly bool[] _goesOn = new bool[bars.Count]; // second part of a bar that is split

    /// <summary>The bars of a tune, to be built anew as a reader would number and measure them.</summary>
    public static AbcBars Of(Tune tune) =>
        new(
            tune.Bars.Select(bar => new AbcBar
                {
                    Notes = { new AbcNote { Length = bar.Length } },
                    Metre = bar.Metre,
                    RepeatStart = bar.Marks.RepeatStart,
                    RepeatEnd = bar.Marks.RepeatEnd,
                    Ending = bar.Marks.Ending,
                    DoubleAfter = bar.Marks.DoubleBarAfter,
                    FinalAfter = bar.Marks.FinalBarAfter,
                    Section = bar.Section,
                })
                .ToList(),
            new AbcDirectives(),
            new AbcFindings()
        );

    public ValueList<TuneBar> Build(bool metreIsMissing)
    {
        GiveFreeBarsAMetre(metreIsMissing);
        FindSplitBars();
        NumberBars();
        JudgeLengths();
        CheckTies();
        return bars.Select(ToTuneBar).ToValueList();
    }

    private ScoreTime Due(int i) => bars[i].Metre!.Value.BarLength;

    private bool IsShort(int i) => _contents[i] < Due(i);

    // A repeat, ending, part or double bar line stands before the bar.
    private bool StartsAfresh(int i) =>
        i == 0
        || bars[i].RepeatStart
        || bars[i].Section is not null
        || bars[i - 1].RepeatEnd > 0
        || bars[i - 1].DoubleAfter
        || bars[i - 1].FinalAfter
        || !bars[i].Ending.Equals(bars[i - 1].Ending);

    private bool EndsAtMark(int i) => i == bars.Count - 1 || StartsAfresh(i + 1);

    // A free bar is in the metre that most free bars fill; one that holds more gets a metre of its own length.
    private void GiveFreeBarsAMetre(bool metreIsMissing)
    {
        var free = Enumerable.Range(0, bars.Count).Where(i => bars[i].Metre is null).ToList();
        if (free.Count == 0)
        {
            return;
        }
        var usual = free.GroupBy(i => _contents[i])
            .OrderByDescending(g => g.Count())
            .ThenByDescending(g => g.Key)
            .First()
            .Key;
        var metre = MetreOf(usual) ?? Metre.FourFour;
        foreach (var i in free)
        {
            bars[i].Metre = _contents[i] <= metre.BarLength ? metre : MetreOf(_contents[i]) ?? metre;
        }
        if (metreIsMissing)
        {
            findings.Add(Severity.Note, bars[free[0]].Spot, AbcMessages.GuessedMetre(metre.ToString()), bars[free[0]]);
        }
        _freeBars.UnionWith(free);
    }

    // 2/4, 3/4, 4/4, 5/4 …; else in eighths or sixteenths.
    private static Metre? MetreOf(ScoreTime length) =>
        length.Denominator <= 4 && length >= new ScoreTime(1, 2)
            ? new Metre((int)(length.Numerator * 4 / length.Denominator), 4)
        : length.Denominator is 8 or 16 ? new Metre((int)length.Numerator, (int)length.Denominator)
        : null;

    // Two short bars in a row that make a whole one are one bar, split by a bar line; a pick-up at the beginning is not
    // taken for half of one.
    private void FindSplitBars()
    {
        for (var i = 2; i < bars.Count; i++)
        {
            _goesOn[i] =
                IsShort(i) && IsShort(i - 1) && !_goesOn[i - 1] && _contents[i - 1] + _contents[i] == Due(i - 1);
        }
    }

    private void NumberBars()
    {
        if (directives.Numbers is { } given)
        {
            if (given.Count == bars.Count)
            {
                for (var i = 0; i < bars.Count; i++)
                {
                    bars[i].Number = given[i];
                }
                return;
            }
            findings.Warn(bars[0].Spot, AbcMessages.OtherBarNumbers(given.Count, bars.Count));
        }
        var number = 0;
        var uncounted = 0;
        for (var i = 0; i < bars.Count; i++)
        {
            var isPickUp =
                IsShort(i) && StartsAfresh(i) && (!EndsAtMark(i) || bars[i].Ending.Count == 0) && i < bars.Count - 1;
            bars[i].Number =
                i == 0 && isPickUp ? "0"
                : isPickUp || _goesOn[i] ? "X" + (++uncounted).ToString(CultureInfo.InvariantCulture)
                : (++number).ToString(CultureInfo.InvariantCulture);
        }
    }

    private void JudgeLengths()
    {
        var kept = new Dictionary<ScoreTime, int>();
        for (var i = 0; i < bars.Count; i++)
        {
            if (IsShort(i) && (StartsAfresh(i) || EndsAtMark(i)))
            {
                kept[_contents[i]] = kept.GetValueOrDefault(_contents[i]) + 1;
            }
        }
        for (var i = 0; i < bars.Count; i++)
        {
            var (holds, due) = (_contents[i], Due(i));
            if (_freeBars.Contains(i) || holds == due || (directives.KeepsShortBars && holds < due))
            {
                continue;
            }
            if (holds > due)
            {
                findings.Warn(bars[i].Spot, AbcMessages.LongBar(InUnits(holds, i), InUnits(due, i)), bars[i]);
            }
            else if (StartsAfresh(i) || EndsAtMark(i))
            {
                var others = kept.GetValueOrDefault(due - holds) - (due - holds == holds ? 1 : 0);
                if (i > 0 && others <= 0)
                {
                    findings.Warn(bars[i].Spot, AbcMessages.ShortBarKept(InUnits(holds, i), InUnits(due, i)), bars[i]);
                }
            }
            else if (!_goesOn[i] && !_goesOn[i + 1])
            {
                findings.Warn(bars[i].Spot, AbcMessages.ShortBar(InUnits(holds, i), InUnits(due, i)), bars[i]);
                _lengths[i] = due;
            }
        }
    }

    // As a fraction over the metre's unit where it comes out even: 5/8 in 6/8.
    private string InUnits(ScoreTime time, int i)
    {
        var unit = bars[i].Metre!.Value.Unit;
        var count = time * unit;
        return count.Denominator == 1
            ? string.Create(CultureInfo.InvariantCulture, $"{count.Numerator}/{unit}")
            : time.ToString();
    }

    // A tie must lead to the next note, of the same pitch, with no rest between. Across a repeat sign or into an
    // ending it may lead elsewhere; then it is dropped without a word.
    private void CheckTies()
    {
        for (var b = 0; b < bars.Count; b++)
        {
            var notes = bars[b].Notes;
            for (var n = 0; n < notes.Count; n++)
            {
                var note = notes[n];
                if (!note.Tie)
                {
                    continue;
                }
                var isLast = n == notes.Count - 1;
                var next =
                    !isLast ? notes[n + 1]
                    : b + 1 < bars.Count && _lengths[b] == _contents[b] ? bars[b + 1].Notes[0]
                    : null;
                if (next?.Pitch == note.Pitch)
                {
                    continue;
                }
                note.Tie = false;
                if (!isLast || !EndsAtMark(b))
                {
                    findings.Warn(note.Spot, AbcMessages.TieToNowhere, bars[b]);
                }
            }
        }
    }

    private TuneBar ToTuneBar(AbcBar bar, int index)
    {
        var notes = new List<TuneNote>();
        var chords = new List<PlacedChord>();
        var at = ScoreTime.Zero;
        foreach (var note in bar.Notes)
        {
            if (note.Chord is not null)
            {
                chords.Add(new PlacedChord(at, note.Chord));
            }
            if (note.Pitch is { } pitch)
            {
                notes.Add(
                    new TuneNote(at, note.Length, pitch)
                    {
                        TiedToNext = note.Tie,
                        Graces = note.Graces,
                        Lyrics = note.Lyrics.ToValueList(),
                    }
                );
            }
            at += note.Length;
        }
        return new TuneBar
        {
            Number = bar.Number!,
            Metre = bar.Metre!.Value,
            Key = bar.Key,
            Length = _lengths[index],
            Notes = notes.ToValueList(),
            Chords =
                bar.LayerChords.Count == 0
                    ? chords.ToValueList()
                    : chords.Concat(bar.LayerChords).OrderBy(c => c.At).ToValueList(),
            Section = bar.Section,
            Marks = new BarMarks
            {
                RepeatStart = bar.RepeatStart,
                RepeatEnd = bar.RepeatEnd,
                Ending = bar.Ending,
                DoubleBarAfter = bar.DoubleAfter,
                FinalBarAfter = bar.FinalAfter,
            },
        };
    }
}
