namespace Stridewright.Testing;

/// <summary>
/// The words for what a hand may be asked to do, each found in a written score by its definition (common practice of
/// ragtime and stride piano): none looks at how the arranger went about it.
/// </summary>
public static class Vocabulary
{
    private const double Same = 1e-6;

    /// <summary>True where a bar does what a word says; null: there is no such word.</summary>
    public static bool? Has(string word, IReadOnlyList<SheetBar> sheet, int index)
    {
        var bar = sheet[index];
        var next = index + 1 < sheet.Count ? sheet[index + 1] : null;
        var (left, right) = (bar.Left, bar.Right);
        var tune = right.Where(s => s.Is("tune")).ToList();
        return word switch
        {
            "stride" => left.Zip(left.Skip(1)).Any(p => p.First.Keys.Count < 3 && p.Second.Low > p.First.Low),
            "walking-octaves" => left.Count >= 3
                && left.All(s => s.High - s.Low == 12 && s.Keys.Count == 2)
                && OneWay([.. left.Select(s => s.Low), .. Landing(next)]),
            "walking-tenths" => Tenths(left) is { Count: >= 3 } lows && OneWay(lows),
            "chromatic-approach" => left.Count > 1 && Landing(next) is [var root] && Math.Abs(left[^1].Low - root) == 1,
            "back-beat-tenths" => left.Zip(left.Skip(1))
                .Any(p => Single(p.First) && Single(p.Second) && p.First.Low - p.Second.Low is 15 or 16),
            "broken-tenths" => Enumerable
                .Range(0, Math.Max(0, left.Count - 2))
                .Any(i =>
                    Single(left[i])
                    && Single(left[i + 1])
                    && Single(left[i + 2])
                    && left[i + 1].Low - left[i].Low is >= 6 and <= 8
                    && left[i + 2].Low - left[i].Low is 15 or 16
                ),
            "contrary-run" => Contrary(left, tune, next),
            "low-pedal" => next is not null && Pedal(bar, next),
            "cadence-figure" => left.Count >= 3
                && left[^1].Low - left[^2].Low == 1
                && left[^2].Low - left[^3].Low == 1
                && Landing(next) is [var home]
                && (home - left[^1].Low + 120) % 12 == 5,
            "stop-time" or "break" => left.Count == 1 && right.Count >= 2,
            "left-silent" => left.Count == 0 && right.Count > 0,
            "ragged" => Syncopated(bar),
            "plain" => tune.Count > 0 && tune.Count == right.Count && tune.All(s => OnBeatPart(s, bar)),
            "thirds" => Mostly(tune, s => s.Keys.Count == 2 && s.High - s.Low is 3 or 4),
            "sixths" => Mostly(tune, s => s.Keys.Count == 2 && s.High - s.Low is 8 or 9),
            "octaves" => Mostly(tune, s => s.Keys.Count == 2 && s.High - s.Low == 12),
            "full-octaves" => Mostly(tune, s => s.Keys.Count > 2 && s.High - s.Low == 12),
            "crushed-notes" => right.Any(s => s.Graces is [var g] && s.High - g == 1 && IsBlack(g) && !IsBlack(s.High)),
            "call" => tune.Count > 0 && tune.Count == right.Count,
            "fills-only" => right.Count > 0 && tune.Count == 0,
            "right-silent" => right.Count == 0 && left.Count > 0,
            "answer" => Answer(bar),
            "thumb-tune" => left.Any(s => s.Is("tune"))
                && tune.Count == 0
                && right.Count > 0
                && right.All(r => r.Keys.Count >= 2 && left.All(l => l.High < r.Low || l.End <= r.At + Same)),
            "obbligato" => tune.Count > 0 && right.Count(s => IsAbove(s, tune)) >= 3,
            "three-against-four" => Groups(right) >= 2,
            "parallel-run" => Parallel(right),
            "tremolo" => Tremolo(right),
            _ => null,
        };
    }

    private static int[] Landing(SheetBar? next) => next is { Left.Count: > 0 } ? [next.Left[0].Low] : [];

    private static bool Single(SheetStroke stroke) => stroke.Keys.Count == 1;

    private static bool IsBlack(int key) => (key % 12) is 1 or 3 or 6 or 8 or 10;

    private static bool Mostly(List<SheetStroke> tune, Func<SheetStroke, bool> is_) =>
        tune.Count > 0 && 2 * tune.Count(is_) >= tune.Count;

    // Steps of one or two semitones, all the same way.
    private static bool OneWay(IReadOnlyList<int> keys)
    {
        var steps = keys.Zip(keys.Skip(1), (a, b) => b - a).ToList();
        return steps.Count > 0 && (steps.All(s => s is 1 or 2) || steps.All(s => s is -1 or -2));
    }

    // Lower keys of the tenths, struck together or one after the other.
    private static List<int> Tenths(IReadOnlyList<SheetStroke> left)
    {
        var lows = new List<int>();
        for (var i = 0; i < left.Count; i++)
        {
            if (left[i].Keys.Count == 2 && left[i].High - left[i].Low is 15 or 16)
            {
                lows.Add(left[i].Low);
            }
            else if (i + 1 < left.Count && Single(left[i]) && left[i + 1].Low - left[i].Low is 15 or 16)
            {
                lows.Add(left[i].Low);
                i++;
            }
        }
        return lows;
    }

    private static bool Contrary(IReadOnlyList<SheetStroke> left, List<SheetStroke> tune, SheetBar? next)
    {
        var keys = tune.Select(s => s.High).ToList();
        var after = next?.Right.FirstOrDefault(s => s.Is("tune"))?.High;
        var way =
            keys.Count == 0 ? 0
            : keys[^1] != keys[0] ? Math.Sign(keys[^1] - keys[0])
            : Math.Sign((after ?? keys[0]) - keys[0]);
        var lows = left.Select(s => s.Low).ToList();
        return way != 0
            && Enumerable
                .Range(0, Math.Max(0, lows.Count - 2))
                .Any(i => OneWay([.. lows.Skip(i).Take(3)]) && Math.Sign(lows[i + 1] - lows[i]) == -way);
    }

    // One bass throughout two bars while what lies above it changes.
    private static bool Pedal(SheetBar bar, SheetBar next)
    {
        var basses = new[] { bar, next }
            .Select(b => b.Left.Where(Single).Select(s => s.Low).Distinct().ToList())
            .ToList();
        var chords = new[] { bar, next }.Select(b => b.Left.FirstOrDefault(s => s.Keys.Count > 1)).ToList();
        return basses.All(b => b.Count == 1)
            && basses[0][0] == basses[1][0]
            && basses[0][0] < 48
            && chords.All(c => c is not null)
            && !chords[0]!.Keys.SequenceEqual(chords[1]!.Keys);
    }

    private static bool OnBeatPart(SheetStroke stroke, SheetBar bar) =>
        Math.Abs((stroke.At - bar.Start) * 2 - Math.Round((stroke.At - bar.Start) * 2)) < Same;

    // Short-long-short in the first or second half, or tied over the middle (detector of Kirlin's study, ISMIR 2020).
    private static bool Syncopated(SheetBar bar)
    {
        var unit = bar.Length / 8;
        var bits = string.Concat(
            Enumerable
                .Range(0, 8)
                .Select(i => bar.Right.Any(s => Math.Abs(s.At - bar.Start - i * unit) < Same) ? '1' : '0')
        );
        return bits[..4] == "1101" || bits[4..] == "1101" || bits[2..6] == "1101";
    }

    // Two or more single notes by step, a grid unit apart, while the right hand strikes nothing.
    private static bool Answer(SheetBar bar)
    {
        var run = bar.Left.Where(s => s.Is("run") && Single(s)).ToList();
        return Enumerable
            .Range(0, Math.Max(0, run.Count - 1))
            .Any(i =>
                Math.Abs(run[i + 1].Low - run[i].Low) is 1 or 2
                && run[i + 1].At - run[i].At <= 0.5 + Same
                && !bar.Right.Any(r => r.At > run[i].At - Same && r.At < run[i + 1].At + Same)
            );
    }

    private static bool IsAbove(SheetStroke stroke, List<SheetStroke> tune) =>
        !stroke.Is("tune")
        && tune.Any(t => t.At < stroke.End - Same && t.End > stroke.At + Same)
        && tune.Where(t => t.At < stroke.End - Same && t.End > stroke.At + Same).All(t => t.High < stroke.Low);

    // Three evenly spaced strokes, the first the highest of them.
    private static int Groups(IReadOnlyList<SheetStroke> right)
    {
        var groups = 0;
        for (var i = 0; i + 2 < right.Count; i++)
        {
            var (a, b, c) = (right[i], right[i + 1], right[i + 2]);
            var even = Math.Abs(b.At - a.At - (c.At - b.At)) < Same && b.At - a.At <= 0.5 + Same && b.At > a.At;
            if (even && a.High > b.High && a.High > c.High)
            {
                groups++;
                i += 2;
            }
        }
        return groups;
    }

    private static bool Parallel(IReadOnlyList<SheetStroke> right)
    {
        for (var i = 0; i + 2 < right.Count; i++)
        {
            var run = right.Skip(i).Take(3).ToList();
            var wide = run.Select(s => s.High - s.Low).ToList();
            var alike = wide.All(w => w is 3 or 4) || wide.All(w => w is 8 or 9) || wide.All(w => w == 12);
            if (
                run.All(s => s.Keys.Count == 2)
                && alike
                && Steps([.. run.Select(s => s.High)])
                && run[1].At - run[0].At <= 0.5 + Same
            )
            {
                return true;
            }
        }
        return false;

        // Of a scale, the raised seventh of minor after its sixth with it.
        static bool Steps(IReadOnlyList<int> keys) =>
            keys.Zip(keys.Skip(1), (a, b) => b - a).All(s => s is >= 1 and <= 3)
            || keys.Zip(keys.Skip(1), (a, b) => b - a).All(s => s is <= -1 and >= -3);
    }

    // Two keys in turn, eight strokes and more to a half of 4/4.
    private static bool Tremolo(IReadOnlyList<SheetStroke> right)
    {
        for (var i = 0; i + 7 < right.Count; i++)
        {
            var turns = right.Skip(i).Take(8).ToList();
            if (
                turns.All(Single)
                && turns[0].Low > turns[1].Low
                && Enumerable.Range(0, 8).All(k => turns[k].Low == turns[k % 2].Low)
                && turns[7].At - turns[0].At <= 7 * 0.25 + Same
            )
            {
                return true;
            }
        }
        return false;
    }
}
