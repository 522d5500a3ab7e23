namespace Stridewright.Practice.Listening.Search;

/// <summary>How a played note stands to the chord where the player is.</summary>
internal enum PathStep : byte
{
    /// <summary>It is a note of the chord.</summary>
    Struck,

    /// <summary>It is none of the score's, or of a chord close by.</summary>
    Beside,

    /// <summary>It is a note of the chord, and the player came there by a jump.</summary>
    Jumped,
}

/// <summary>Where the player is at a played note.</summary>
internal readonly record struct PathPoint(int Chord, PathStep Step);

/// <summary>
/// Finds the player's path through the score: for each played note the chord where the player is. It is the cheapest path
/// of a hidden Markov model with stays, steps, skips and jumps to anywhere, as published for symbolic alignment (Nakamura,
/// Nakamura and Sagayama 2014; Nakamura, Yoshii and Katayose 2017), found by Viterbi's algorithm. A state that is dearer
/// than the cheapest by a jump can never be part of the best path, since that could jump there: so only few states live at
/// a time, and time and memory grow with the length of the take. Tempo, and which notes of a chord are struck already, are
/// kept along the best path to each state.
/// </summary>
internal sealed class PathSearch
{
    private const int Ahead = 10; // chords that can be skipped without a jump
    private const int Near = 3; // chords either way whose notes may sound now
    private const int MostStates = 600; // that live at a time
    private const double ClearlyBetter = 0.5; // a jump is tried where the best path paid more than this
    private const double FastShake = 0.28; // seconds between the notes of a shake, at most
    private const double HeldShare = 1.6;
    private const double HeldMore = 0.5; // seconds
    private const double UsualTempo = 0.5; // seconds a quarter, before a step was taken
    private const int ShakeSteps = 3; // semitones between them
    private const int LeastTrace = 1 << 14; // steps that are remembered before any is forgotten

    private readonly ChordTable _chords;
    private readonly IReadOnlyList<PlayedNote> _played;
    private readonly List<(int Chord, PathStep Step, int From)> _trace = [];
    private readonly int[] _slotOf; // place among the states being made: for each chord that of a note struck and beside
    private readonly double[]? _due; // seconds, for each chord
    private readonly bool[] _shakes; // notes struck soon after another close by
    private readonly bool[] _repeats; // notes of which the key itself was struck just before
    private int _mostTrace = LeastTrace;
    private List<State> _states = [];
    private List<State> _made = [];

    private PathSearch(ChordTable chords, IReadOnlyList<PlayedNote> played, double[]? due)
    {
        (_chords, _played, _due) = (chords, played, due);
        _slotOf = new int[2 * chords.Count];
        Array.Fill(_slotOf, -1);
        (_shakes, _repeats) = (new bool[played.Count], new bool[played.Count]);
        for (var n = 0; n < played.Count; n++)
        {
            for (var m = n - 1; m >= 0 && played[m].Onset > played[n].Onset - FastShake; m--)
            {
                _shakes[n] |= Math.Abs(played[m].Key - played[n].Key) <= ShakeSteps;
                _repeats[n] |= played[m].Key == played[n].Key;
            }
        }
    }

    /// <summary>One point for each played note; empty where either side is.</summary>
    /// <param name="due">When each chord is about to be played, in seconds, where that is known: then there are no jumps.</param>
    public static PathPoint[] Find(ChordTable chords, IReadOnlyList<PlayedNote> played, double[]? due = null) =>
        chords.Count == 0 || played.Count == 0 ? [] : new PathSearch(chords, played, due).Find();

    private PathPoint[] Find()
    {
        Begin();
        for (var n = 1; n < _played.Count; n++)
        {
            Advance(n);
        }
        var points = new PathPoint[_played.Count];
        var at = _states.MinBy(s => s.Cost).Trace;
        for (var n = points.Length - 1; n >= 0; n--)
        {
            points[n] = new PathPoint(_trace[at].Chord, _trace[at].Step);
            at = _trace[at].From;
        }
        return points;
    }

    private void Begin()
    {
        var note = _played[0];
        foreach (var chord in _chords.With(note.Key))
        {
            var cost =
                _due is not null ? Late(chord, note.Onset)
                : chord <= Ahead ? chord * PathCosts.Skip / 2
                : PathCosts.Restart;
            Offer(new State(chord, cost, -1, PathStep.Struck, Taken(chord, note.Key), double.NaN, note.Onset));
        }
        Offer(new State(0, PathCosts.Extra, -1, PathStep.Beside, 0, double.NaN, note.Onset));
        Settle();
    }

    private static ulong Bit(int place) => 1UL << place;

    private ulong Taken(int chord, int key) => Bit(_chords.Find(chord, key, 0));

    private void Advance(int n)
    {
        var note = _played[n];
        var best = _states[0];
        foreach (var state in _states)
        {
            best = state.Cost < best.Cost ? state : best;
            Stay(state, n);
            Go(state, note);
        }
        var cheapest = _made.Min(s => s.Cost);
        if (_due is null && cheapest > best.Cost + ClearlyBetter)
        {
            Jump(best, cheapest, note);
        }
        Settle();
    }

    private void Stay(in State state, int n)
    {
        var note = _played[n];
        var place = _chords.Find(state.Chord, note.Key, state.Taken);
        if (place >= 0)
        {
            var spread = state.Taken == 0 ? 0 : PathCosts.Spread(note.Onset - state.Since);
            var since = state.Taken == 0 ? note.Onset : state.Since;
            Offer(
                state with
                {
                    Cost = state.Cost + spread + Late(state.Chord, note.Onset),
                    Step = PathStep.Struck,
                    Taken = state.Taken | Bit(place),
                    Since = since,
                    From = state.Trace,
                }
            );
        }
        Offer(state with { Cost = state.Cost + Beside(state, n), Step = PathStep.Beside, From = state.Trace });
    }

    /// <summary>What a note costs that is none of those still open in the chord.</summary>
    private double Beside(in State state, int n)
    {
        var (chord, note) = (state.Chord, _played[n]);
        var tempo = double.IsNaN(state.Tempo) ? UsualTempo : state.Tempo;
        var cost =
            _shakes[n] && IsHeld(state, tempo, note.Onset) && _chords.MayShake(chord, note.Key)
                ? PathCosts.Shake(_repeats[n], _chords.Ornamented[chord])
                : PathCosts.Extra;
        for (var near = Math.Max(0, chord - Near); near <= Math.Min(_chords.Count - 1, chord + Near); near++)
        {
            if (near != chord && _chords.Has(near, note.Key))
            {
                var due = state.Since + (_chords.Beats[near] - _chords.Beats[chord]) * tempo;
                cost = Math.Min(cost, PathCosts.Apart(Math.Abs(note.Onset - due)));
            }
        }
        for (var octave = -24; octave <= 24 && cost > PathCosts.OtherOctave; octave += 12)
        {
            cost = octave != 0 && _chords.Has(chord, note.Key + octave) ? PathCosts.OtherOctave : cost;
        }
        return cost;
    }

    // A shake lasts about as long as what it is on.
    private bool IsHeld(in State state, double tempo, double onset) =>
        onset - state.Since < HeldShare * tempo * _chords.Longest[state.Chord] + HeldMore;

    private void Go(in State state, PlayedNote note)
    {
        var cost = state.Cost + Missing(state);
        for (var chord = state.Chord + 1; chord <= Math.Min(_chords.Count - 1, state.Chord + Ahead); chord++)
        {
            var place = _chords.Find(chord, note.Key, 0);
            if (place >= 0)
            {
                var beats = _chords.Beats[chord] - _chords.Beats[state.Chord];
                var seconds = note.Onset - state.Since;
                var (tempoCost, tempo) = Tempo(state.Tempo, beats, seconds);
                Offer(
                    new State(
                        chord,
                        cost + (chord - state.Chord - 1) * PathCosts.Skip + tempoCost + Late(chord, note.Onset),
                        state.Trace,
                        PathStep.Struck,
                        Bit(place),
                        tempo,
                        note.Onset
                    )
                );
            }
        }
    }

    private double Late(int chord, double onset) => _due is null ? 0 : PathCosts.Late(Math.Abs(onset - _due[chord]));

    private double Missing(in State state)
    {
        var notes = Math.Min(64, _chords.End(state.Chord) - _chords.First(state.Chord));
        var open = notes - System.Numerics.BitOperations.PopCount(state.Taken);
        return Math.Min(PathCosts.MostMissing, open * PathCosts.Missing);
    }

    // The tempo, in seconds a quarter, follows the player: long steps tell more of it than short ones.
    private static (double Cost, double Tempo) Tempo(double tempo, double beats, double seconds)
    {
        if (double.IsNaN(tempo))
        {
            return (0, Math.Clamp(seconds / beats, 0.1, 6));
        }
        var ratio = PathCosts.TempoRatio(seconds, beats * tempo);
        var weight = 0.12 + 0.25 * Math.Min(1, beats);
        return (PathCosts.Tempo(ratio), Math.Clamp(tempo * Math.Exp(weight * Math.Clamp(ratio, -0.6, 0.6)), 0.05, 10));
    }

    private void Jump(in State best, double cheapest, PlayedNote note)
    {
        var from = _chords.Beats[best.Chord];
        foreach (var chord in _chords.With(note.Key))
        {
            var back = from - _chords.Beats[chord];
            var cost = best.Cost + (back is >= 0 and <= PathCosts.RestartBeats ? PathCosts.Restart : PathCosts.Jump);
            if (cost < cheapest + PathCosts.Jump - ClearlyBetter)
            {
                var taken = Taken(chord, note.Key);
                Offer(new State(chord, cost, best.Trace, PathStep.Jumped, taken, best.Tempo, note.Onset));
            }
        }
    }

    // Somebody who lingers at a chord must not hide somebody who has just come there.
    private static int SlotOf(in State state) => 2 * state.Chord + (state.Step == PathStep.Beside ? 1 : 0);

    private void Offer(in State state)
    {
        ref var slot = ref _slotOf[SlotOf(state)];
        if (slot < 0)
        {
            slot = _made.Count;
            _made.Add(state);
        }
        else if (state.Cost < _made[slot].Cost)
        {
            _made[slot] = state;
        }
    }

    // Keeps what may still become the best path, and remembers where each came from.
    private void Settle()
    {
        var limit = _made.Min(s => s.Cost) + PathCosts.Jump;
        _states.Clear();
        if (_made.Count > MostStates)
        {
            var costs = _made.Select(s => s.Cost).Order().ElementAt(MostStates);
            limit = Math.Min(limit, costs);
        }
        foreach (var state in _made)
        {
            _slotOf[SlotOf(state)] = -1;
            if (state.Cost <= limit)
            {
                _trace.Add((state.Chord, state.Step, state.From));
                _states.Add(state with { Trace = _trace.Count - 1 });
            }
        }
        _made.Clear();
        if (_trace.Count > _mostTrace)
        {
            Forget();
        }
    }

    // Steps that led nowhere are dropped from time to time, so that what is remembered grows with the take alone.
    private void Forget()
    {
        var lives = new bool[_trace.Count];
        foreach (var state in _states)
        {
            for (var at = state.Trace; at >= 0 && !lives[at]; at = _trace[at].From)
            {
                lives[at] = true;
            }
        }
        var (place, kept) = (new int[lives.Length], 0);
        for (var at = 0; at < lives.Length; at++)
        {
            if (lives[at])
            {
                // What a step came from stands before it and has its new place.
                var from = _trace[at].From;
                _trace[kept] = _trace[at] with { From = from < 0 ? from : place[from] };
                place[at] = kept++;
            }
        }
        _trace.RemoveRange(kept, _trace.Count - kept);
        for (var i = 0; i < _states.Count; i++)
        {
            _states[i] = _states[i] with { Trace = place[_states[i].Trace] };
        }
        _mostTrace = Math.Max(LeastTrace, 2 * kept);
    }

    /// <param name="From">Where its path came from, -1 at the first note; once it lives, <see cref="Trace"/> is itself.</param>
    /// <param name="Taken">Notes of the chord that are struck, a bit each.</param>
    /// <param name="Tempo">Seconds a quarter; not a number before the first step.</param>
    /// <param name="Since">When the first note of the chord was struck.</param>
    private readonly record struct State(
        int Chord,
        double Cost,
        int From,
        PathStep Step,
        ulong Taken,
        double Tempo,
        double Since
    )
    {
        public int Trace { get; init; }
    }
}
