using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Reasons;

/// <summary>Derives the claims about the left hand anew from scores alone.</summary>
/// <param name="facts">The score that they are about.</param>
/// <param name="levels">Scores of the same tune for the same hands at every level.</param>
/// <param name="isMeant">True where a plan for another level, made anew from the tune, has a chord at its place.</param>
internal sealed class LeftClaims(
    ScoreFacts facts,
    IReadOnlyList<ScoreFacts> levels,
    int level,
    Func<Struck, bool> isMeant,
    double secondsPerWhole
)
{
    // Register of the off-beat chord as published: lowest key from 50 (45 where it brings a harmony in), highest to 66.
    private const int Lowest = 50,
        Highest = 66;

    /// <summary>What is wrong with a claim; null: it is true.</summary>
    public string? Fault(Reason reason) =>
        reason switch
        {
            BassReason r => r.Strokes.Select(s => Bass(r.Bar, s)).FirstOrDefault(f => f is not null),
            VoicingReason r => Voicing(r),
            ThinChordReason r => Thin(r),
            RunReason r => Run(r),
            BreakReason r => Break(r),
            _ => null,
        };

    private string? Bass(int bar, BassStroke stroke)
    {
        var place = facts.Place(bar, stroke.At);
        var index = ScoreFacts.IndexAt(facts.Left, place);
        if (index < 0 || !facts.Left[index].Keys.SequenceEqual(Keys(stroke.Pitches)))
        {
            return "the bass is not struck there";
        }
        var struck = facts.Left[index];
        var (_, chord) = facts.ChordAt(place);
        if (!stroke.Chord.Equals(chord))
        {
            return $"the chord there is {chord}";
        }
        var form = (struck.High - struck.Low) switch
        {
            0 => BassForm.Single,
            12 => BassForm.Octave,
            15 or 16 when struck.Rolled => BassForm.RolledTenth,
            15 or 16 => BassForm.Tenth,
            _ => (BassForm)(-1),
        };
        return form != stroke.Form ? $"it is {form}"
            : Fits(index, stroke, chord) ? null
            : $"it is no {stroke.Role}";
    }

    private bool Fits(int index, BassStroke stroke, ChordSymbol chord)
    {
        var tone = facts.Left[index].Low % 12;
        var above = (tone - chord.Root.PitchClass + 12) % 12;
        var isTone = chord.Tones.Any(t => t.PitchClass == tone);
        bool Steps(int other) =>
            other >= 0
            && other < facts.Left.Length
            && facts.Left[other].Low == stroke.Neighbour?.Midi
            && Math.Abs(facts.Left[other].Low - facts.Left[index].Low) is 1 or 2;
        return stroke.Role switch
        {
            BassRole.Root => above == 0 && isTone,
            BassRole.SlashBass => chord.Bass?.PitchClass == tone,
            BassRole.Third => above is 3 or 4 && isTone,
            BassRole.Fifth => above is 6 or 7 or 8 && isTone,
            BassRole.FifthUnderTonic => above == 7 && AfterRaisedFourth(index, chord),
            BassRole.ChordTone => isTone && above != 0,
            BassRole.Pedal => facts.Left.Take(index).Any(s => s.Low == facts.Left[index].Low),
            BassRole.StepTo => !isTone && Steps(index + 1),
            BassRole.StepFrom => !isTone && Steps(index - 1),
            _ => !isTone,
        };
    }

    private bool AfterRaisedFourth(int index, ChordSymbol chord)
    {
        var since = facts.ChordAt(facts.Left[index].Start).Since;
        var before = facts.ChordAt(since - new ScoreTime(1, 64)).Chord;
        return before?.Kind is ChordKind.Diminished or ChordKind.DiminishedSeventh
            && (before.Root.PitchClass - chord.Root.PitchClass + 12) % 12 == 6;
    }

    private string? Voicing(VoicingReason r)
    {
        var place = facts.Place(r.Bar, r.At);
        var index = ScoreFacts.IndexAt(facts.Left, place);
        if (index < 0 || !facts.Left[index].Keys.SequenceEqual(Keys(r.Pitches)))
        {
            return "the chord is not struck there";
        }
        var (since, chord) = facts.ChordAt(place);
        if (!r.Chord.Equals(chord))
        {
            return $"the chord there is {chord}";
        }
        var before = Array.FindLastIndex(facts.Left, index, index + 1, s => s.IsChord && s.Start < place);
        if (r.Before.Count > 0 && (before < 0 || !facts.Left[before].Keys.SequenceEqual(Keys(r.Before))))
        {
            return "another chord is struck before";
        }
        if (r.Before.Count > 0 && Moved(Keys(r.Before), Keys(r.Pitches)) != r.Movement)
        {
            return "the voices move otherwise";
        }
        if (r.Held != r.Pitches.Count(p => r.Before.Any(b => b.Midi == p.Midi)))
        {
            return "other notes are held";
        }
        var inversions = Inversions(Keys(r.Pitches)).ToList();
        var nearest = r.Before.Count == 0 ? 0 : inversions.Min(i => Moved(Keys(r.Before), i));
        var ground = r.Ground switch
        {
            VoicingGround.Opens => before < 0 || IsFar(facts.Left[before], place),
            VoicingGround.Stays => r.Before.Equals(r.Pitches),
            VoicingGround.RootDue => facts.Left[index].Low % 12 == chord.Lowest.PitchClass
                && (index == 0 || facts.Left[index - 1].Start < since),
            VoicingGround.Nearest => r.Movement <= nearest,
            _ => r.NearerMovement == nearest
                && nearest < r.Movement
                && inversions.Any(i => i.SequenceEqual(Keys(r.Nearer)))
                && Stands(index, r.Ground, Keys(r.Nearer)),
        };
        return ground ? Omissions(r, index, chord) : $"it does not stand there for {r.Ground}";
    }

    private string? Thin(ThinChordReason r)
    {
        var index = ScoreFacts.IndexAt(facts.Left, facts.Place(r.Bar, r.At));
        return index < 0 || facts.Left[index].Keys.Length != 2 ? "there are not two notes"
            : r.Fuller.Count < 3 ? "that is no fuller chord"
            : Stands(index, r.Ground, Keys(r.Fuller)) ? null
            : $"{r.Ground} does not stand against it";
    }

    // What is said to stand against other keys at a place and its repetitions.
    private bool Stands(int index, VoicingGround ground, int[] other)
    {
        var here = facts.Left[index];
        var places = facts.Left.Skip(index).Where(s => s.IsChord).TakeWhile(s => s.Keys.SequenceEqual(here.Keys));
        return ground switch
        {
            VoicingGround.Home => levels.Count(l => HasAt(l, here)) > 1 || isMeant(here),
            VoicingGround.Register => Off(other) > Off(here.Keys),
            VoicingGround.RightHand => places.Any(s => Meets(s, other) > Meets(s, s.Keys)),
            VoicingGround.Strain => facts.Reach.Of(other[0], other[^1]) == Stretch.Strained,
            VoicingGround.Way => places.Sum(p => Way(p, other)) > places.Sum(p => Way(p, here.Keys)),
            VoicingGround.NextChord => facts.Left.Skip(index + 1).First(s => s.IsChord && s.Keys != here.Keys) is var n
                && Moved(other, n.Keys) > Moved(here.Keys, n.Keys),
            VoicingGround.Sound => other.Zip(other.Skip(1), (a, b) => b - a <= 1 || (b - a <= 4 && a < 48)).Any(x => x),
            _ => ground == VoicingGround.Variety,
        };
    }

    private static bool HasAt(ScoreFacts level, Struck stroke) =>
        ScoreFacts.IndexAt(level.Left, stroke.Start) is >= 0 and var i && level.Left[i].Keys.SequenceEqual(stroke.Keys);

    // Published means of the register: lowest 55, highest 63.
    private static int Off(int[] keys) => Math.Abs(keys[0] - 55) + Math.Abs(keys[^1] - 63);

    // How often keys meet, cross or rub against what the right hand has while they sound.
    private int Meets(Struck stroke, int[] keys)
    {
        var end = facts.Left.Where(s => s.Start > stroke.Start).Select(s => s.Start).DefaultIfEmpty(facts.Starts[^1]);
        var until = ScoreTime.Min(end.First(), facts.Starts[stroke.Bar + 1]);
        var sounding = facts.Sounding.Where(s => s.Hand == Hand.Right && s.Start < until && s.End > stroke.Start);
        return sounding.Sum(s =>
            (keys[^1] >= s.Key ? 1 : 0)
            + (keys.Contains(s.Key) ? 10 : 0)
            + (s.Start == stroke.Start ? keys.Count(k => (s.Key - k) is 1 or 11 or 13) : 0)
        );
    }

    // The hand's way from the stroke before and to the next, as squared rates of Fitts' index of difficulty.
    private double Way(Struck stroke, int[] keys)
    {
        var index = Array.IndexOf(facts.Left, stroke);
        double Leg(int from, int[] low, int to, int[] high)
        {
            var seconds = (facts.Left[to].Start - facts.Left[from].Start).ToQuarters() / 4 * secondsPerWhole;
            var drift = Leap.Shift(facts.Reach, low[0], low[^1], high[0], high[^1]);
            var mm =
                facts.Left[from].IsChord && facts.Left[to].IsChord
                    ? drift
                    : facts.Reach.Keyboard.Distance(low[0], high[0]);
            // The first level stays in its place, the second leaps an octave at most.
            return Math.Pow(Leap.Bits(mm, facts.Reach.Keyboard) / seconds, 2)
                + (level == 1 ? 5 * drift : 0)
                + (level == 2 && Math.Abs(high[0] - low[0]) > 12 ? 1000 : 0);
        }
        var way = 0.0;
        if (index > 0)
        {
            var before = facts.Left[index - 1].Keys;
            // A chord that does not lie above its bass is the wrong way.
            way +=
                Leg(index - 1, before, index, keys)
                + (!facts.Left[index - 1].IsChord && keys[0] <= before[0] ? 1000 : 0);
        }
        if (index + 1 < facts.Left.Length)
        {
            way += Leg(index, keys, index + 1, facts.Left[index + 1].Keys);
        }
        return way;
    }

    // No chord stood at the weak place before: more than half a bar (in three-time two thirds) lies between.
    private bool IsFar(Struck before, ScoreTime place)
    {
        var bar = facts.Score.Bars[before.Bar].Metre;
        var most = bar.Count % 3 == 0 && !bar.IsCompound ? new ScoreTime(2, 3) : new ScoreTime(1, 2);
        return place - before.Start > bar.BarLength * most
            || facts.Left.Any(s => s.Start > before.Start && s.Start < place && !s.IsChord && !IsStrong(s));
    }

    private bool IsStrong(Struck stroke) =>
        facts.Score.Bars[stroke.Bar].Metre is var metre
        && (stroke.At + facts.Lead(stroke.Bar)).IsMultipleOf(
            metre is { Count: 4, Unit: 4 } ? new ScoreTime(1, 2) : metre.Beat
        );

    private string? Omissions(VoicingReason r, int index, ChordSymbol chord)
    {
        var missing = chord.Tones.Where(t => !r.Pitches.Any(p => p.Midi % 12 == t.PitchClass)).ToList();
        if (!missing.SequenceEqual(r.Omitted.Select(o => o.Tone)))
        {
            return "other tones are missing";
        }
        var bass = Array.FindLastIndex(facts.Left, index, index + 1, s => !s.IsChord);
        var inBass = bass < 0 ? [] : facts.Left[bass].Keys;
        return r.Omitted.All(o => Right(o)) ? null : "a tone is missing for another reason";

        bool Right(Omission o)
        {
            var above = (o.Tone.PitchClass - chord.Root.PitchClass + 12) % 12;
            return o.Ground switch
            {
                OmissionGround.InTheBass => inBass.Any(k => k % 12 == o.Tone.PitchClass),
                OmissionGround.Fifth => above is 6 or 7 or 8,
                OmissionGround.AddedNote => above is 1 or 2 or 3 or 5 or 6 or 8 or 9,
                _ => true,
            };
        }
    }

    private string? Run(RunReason r)
    {
        var first = ScoreFacts.IndexAt(facts.Left, facts.Place(r.Bar, r.At));
        var keys = r.Notes.Append(r.Into).Select(p => p.Midi).ToList();
        return first < 0 || !facts.Left.Skip(first).Take(keys.Count).Select(s => s.Low).SequenceEqual(keys)
                ? "other notes are struck"
            : keys.Zip(keys.Skip(1), (a, b) => Math.Abs(a - b)).All(s => s is 1 or 2) ? null
            : "it does not go by step";
    }

    private string? Break(BreakReason r)
    {
        var left = facts.Left.Where(s => s.Bar == r.Bar).ToList();
        var right = facts.RightIn(r.Bar).Count(s => s.At > ScoreTime.Zero);
        return left is not [{ At.IsZero: true }] ? "the left hand does not rest after the first beat"
            : right != r.RightOnsets || right < 4 ? $"the right hand has {right} strokes"
            : null;
    }

    private IEnumerable<int[]> Inversions(int[] keys)
    {
        var classes = keys.Select(k => k % 12).Distinct().ToList();
        foreach (var lowest in Enumerable.Range(Lowest, Highest - Lowest + 1).Where(k => classes.Contains(k % 12)))
        {
            int[] position = [.. classes.Select(c => lowest + (c - lowest % 12 + 12) % 12).Order()];
            if (position[^1] <= Highest && facts.Reach.Of(lowest, position[^1]) != Stretch.Out)
            {
                yield return position;
            }
        }
    }

    private static int Moved(int[] from, int[] to) => from.Zip(to, (a, b) => Math.Abs(a - b)).Sum();

    private static int[] Keys(ValueList<Pitch> pitches) => [.. pitches.Select(p => p.Midi)];
}
