using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Right hand, which keys the fillers take: chord tones and passing tones under the tune, the cheapest melodic line
/// through the fixed tune notes. A filler never lies above both its neighbours in the tune, nor above a long note before
/// half its length.
/// </summary>
internal sealed class Filling
{
    private const int Unit = Lattice.TicksPerUnit;
    private const int LowestKey = 60;

    // Ticks from which a note of the tune is long: six sixteenths of 2/4, four eighths elsewhere.
    private const int LongInDuple = 6 * Unit,
        LongElsewhere = 4 * Unit;
    private const long PassingTone = 250,
        PassingOnBeat = 1500,
        NoStep = 6000,
        Apart = 2500,
        Covering = 3000,
        TooFast = 20_000;

    // Price of a melodic interval by semitones; a return to the same key says nothing new.
    private static readonly long[] IntervalPrice =
    [
        2500,
        400,
        0,
        0,
        0,
        200,
        1200,
        300,
        500,
        600,
        1500,
        3000,
        900,
        5000,
        5000,
        5000,
    ];

    private readonly Stage _stage;
    private readonly Lattice _lattice;
    private readonly Reach _reach;
    private readonly ulong _seed;
    private readonly HomePositions _homes;

    // Fillers of the next level by tick.
    private readonly Dictionary<int, int> _fuller;

    private Filling(Stage stage, HomePositions homes, RightLine? fuller)
    {
        _homes = homes;
        _fuller = fuller?.Notes.Where(n => n.IsFiller).ToDictionary(n => n.Tick, n => n.Top.Midi) ?? [];
        _stage = stage;
        _lattice = stage.Lattice;
        _reach = stage.RightReach;
        _seed = stage.Seed(3);
    }

    public static RightLine Solve(Stage stage, Ragged ragged, HomePositions homes, CancellationToken cancellation)
    {
        var fuller = Fuller(stage, ragged, homes, cancellation);
        return Omissions.Apply(stage.Lattice, new Filling(stage, homes, fuller).Solve(ragged.Onsets, cancellation));
    }

    /// <summary>The search of this level alone, to be looked into.</summary>
    public static OpenSearch<Pitch> Open(
        Stage stage,
        Ragged ragged,
        HomePositions homes,
        CancellationToken cancellation
    )
    {
        var filling = new Filling(stage, homes, Fuller(stage, ragged, homes, cancellation));
        return new(
            c => filling.Solve(ragged.Onsets, c),
            i => [.. filling.Candidates(ragged.Onsets, i).Select(k => k.Pitch)]
        );
    }

    private static RightLine? Fuller(Stage stage, Ragged ragged, HomePositions homes, CancellationToken cancellation) =>
        ragged.Fuller is { } next
            ? Solve(stage with { Lattice = stage.Lattice.Free() }, next, homes, cancellation)
            : null;

    private RightLine Solve(RightOnset[] onsets, CancellationToken cancellation)
    {
        var path = new LayeredPath();
        var layers = new Candidate[onsets.Length][];
        for (var i = 0; i < onsets.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            layers[i] = Candidates(onsets, i);
            path.OpenLayer(layers[i].Length);
            if (i == 0)
            {
                for (var k = 0; k < layers[0].Length; k++)
                {
                    path.Start(k, layers[0][k].Price, k);
                }
                continue;
            }
            var seconds = (onsets[i].Tick - onsets[i - 1].Tick) * _stage.SecondsPerTick;
            var limit = _stage.LeapLimit(onsets[i - 1].Tick, Hand.Right);
            for (var from = 0; from < layers[i - 1].Length; from++)
            {
                var sofar = path.EarlierCosts[from];
                for (var to = 0; to < layers[i].Length; to++)
                {
                    path.Offer(
                        from,
                        to,
                        sofar + layers[i][to].Price + Move(layers[i - 1][from], layers[i][to], seconds, limit),
                        to
                    );
                }
            }
        }
        if (onsets.Length == 0)
        {
            return new RightLine([], 0);
        }
        var (cost, steps) = path.Best() ?? throw new InvalidOperationException("a filler always has a candidate");
        return new RightLine(Lengthen(onsets, steps.Select((s, i) => layers[i][s.Node].Pitch).ToArray()), cost);
    }

    private Candidate[] Candidates(RightOnset[] onsets, int index)
    {
        var onset = onsets[index];
        if (!onset.IsFiller)
        {
            return [new Candidate(_lattice.Notes[onset.Tune].Pitch, 0, false, false)];
        }
        var found = onset.Use == RightUse.Usual ? Free(onsets, index) : Within(onset);
        if (_lattice.HeldAt(onset.Tick)?.Top is not { } held)
        {
            return found;
        }
        var same = found.Where(c => c.Pitch == held).ToArray();
        return same.Length > 0 ? same : [new Candidate(held, 0, false, true)];
    }

    // What a device leaves to choose: tones of the chord, and of the key by step.
    private Candidate[] Within(RightOnset onset)
    {
        var bar = _lattice.Bars[_lattice.BarAt(onset.Tick)];
        var (low, high) = onset.Keys;
        var tones = _lattice.ChordAt(onset.Tick).Chord is { IsNoChord: false } chord ? chord.Tones : [];
        var found = new List<Candidate>();
        for (var key = high; key >= low; key--)
        {
            var inChord = tones.Any(t => t.PitchClass == key % 12);
            var tone = inChord ? tones.First(t => t.PitchClass == key % 12) : bar.Key.Spell(key);
            if (low == high || inChord || (onset.Use == RightUse.Inner && bar.Key.Contains(tone)))
            {
                var salt = Variety.Mix(_seed, (high - key) * 64 + onset.Tick - bar.Start + 16 * bar.ChorusSalt);
                var price = (inChord ? 0 : PassingTone) + 40 * Variety.Cost(salt) / 100;
                found.Add(new Candidate(Pitch.At(key, tone), price, !inChord && low < high, true));
            }
        }
        return found.Count > 0 ? [.. found] : [new Candidate(Pitch.At(high, bar.Key.Spell(high)), NoStep, false, true)];
    }

    private Candidate[] Free(RightOnset[] onsets, int index)
    {
        var onset = onsets[index];
        var before = TuneNote(onsets, index, -1);
        if (before.Tune < 0)
        {
            // Only held bars have onsets without any note of the tune.
            before = new RightOnset(onset.Tick, 0);
        }
        var after = TuneNote(onsets, index, +1);
        var held = _lattice.Notes[before.Tune];
        var length = Math.Max(held.End, before.Tick + Unit) - before.Tick;
        var beat = (int)_lattice.Bars[_lattice.BarAt(onset.Tick)].Metre.Beat.Round(_lattice.Tick);
        var keepsBreath = length >= beat && onset.Tick - before.Tick < (length + 1) / 2;
        var next = after.Tune >= 0 ? _lattice.Notes[after.Tune].Key : held.Key;
        var high = keepsBreath ? held.Key - 1 : Math.Max(held.Key - 1, next);
        var low = Math.Min(high - 7, Math.Max(LowestKey, Math.Min(held.Key, next) - 12));
        var bar = _lattice.Bars[_lattice.BarAt(onset.Tick)];
        var chord = _lattice.ChordAt(onset.Tick).Chord;
        var tones = chord.IsNoChord ? [] : chord.Tones;
        var onBeat = (onset.Tick - bar.Start + bar.Lead) % (2 * Unit) == 0;
        var chords = _homes.HighestKey(onset.Tick, onset.Tick + Unit);
        var found = new List<Candidate>();
        for (var key = high; key >= low; key--)
        {
            var pitchClass = key % 12;
            var tone = tones.FirstOrDefault(t => t.PitchClass == pitchClass);
            var inChord = tones.Any(t => t.PitchClass == pitchClass);
            var spelled = inChord ? tone : bar.Key.Spell(key);
            if (!inChord && !bar.Key.Contains(spelled))
            {
                continue;
            }
            var salt = Variety.Mix(
                Variety.Mix(_seed, (held.Key - key) * 64 + onset.Tick - bar.Start + 16 * bar.ReturnSalt),
                (next - held.Key) * 8 + bar.StrainBar % 2
            );
            var price = (inChord ? 0 : PassingTone + (onBeat ? PassingOnBeat : 0)) + 40 * Variety.Cost(salt) / 100;
            price += key <= chords ? Covering : 0;
            price += _fuller.TryGetValue(onset.Tick, out var there) && there != key ? Apart : 0;
            found.Add(new Candidate(Pitch.At(key, spelled), price, !inChord, true));
        }
        if (found.Count == 0)
        {
            found.Add(new Candidate(held.Pitch, NoStep, false, true));
        }
        return [.. found];
    }

    /// <summary>Price of a melodic interval, in semitones.</summary>
    public static long PriceOf(int interval) => IntervalPrice[Math.Min(interval, IntervalPrice.Length - 1)];

    private long Move(Candidate from, Candidate to, double seconds, double limit)
    {
        if (!from.IsFiller && !to.IsFiller)
        {
            return 0;
        }
        var interval = Math.Abs(to.Pitch.Midi - from.Pitch.Midi);
        var price = PriceOf(interval);
        if ((from.IsPassing || to.IsPassing) && interval is 0 or > 2)
        {
            price += NoStep;
        }
        var mm = Leap.Shift(_reach, from.Pitch.Midi, from.Pitch.Midi, to.Pitch.Midi, to.Pitch.Midi);
        return Leap.Bits(mm, _reach.Keyboard) > limit * seconds ? price + TooFast : price;
    }

    private static RightOnset TuneNote(RightOnset[] onsets, int from, int step)
    {
        for (var i = from; i >= 0 && i < onsets.Length; i += step)
        {
            if (!onsets[i].IsFiller)
            {
                return onsets[i];
            }
        }
        return step < 0 ? TuneNote(onsets, 0, 1) : new RightOnset(int.MaxValue, -1);
    }

    // A note lasts to the next onset, or to its own end where the tune rests. A long note of the tune sounds on above its
    // fillers, in a voice of its own, where one hand can hold it and play them.
    private RightNote[] Lengthen(RightOnset[] onsets, Pitch[] pitches)
    {
        var notes = new RightNote[onsets.Length];
        for (var i = 0; i < onsets.Length; i++)
        {
            var next = i + 1 < onsets.Length ? onsets[i + 1].Tick : _lattice.End;
            var own = onsets[i].IsFiller ? onsets[i].Tick + 2 * Unit : _lattice.Notes[onsets[i].Tune].End;
            var end = next - own <= Unit ? next : Math.Max(own, onsets[i].Tick + 1);
            notes[i] = new RightNote
            {
                Tick = onsets[i].Tick,
                End = Math.Min(end, next),
                Tune = onsets[i].Tune,
                Top = pitches[i],
                Use = onsets[i].Use,
                StepsUnder = onsets[i].StepsUnder,
                Floor = onsets[i].Floor,
            };
        }
        for (var i = 0; i < notes.Length; i++)
        {
            if (!notes[i].IsFiller && HeldUntil(notes, i) is { } held)
            {
                notes[i] = notes[i] with { End = held, Holds = true };
                for (var f = i + 1; f < notes.Length && notes[f].IsFiller && notes[f].Tick < held; f++)
                {
                    notes[f] = notes[f] with { UnderHeld = true, End = Math.Min(notes[f].End, held) };
                }
            }
        }
        return HeldLengths.Apply(_lattice, notes);
    }

    // Where a tune note is released that sounds on above its fillers; null where it does not.
    private int? HeldUntil(RightNote[] notes, int index)
    {
        var plain = _lattice.Notes[notes[index].Tune];
        var next = index + 1;
        while (next < notes.Length && notes[next].IsFiller)
        {
            next++;
        }
        if (next == index + 1 || plain.Length < (_lattice.IsDuple ? LongInDuple : LongElsewhere))
        {
            return null;
        }
        var after = next < notes.Length ? notes[next].Tick : _lattice.End;
        var end = after - plain.End <= Unit ? after : plain.End;
        // It is let go for what does not lie under it, but not before half its length.
        for (var f = index + 1; f < next && notes[f].Tick < end; f++)
        {
            var under = notes[f].Top.Midi;
            var apart = notes[index].Top.Midi - under;
            if (
                notes[f].Use != RightUse.Usual
                || apart < 2
                || _reach.Of(under, notes[index].Top.Midi) > Stretch.Possible
            )
            {
                end = notes[f].Tick;
            }
        }
        return notes[index + 1].Tick < end && 2 * (end - notes[index].Tick) >= plain.Length ? end : null;
    }

    private readonly record struct Candidate(Pitch Pitch, long Price, bool IsPassing, bool IsFiller);
}
