using Stridewright.Engraving;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Workbench.Handouts;

/// <summary>Draws what a bar begins with on a keyboard: the bass and the chord of the left hand, and what the right strikes
/// first.</summary>
internal static class KeyboardOf
{
    private const int Octave = 12,
        MiddleC = 60;

    // A black key is 13.7 mm wide where a white one is 23.5 (common measures of a piano).
    private const double BlackShare = 13.7 / 23.5;

    /// <summary>Drawings of some bars, all of the same stretch of the keyboard.</summary>
    /// <param name="bars">Indexes in the score; in each of them something is struck.</param>
    public static HandoutKeyboards Draw(
        FingeredScore fingered,
        IReadOnlyList<int> bars,
        double octaveMm,
        string name,
        string heading
    )
    {
        var marks = bars.Select(bar => MarksOf(fingered, bar)).ToList();
        var keys = marks.SelectMany(m => m.Keys).ToList();
        var keyboard = new Keyboard(octaveMm);
        // Whole octaves from C to C round what is marked.
        var from = Math.Max(Keyboard.LowestKey, keys.Min() / Octave * Octave);
        var to = Math.Min(Keyboard.HighestKey, (keys.Max() + Octave - 1) / Octave * Octave);
        var drawings = bars.Select(
            (bar, i) =>
                new KeyboardDrawing(
                    WorkbenchMessages.KeyboardCaption(
                        fingered.Score.Bars[bar].Number,
                        ChordAt(fingered.Score, bar)?.ToString()
                    ),
                    keyboard.WhiteKeyMm,
                    keyboard.WhiteKeyMm * BlackShare,
                    Enumerable
                        .Range(from, to - from + 1)
                        .Select(key => new DrawnKey(keyboard.X(key), Keyboard.IsBlack(key), NameOf(key))
                        {
                            Marks = marks[i].TryGetValue(key, out var own) ? own.ToValueList() : [],
                        })
                        .ToValueList()
                )
        );
        var all = marks.SelectMany(m => m.Values).SelectMany(m => m).ToList();
        var key = WorkbenchMessages.KeyboardKey(
            all.Exists(m => m.IsFirst),
            all.Exists(m => m.Hand == Hand.Left),
            all.Exists(m => m.Hand == Hand.Right)
        );
        return new(name, heading, drawings.ToValueList(), key);
    }

    /// <summary>True where something is struck in a bar.</summary>
    public static bool IsStruck(FingeredScore fingered, int bar) => MarksOf(fingered, bar).Count > 0;

    private static Dictionary<int, List<KeyMark>> MarksOf(FingeredScore fingered, int bar)
    {
        var onsets = fingered.Onsets.Where(o => o.Bar == bar && o.Keys.Any(k => !k.IsHeld)).OrderBy(o => o.At).ToList();
        var left = onsets.Where(o => o.Hand == Hand.Left).ToList();
        var right = onsets.Where(o => o.Hand == Hand.Right).Take(1);
        var bass = left.Take(1).ToList();
        // The chord that answers the bass: more keys than one, or else what follows.
        var chord = left.Skip(1).FirstOrDefault(o => o.Keys.Count(k => !k.IsHeld) > 1) ?? left.Skip(1).FirstOrDefault();
        var marks = new Dictionary<int, List<KeyMark>>();
        foreach (var onset in bass.Concat(chord is null ? [] : [chord]).Concat(right))
        {
            foreach (var key in onset.Keys.Where(k => !k.IsHeld))
            {
                var mark = new KeyMark(onset.Hand, key.Finger, chord is not null && bass.Contains(onset));
                if (!marks.TryAdd(key.Key, [mark]))
                {
                    marks[key.Key].Add(mark);
                }
            }
        }
        return marks;
    }

    private static string NameOf(int key) =>
        key == MiddleC ? WorkbenchMessages.MiddleC
        : key % Octave == 0 ? FormattableString.Invariant($"C{key / Octave - 1}")
        : "";

    private static ChordSymbol? ChordAt(Score score, int bar)
    {
        for (var i = bar; i >= 0; i--)
        {
            var chords = score.Bars[i].Chords;
            var found =
                i == bar ? chords.FirstOrDefault(c => c.At == ScoreTime.Zero)
                : chords is [.., var last] ? last
                : null;
            if (found is not null)
            {
                return found.Chord;
            }
        }
        return null;
    }
}
