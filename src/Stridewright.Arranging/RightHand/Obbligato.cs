using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// A line above the tune, which the same hand holds under it: ragged short-long-short in bars of two beats, a note a unit
/// elsewhere, of the chord or passing, within an octave of the tune and within reach. The cheapest line over the whole
/// tune. Common practice.
/// </summary>
internal sealed class Obbligato
{
    private const int Unit = Lattice.TicksPerUnit;
    private const int Nearest = 3,
        Furthest = 12,
        Highest = 98;
    private const long Passing = 500,
        PassingOnBeat = 1500,
        NoStep = 6000;

    // Short-long-short: the units of a half bar that the line strikes.
    private static readonly int[] Ragged = [0, 1, 3];
    private readonly Stage _stage;
    private readonly Lattice _lattice;
    private readonly RightNote[] _notes;
    private readonly ulong _seed;

    private Obbligato(Stage stage, RightLine line) =>
        (_stage, _lattice, _notes, _seed) = (stage, stage.Lattice, line.Notes, stage.Seed(17));

    public static RightLine Add(Stage stage, RightLine line, CancellationToken cancellation) =>
        stage.Lattice.Bars.Any(b => b.Treatment.Right == RightManner.Obbligato)
            ? new Obbligato(stage, line).Solve(line, cancellation)
            : line;

    private RightLine Solve(RightLine line, CancellationToken cancellation)
    {
        var layers = new List<(int Tick, int End, Candidate[] Candidates)>();
        foreach (var (tick, end) in Places())
        {
            cancellation.ThrowIfCancellationRequested();
            if (Candidates(tick, end) is { Length: > 0 } found)
            {
                layers.Add((tick, end, found));
            }
        }
        if (layers.Count == 0)
        {
            return line;
        }
        var path = new LayeredPath();
        for (var i = 0; i < layers.Count; i++)
        {
            var to = layers[i].Candidates;
            path.OpenLayer(to.Length);
            for (var t = 0; t < to.Length; t++)
            {
                if (i == 0)
                {
                    path.Start(t, to[t].Price, t);
                }
                for (var f = 0; i > 0 && f < layers[i - 1].Candidates.Length; f++)
                {
                    var move = Move(layers[i - 1].Candidates[f], to[t]);
                    path.Offer(f, t, path.EarlierCosts[f] + to[t].Price + move, t);
                }
            }
        }
        var (cost, steps) = path.Best() ?? throw new InvalidOperationException("every place of the line has a key");
        var above = layers.Select(
            (layer, i) =>
                new RightNote
                {
                    Tick = layer.Tick,
                    End = layer.End,
                    Tune = -1,
                    Top = layer.Candidates[steps[i].Choice].Pitch,
                    Use = RightUse.Line,
                }
        );
        var tune = _notes.Select(n => IsAsked(n.Tick) ? n with { UnderHeld = true } : n);
        RightNote[] notes = [.. tune.Concat(above).OrderBy(n => n.Tick)];
        // A filler before these bars may sound into them.
        return line with { Notes = RightVoices.Apart(notes), Cost = line.Cost + cost };
    }

    private bool IsAsked(int tick) =>
        _lattice.Bars[_lattice.BarAt(tick)]
            is { Treatment.Right: RightManner.Obbligato, Held: null or { Right: null } };

    private IEnumerable<(int Tick, int End)> Places()
    {
        foreach (
            var bar in _lattice.Bars.Where(b => b.Treatment.Right == RightManner.Obbligato && b.Held?.Right is null)
        )
        {
            var ticks = Enumerable
                .Range(0, bar.Length / Unit)
                .Where(u => !_lattice.IsDuple || Ragged.Contains((u + bar.Lead / Unit) % 4))
                .Select(u => bar.Start + u * Unit)
                .ToList();
            for (var i = 0; i < ticks.Count; i++)
            {
                yield return (ticks[i], i + 1 < ticks.Count ? ticks[i + 1] : bar.End);
            }
        }
    }

    private Candidate[] Candidates(int tick, int end)
    {
        // What was begun before the line, and sounds on in the hand's upper voice, leaves it no place.
        if (_notes.Any(n => n.End > tick && n.Tick < tick && !IsAsked(n.Tick)))
        {
            return [];
        }
        var under = _notes.Where(n => n.Tick < end && n.End > tick).Select(n => n.Top.Midi).ToList();
        if (under.Count == 0)
        {
            return [];
        }
        var bar = _lattice.Bars[_lattice.BarAt(tick)];
        var chord = _lattice.ChordAt(tick).Chord;
        var tones = chord.IsNoChord ? [] : chord.Tones;
        var onBeat = (tick - bar.Start + bar.Lead) % (2 * Unit) == 0;
        var found = new List<Candidate>();
        for (var key = under.Max() + Nearest; key <= Math.Min(Highest, under.Min() + Furthest); key++)
        {
            var inChord = tones.Any(t => t.PitchClass == key % 12);
            var tone = inChord ? tones.First(t => t.PitchClass == key % 12) : bar.Key.Spell(key);
            var clashes = under.Any(u => (key - u) % 12 is 1 or 11);
            var reach = _stage.RightReach.Of(under.Min(), key);
            if ((!inChord && (!bar.Key.Contains(tone) || clashes)) || reach > Stretch.Possible)
            {
                continue;
            }
            if (!_stage.Brief.Hands.Wants(key - under.Min()))
            {
                continue;
            }
            var salt = Variety.Mix(_seed, (bar.StrainBar % 8 * 64 + tick - bar.Start) * 16L + (key - under.Max()));
            var price = (inChord ? 0 : Passing + (onBeat ? PassingOnBeat : 0)) + 40 * Variety.Cost(salt) / 100;
            found.Add(new Candidate(Pitch.At(key, tone), price, !inChord));
        }
        return [.. found];
    }

    private static long Move(Candidate from, Candidate to)
    {
        var interval = Math.Abs(to.Pitch.Midi - from.Pitch.Midi);
        var byLeap = (from.IsPassing || to.IsPassing) && interval is 0 or > 2;
        return Filling.PriceOf(interval) + (byLeap ? NoStep : 0);
    }

    private readonly record struct Candidate(Pitch Pitch, long Price, bool IsPassing);
}
