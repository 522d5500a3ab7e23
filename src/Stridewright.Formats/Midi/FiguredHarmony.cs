using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>
/// Chords of a figured accompaniment: a chord for each beat, so that notes outside the chords, chords without their root or
/// third, and changes cost least together (exact, by dynamic programming over the beats; prices set by hand on common
/// patterns: bass and chord, broken chords, four voices).
/// </summary>
internal sealed class FiguredHarmony(MidiContents file, BarPlan plan, Func<ScoreTime, Key> keyAt)
{
    private const double Change = 0.3,
        ChangeAtBar = 0.1,
        Missing = 0.08,
        InBass = 0.1;

    /// <summary>A reading is no harmony when more than this is wrong with a beat on average: its share of notes outside
    /// the chord, and so much for a root or third that does not sound.</summary>
    private const double MostWrong = 0.2,
        MissingIsWrong = 0.15;

    /// <summary>How much the tune counts beside the accompaniment.</summary>
    private const double TuneWeight = 0.5;

    /// <summary>Beats that one note is counted in at most: longer ones are pedal points or never released.</summary>
    private const int LongestNote = 32;

    // Kinds, with what each costs above a plain triad.
    private static readonly (ChordKind Kind, double Price)[] Kinds =
    [
        (ChordKind.Major, 0),
        (ChordKind.Minor, 0),
        (ChordKind.Dominant, 0.05),
        (ChordKind.MinorSeventh, 0.08),
        (ChordKind.MajorSeventh, 0.08),
        (ChordKind.Diminished, 0.1),
        (ChordKind.HalfDiminished, 0.12),
        (ChordKind.DiminishedSeventh, 0.12),
        (ChordKind.Augmented, 0.15),
    ];

    private static readonly State[] States =
    [
        .. from root in Enumerable.Range(0, 12)
        from kind in Kinds
        let chord = new ChordSymbol(default, kind.Kind)
        let third = (root + chord.Intervals[1].Semitones) % 12
        select new State(root, kind.Kind, ChordNaming.On(root, chord.PitchClassSet), third, kind.Price),
    ];

    private readonly SortedDictionary<ScoreTime, Beat> _beats = [];

    /// <summary>Chords where they change; none when the notes make no harmony.</summary>
    public List<TimedChord> Read(IReadOnlyList<MidiStroke> accompaniment, IReadOnlyList<MidiStroke> tune)
    {
        if (int.PopCount(MidiPart.PitchClasses(accompaniment)) < 3)
        {
            return [];
        }
        foreach (var stroke in accompaniment)
        {
            Add(stroke, 1, isBass: true);
        }
        foreach (var stroke in tune)
        {
            Add(stroke, TuneWeight, isBass: false);
        }
        var beats = _beats.Values.Where(b => b.Lowest < 128).ToList();
        if (beats.Count == 0)
        {
            return [];
        }
        var path = Cheapest(beats);
        if (beats.Select((b, i) => b.Wrong(States[path[i]], MissingIsWrong)).Average() > MostWrong)
        {
            return [];
        }
        var chords = new List<TimedChord>();
        for (var i = 0; i < beats.Count; i++)
        {
            if (i == 0 || path[i] != path[i - 1])
            {
                var state = States[path[i]];
                chords.Add(new(beats[i].Start, new ChordSymbol(keyAt(beats[i].Start).Spell(state.Root), state.Kind)));
            }
        }
        return chords;
    }

    private void Add(MidiStroke stroke, double weight, bool isBass)
    {
        var (from, until) = (Time(stroke.Tick), Time(stroke.End));
        for (var beats = 0; from < until && beats < LongestNote; beats++)
        {
            var bar = plan.At(from);
            var length = bar.Metre.Beat;
            var start =
                bar.Start + length * ((from - bar.Start).Per(length) is var n ? n.Numerator / n.Denominator : 0);
            var end = ScoreTime.Min(start + length, bar.End);
            if (!_beats.TryGetValue(start, out var beat))
            {
                if (_beats.Count >= MidiLimits.Beats)
                {
                    return;
                }
                _beats.Add(start, beat = new Beat(start, start == bar.Start));
            }
            beat.Weights[stroke.Key % 12] += weight * (ScoreTime.Min(end, until) - from).ToQuarters();
            beat.Lowest = isBass ? Math.Min(beat.Lowest, stroke.Key) : beat.Lowest;
            from = end;
        }
    }

    private ScoreTime Time(long tick) => new(tick, 4L * file.TicksPerQuarter);

    // A change is always made from the cheapest chord before, so each step only needs to know who stayed.
    private static int[] Cheapest(List<Beat> beats)
    {
        var (before, prices) = (new double[States.Length], new double[States.Length]);
        var stayed = new bool[beats.Count, States.Length];
        var best = new int[beats.Count];
        for (var i = 0; i < beats.Count; i++)
        {
            (before, prices) = (prices, before);
            var cheapest = i == 0 ? 0 : before[best[i - 1]] + (beats[i].StartsBar ? ChangeAtBar : Change);
            for (var s = 0; s < States.Length; s++)
            {
                stayed[i, s] = before[s] <= cheapest;
                prices[s] = beats[i].Price(States[s]) + Math.Min(before[s], cheapest);
                best[i] = prices[s] < prices[best[i]] ? s : best[i];
            }
        }
        var path = new int[beats.Count];
        for (var i = beats.Count - 1; i >= 0; i--)
        {
            path[i] =
                i == beats.Count - 1 ? best[i]
                : stayed[i + 1, path[i + 1]] ? path[i + 1]
                : best[i];
        }
        return path;
    }

    private readonly record struct State(int Root, ChordKind Kind, int Set, int Third, double Price);

    private sealed class Beat(ScoreTime start, bool startsBar)
    {
        public ScoreTime Start => start;

        public bool StartsBar => startsBar;

        public double[] Weights { get; } = new double[12];

        public int Lowest { get; set; } = 128;

        public double Price(State state) =>
            Wrong(state, Missing) - (Lowest < ChordNaming.BassBelow && Lowest % 12 == state.Root ? InBass : 0);

        public double Wrong(State state, double missing)
        {
            double all = 0,
                inside = 0;
            for (var i = 0; i < 12; i++)
            {
                all += Weights[i];
                inside += (state.Set >> i & 1) == 1 ? Weights[i] : 0;
            }
            return state.Price
                + (all - inside) / all
                + (Weights[state.Root] > 0 ? 0 : missing)
                + (Weights[state.Third] > 0 ? 0 : missing);
        }
    }
}
