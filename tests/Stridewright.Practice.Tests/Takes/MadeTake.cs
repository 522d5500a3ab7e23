using Stridewright.Music;
using Stridewright.Practice.Listening;

namespace Stridewright.Practice.Tests.Takes;

/// <summary>A take with what is true of it.</summary>
/// <param name="Truth">For each note of the take the expected note that it is; null: an extra or wrong one.</param>
internal sealed record MadeTake(ExpectedScore Score, Take Take, IReadOnlyList<int?> Truth)
{
    /// <summary>Plays a score with the faults asked for. The same seed gives the same take.</summary>
    public static MadeTake Of(ExpectedScore score, TakeWishes wishes, int seed) =>
        new TakeMaker(score, wishes, seed).Make();
}

internal sealed class TakeMaker(ExpectedScore score, TakeWishes wishes, int seed)
{
    private const double RestartPause = 0.5;
    private readonly Random _random = new(seed);
    private readonly List<(PlayedNote Note, int? Truth)> _struck = [];
    private double _clock = 1; // seconds
    private double _apartPhase;
    private double[] _phases = [];

    public MadeTake Make()
    {
        _phases = [.. Enumerable.Range(0, 4).Select(_ => _random.NextDouble() * Math.Tau)];
        _apartPhase = _random.NextDouble() * Math.Tau;
        foreach (var (from, to) in Legs())
        {
            Play(from, to);
            _clock += RestartPause * _random.NextDouble();
        }
        AddExtras();
        var ordered = _struck.OrderBy(s => s.Note.Onset).ThenBy(s => s.Note.Key).ToList();
        return new MadeTake(
            score,
            new Take(ordered.Select(s => s.Note).ToValueList()),
            [.. ordered.Select(s => s.Truth)]
        );
    }

    // What is played of the score, one stretch after the other, in quarters.
    private List<(double From, double To)> Legs()
    {
        var end = score.Notes.Max(n => n.Beats) + 1;
        var length = end * wishes.Part;
        var start = _random.NextDouble() * (end - length);
        var stops = new List<(double At, double To)>();
        double Somewhere() => start + length * (0.1 + 0.8 * _random.NextDouble());
        for (var i = 0; i < wishes.Restarts; i++)
        {
            var at = Somewhere();
            stops.Add((at, Math.Max(start, at - 1 - 7 * _random.NextDouble())));
        }
        for (var i = 0; i < wishes.Skips; i++)
        {
            var at = Somewhere();
            stops.Add((at, Math.Min(end - 4, at + 4 + 36 * _random.NextDouble())));
        }
        for (var i = 0; i < wishes.JumpsBack; i++)
        {
            var at = Somewhere();
            stops.Add((at, start + (at - start) * _random.NextDouble()));
        }
        var legs = new List<(double, double)>();
        var here = start;
        foreach (var (at, to) in stops.OrderBy(s => s.At))
        {
            if (at > here + 4)
            {
                legs.Add((here, at));
                here = to;
            }
        }
        legs.Add((here, start + length));
        return legs;
    }

    private void Play(double from, double to)
    {
        var stops = Enumerable
            .Range(0, wishes.Hesitations)
            .Select(_ => from + (to - from) * _random.NextDouble())
            .Order()
            .ToList();
        var chords = score
            .Notes.Select((n, i) => (Note: n, Index: i))
            .Where(n => n.Note.Beats >= from && n.Note.Beats < to)
            .Where(n => wishes.Alone is not { } hand || n.Note.Hand == hand)
            .GroupBy(n => n.Note.Beats)
            .OrderBy(g => g.Key);
        var (clock, beats) = (_clock, from);
        foreach (var chord in chords)
        {
            clock += (chord.Key - beats) * Tempo((beats + chord.Key) / 2);
            clock += stops.Count(s => s > beats && s <= chord.Key) * (0.6 + _random.NextDouble()) * wishes.Quarter * 2;
            beats = chord.Key;
            var spread = wishes.Spread * _random.NextDouble();
            foreach (var hand in chord.GroupBy(n => n.Note.Hand))
            {
                var apart = hand.Key == Hand.Left ? wishes.HandsApart * Math.Sin(_apartPhase + chord.Key / 5) : 0;
                var rank = 0;
                foreach (var (note, index) in hand.OrderBy(n => n.Note.Key))
                {
                    var before = note.Grace * 0.08;
                    var rolled = note.Grace > 0 ? 0 : spread * rank++;
                    Strike(index, Math.Max(0, clock + apart + rolled - before + wishes.Jitter * Normal()));
                }
            }
        }
        _clock = clock + wishes.Quarter;
    }

    private double Tempo(double beats) =>
        wishes.Quarter
        * Math.Exp(
            wishes.Curve
                * (
                    0.5 * Math.Sin(_phases[0] + beats / 13)
                    + 0.3 * Math.Sin(_phases[1] + beats / 4.1)
                    + 0.2 * Math.Sin(_phases[2] + beats / 1.7)
                )
        );

    private void Strike(int index, double onset)
    {
        var note = score.Notes[index];
        if (_random.NextDouble() < wishes.Missing)
        {
            return;
        }
        var length = Math.Max(0.05, note.Length * wishes.Quarter * 0.9);
        if (_random.NextDouble() < wishes.Wrong)
        {
            var octave = _random.NextDouble() < wishes.WrongOctave;
            int[] steps = octave ? [-12, 12] : [-2, -1, 1, 2];
            var key = note.Key + steps[_random.Next(steps.Length)];
            // A key of the same chord is struck anyway: then the note is only missing.
            if (!score.Notes.Any(n => n.Key == key && n.Beats == note.Beats))
            {
                Add(onset, length, key, null);
            }
            return;
        }
        Add(onset, length, note.Key, index);
        if (note.Length >= 1 && _random.NextDouble() < wishes.Trills)
        {
            var step = 0.09 + 0.03 * _random.NextDouble();
            for (var i = 1; i * step < length - 0.1; i++)
            {
                Add(onset + i * step, step, note.Key + (i % 2 == 1 ? 2 : 0), null);
            }
        }
    }

    private void AddExtras()
    {
        var count = (int)(_struck.Count * wishes.Extra);
        for (var i = 0; i < count; i++)
        {
            // Mostly a key brushed beside one that is struck.
            var (beside, _) = _struck[_random.Next(_struck.Count)];
            int[] steps = [-2, -1, 1, 2];
            var onset = Math.Max(0, beside.Onset + 0.05 * Normal());
            Add(onset, 0.1, beside.Key + steps[_random.Next(4)], null);
        }
    }

    private void Add(double onset, double length, int key, int? truth) =>
        _struck.Add((new PlayedNote(onset, onset + length, Math.Clamp(key, 0, 127), 64), truth));

    // Box and Muller.
    private double Normal() =>
        Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(Math.Tau * _random.NextDouble());
}
