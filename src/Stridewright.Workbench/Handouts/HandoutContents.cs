using System.Text;
using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Handouts;

/// <summary>Gathers what stands on a hand-out of a setting: its bars and items as parts of a page.</summary>
internal sealed class HandoutContents(ITools tools, Piece piece, Arrangement arrangement, HandoutWish wish)
{
    private const int UsualReach = 1;

    private readonly List<Problem> _faults = [];
    private bool _hasTempo;
    private FingeredScore? _fingered;

    /// <summary>Why there is none, by the words of the wishes.</summary>
    public ValueList<Problem> Faults => _faults.ToValueList();

    /// <summary>Null where <see cref="Faults"/> say why.</summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public HandoutSheet? Gather(CancellationToken cancellation)
    {
        var score = arrangement.Score;
        if (Excerpt.Of(score, wish.Bars) is not { } bars)
        {
            var why = WorkbenchMessages.NoSuchRange(wish.Bars ?? "", score.Bars[0].Number, score.Bars[^1].Number);
            _faults.Add(new Problem("bars", null, "", why));
            return null;
        }
        CheckWords();
        if (wish.OneSystem && bars.Count > HandoutWish.MostInOneSystem)
        {
            Fault("bars", WorkbenchMessages.LongSystem(bars.Count, HandoutWish.MostInOneSystem));
        }
        var items = wish.Items.Count > 0 ? wish.Items : [HandoutItems.Score];
        foreach (var unknown in items.Where(i => !HandoutItems.All.Contains(i)))
        {
            Fault("items", WorkbenchMessages.NoSuchItem(unknown, HandoutItems.All));
        }
        if (_faults.Count > 0)
        {
            return null;
        }
        // Own words stand at the head where nothing says otherwise.
        var ordered =
            Words(wish.Text).Count > 0 && !items.Contains(HandoutItems.Text) ? items.Prepend(HandoutItems.Text) : items;
        var parts = ordered.Distinct().SelectMany(item => Parts(item, bars, cancellation)).ToValueList();
        if (parts is [HandoutMusic only])
        {
            parts = [only with { Heading = "" }];
        }
        if (_faults.Count > 0)
        {
            return null;
        }
        return new HandoutSheet(
            Clean(score.Title),
            bars.IsAllOf(score) ? "" : WorkbenchMessages.BarsOf(Ends(score, bars)),
            parts
        )
        {
            Composer = Clean(score.Composer ?? ""),
            Pupil = wish.Pupil is { } pupil ? Clean(pupil) : null,
            Foot = [.. Words(wish.Credit), .. wish.Free ? Array.Empty<string>() : [WorkbenchCautions.Copyright]],
        };
    }

    private static (string, string) Ends(Score score, Excerpt bars) =>
        (score.Bars[bars.First].Number, score.Bars[bars.First + bars.Count - 1].Number);

    private IEnumerable<HandoutPart> Parts(string item, Excerpt bars, CancellationToken cancellation)
    {
        switch (item)
        {
            case HandoutItems.Score:
                yield return Music(item, WorkbenchMessages.TheSetting, bars, Fingered(cancellation));
                break;
            case HandoutItems.Plain:
                if (Again(b => b with { ShowPlain = true }, item, cancellation) is { } shown)
                {
                    yield return Music(item, WorkbenchMessages.PlainAbove, bars, shown.Score);
                }
                break;
            case HandoutItems.Hands:
                if (arrangement.Score.LeftHandOnly)
                {
                    Fault("items", WorkbenchMessages.OneHandOnly);
                    break;
                }
                foreach (var hand in new[] { Hand.Right, Hand.Left })
                {
                    var alone = HandAlone.Of(Fingered(cancellation), hand);
                    yield return Music(item, WorkbenchMessages.Capital(WorkbenchMessages.HandAlone(hand)), bars, alone);
                }
                break;
            case HandoutItems.Levels:
                if (AtLevels(bars, cancellation) is { } levels)
                {
                    yield return levels;
                }
                break;
            case HandoutItems.Keyboard:
                if (Keyboards(bars, cancellation) is { } keyboards)
                {
                    yield return keyboards;
                }
                break;
            case HandoutItems.Reasons:
                var reasons = NumberedNotes.About(arrangement, bars.First, bars.Count);
                var told = reasons.Count > 0 ? reasons : [WorkbenchMessages.NothingToTell];
                yield return new HandoutWords(
                    item,
                    WorkbenchMessages.WhyItIsSo,
                    told.Select(WorkbenchMessages.Capital).ToValueList()
                );
                break;
            case HandoutItems.Staves:
                yield return new HandoutStaves(item, WorkbenchMessages.YourOwn, wish.Staves ?? HandoutWish.UsualStaves);
                break;
            default:
                if (Words(wish.Text) is { Count: > 0 } words)
                {
                    yield return new HandoutWords(item, "", words);
                }
                else
                {
                    Fault("text", WorkbenchMessages.NoOwnText);
                }
                break;
        }
    }

    private HandoutMusic Music(string item, string heading, Excerpt bars, Score score) =>
        new(item, heading, [Named("", bars, score)]);

    private NamedXml Named(string label, Excerpt bars, Score score)
    {
        var xml = Encoding.UTF8.GetString(tools.ToMusicXml(bars.Cut(score, _hasTempo ? null : arrangement.Score)));
        _hasTempo = true;
        return new(label, xml);
    }

    private HandoutMusic? AtLevels(Excerpt bars, CancellationToken cancellation)
    {
        var own = arrangement.Score.LeftHandOnly ? arrangement.Brief.LeftLevel : arrangement.Brief.RightLevel;
        var usual = Enumerable
            .Range(own - UsualReach, 2 * UsualReach + 1)
            .Where(l => l is >= Brief.LowestLevel and <= Brief.HighestLevel);
        var levels = (wish.Levels.Count > 0 ? wish.Levels : usual.ToValueList()).Distinct().Order().ToList();
        var scores = new List<NamedXml>();
        foreach (var level in levels)
        {
            var set = Again(
                b =>
                    b with
                    {
                        LeftLevel = level,
                        RightLevel = level,
                        MostEffort = null,
                        Kept = [],
                        Settled = null,
                        ShowPlain = false,
                        Form = arrangement.Brief.Form,
                        Seconds = null,
                    },
                HandoutItems.Levels,
                cancellation
            );
            if (set is null)
            {
                return null;
            }
            if (set.Score.Bars.Count != arrangement.Score.Bars.Count)
            {
                Fault("levels", WorkbenchMessages.OtherBarsAtLevel(level));
                return null;
            }
            scores.Add(Named(WorkbenchMessages.AtLevel(level), bars, set.Score));
        }
        return new(HandoutItems.Levels, WorkbenchMessages.LevelsBeside, scores.ToValueList());
    }

    // The same tune by another brief; null, with the reason told, where it cannot be had.
    private Arrangement? Again(Func<Brief, Brief> other, string item, CancellationToken cancellation)
    {
        var hasNotes = piece.Tune.Bars.Any(b => b.Notes.Count > 0);
        if (item == HandoutItems.Plain && !hasNotes)
        {
            Fault("items", WorkbenchMessages.NoPlainTune);
            return null;
        }
        var result = tools.Arrange(piece.Tune, other(piece.Brief), cancellation);
        if (Passed.Of(tools, result, out var place, out var reason) is { } passed)
        {
            return passed.Arrangement;
        }
        Fault("items", WorkbenchMessages.ItemRefused(item, place.Length > 0 ? $"{place}: {reason}" : reason));
        return null;
    }

    private Score Fingered(CancellationToken cancellation) =>
        wish.Fingering ? AllFingers(cancellation).Score : arrangement.Score;

    private FingeredScore AllFingers(CancellationToken cancellation) =>
        _fingered ??= tools.Finger(arrangement.Score, arrangement.Brief.Hands, new FingeringOptions(), cancellation);

    private HandoutKeyboards? Keyboards(Excerpt bars, CancellationToken cancellation)
    {
        var score = arrangement.Score;
        var numbers = wish.Keyboard.Count > 0 ? wish.Keyboard : [score.Bars[bars.First].Number];
        var drawn = new List<int>();
        foreach (var number in numbers.Take(HandoutWish.MostKeyboards))
        {
            var bar = SpotCraft.BarOf(arrangement, number);
            if (bar < 0)
            {
                Fault("keyboard", WorkbenchMessages.NoSuchBar(number, score.Bars[^1].Number));
            }
            else if (!KeyboardOf.IsStruck(AllFingers(cancellation), bar))
            {
                Fault("keyboard", WorkbenchMessages.NothingStruck(number));
            }
            else
            {
                drawn.Add(bar);
            }
        }
        var octave = arrangement.Brief.Hands.OctaveMm;
        return _faults.Count > 0
            ? null
            : KeyboardOf.Draw(
                AllFingers(cancellation),
                drawn,
                octave,
                HandoutItems.Keyboard,
                WorkbenchMessages.OnTheKeyboard
            );
    }

    private void CheckWords()
    {
        if (wish.Staves is < 1 or > HandoutWish.MostStaves)
        {
            Fault("staves", WorkbenchMessages.Staves(HandoutWish.MostStaves));
        }
        if (wish.Keyboard.Count > HandoutWish.MostKeyboards)
        {
            Fault("keyboard", WorkbenchMessages.Keyboards(HandoutWish.MostKeyboards));
        }
        foreach (var level in wish.Levels.Where(l => l is < Brief.LowestLevel or > Brief.HighestLevel))
        {
            Fault("levels", WorkbenchMessages.Level(level, Brief.LowestLevel, Brief.HighestLevel));
        }
        Check("text", wish.Text, HandoutWish.LongestText);
        Check("credit", wish.Credit, HandoutWish.LongestCredit);
        Check("pupil", wish.Pupil, HandoutWish.LongestName);

        void Check(string name, string? words, int most)
        {
            if (words is { } given && given.Length > most)
            {
                Fault(name, WorkbenchMessages.TooManyWords(most));
            }
        }
    }

    private void Fault(string wish, string message) => _faults.Add(new Problem(wish, null, "", message));

    private static ValueList<string> Words(string? text) =>
        (text ?? "").Split('\n').Select(Clean).Where(line => line.Length > 0).ToValueList();

    // One line that any page can hold.
    private static string Clean(string text)
    {
        var clean = new StringBuilder();
        foreach (var rune in text.EnumerateRunes().Where(r => r != Rune.ReplacementChar))
        {
            clean.Append(Rune.IsControl(rune) || rune.Value is 0xFFFE or 0xFFFF ? " " : rune.ToString());
        }
        return clean.ToString().Trim();
    }
}
