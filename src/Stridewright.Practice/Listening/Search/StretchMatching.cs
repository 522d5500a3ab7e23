using Stridewright.Music;

namespace Stridewright.Practice.Listening.Search;

/// <summary>
/// Finds the notes of one stretch: when each is expected, by the hand it belongs to where that hand is known around it, and
/// then which played note of its key it is. What was found says better when each was expected, and so it is done again.
/// </summary>
internal sealed class StretchMatching
{
    private const int Rounds = 3;
    private const int Beyond = 3; // chords before and after a stretch that may belong to it
    private const double LeastReach = 0.35; // seconds
    private const double MostReach = 1.2;
    private const double ReachInQuarters = 0.9;
    private const double GraceLength = 0.09; // seconds that a grace note is expected to take
    private const double HandKnown = 2; // quarters within which a hand speaks for itself

    private readonly ExpectedScore _score;
    private readonly Take _take;
    private readonly ChordTable _chords;
    private readonly Stretch _stretch;
    private readonly int _first;
    private readonly int _last;

    private StretchMatching(ExpectedScore score, Take take, ChordTable chords, Stretch stretch)
    {
        (_score, _take, _chords, _stretch) = (score, take, chords, stretch);
        _first = Math.Max(0, stretch.FirstChord - Beyond);
        _last = Math.Min(chords.Count - 1, stretch.LastChord + Beyond);
    }

    /// <summary>Pairs of indexes of expected and of played notes.</summary>
    public static List<(int Expected, int Played)> Find(
        ExpectedScore score,
        Take take,
        ChordTable chords,
        PathPoint[] path,
        Stretch stretch
    ) => new StretchMatching(score, take, chords, stretch).Find(path);

    private List<(int Expected, int Played)> Find(PathPoint[] path)
    {
        var pairs = Enumerable
            .Range(_stretch.FirstPlayed, _stretch.PlayedEnd - _stretch.FirstPlayed)
            .Where(n => path[n].Step != PathStep.Beside)
            .Select(n => (Expected: NoteOf(path[n].Chord, _take.Notes[n].Key), Played: n))
            .ToList();
        pairs = Again(pairs);
        pairs = pairs.Count > 0 ? HandByHand(pairs) : pairs;
        for (var round = 0; round < Rounds && pairs.Count > 0; round++)
        {
            pairs = Again(pairs);
        }
        return pairs;
    }

    /// <summary>The path of each hand by itself, among the notes that are known to be its own and those of nobody: where the
    /// hands are far apart, fast notes come in another order than they are written, but not within a hand.</summary>
    private List<(int Expected, int Played)> HandByHand(List<(int Expected, int Played)> known)
    {
        var map = MapOf(known.Select(p => (p.Expected, _take.Notes[p.Played].Onset)));
        var handOf = known.ToDictionary(p => p.Played, p => _chords.Hands[p.Expected]);
        var pairs = new List<(int Expected, int Played)>(known.Count);
        foreach (var hand in (Hand[])[Hand.Right, Hand.Left])
        {
            var asked = Enumerable
                .Range(_chords.First(_first), _chords.End(_last) - _chords.First(_first))
                .Where(i => _chords.Hands[i] == hand)
                .ToList();
            var played = Enumerable
                .Range(_stretch.FirstPlayed, _stretch.PlayedEnd - _stretch.FirstPlayed)
                .Where(n => !handOf.TryGetValue(n, out var other) || other == hand)
                .ToList();
            var chords = new ChordTable(asked.ConvertAll(i => _score.Notes[i]));
            var due = new double[chords.Count];
            for (var i = 0; i < due.Length; i++)
            {
                due[i] = map.At(_chords.ChordOf[asked[chords.First(i)]]);
            }
            var path = PathSearch.Find(chords, played.ConvertAll(n => _take.Notes[n]), due);
            for (var n = 0; n < path.Length; n++)
            {
                if (path[n].Step == PathStep.Struck)
                {
                    var note = chords.First(path[n].Chord) + chords.Find(path[n].Chord, _take.Notes[played[n]].Key, 0);
                    pairs.Add((asked[note], played[n]));
                }
            }
        }
        return pairs;
    }

    private int NoteOf(int chord, int key) => _chords.First(chord) + Math.Max(0, _chords.Find(chord, key, 0));

    private List<(int Expected, int Played)> Again(List<(int Expected, int Played)> before)
    {
        var known = before
            .Where(p => _score.Notes[p.Expected].Grace == 0)
            .Select(p => (Note: p.Expected, _take.Notes[p.Played].Onset))
            .ToList();
        var both = MapOf(known);
        var right = MapOf(known.Where(k => _chords.Hands[k.Note] == Hand.Right));
        var left = MapOf(known.Where(k => _chords.Hands[k.Note] == Hand.Left));
        var onsets = new Dictionary<int, double>();
        foreach (var (note, onset) in known)
        {
            onsets.TryAdd(note, onset);
        }
        var asked = new List<Appointment>?[128];
        for (var i = _chords.First(_first); i < _chords.End(_last); i++)
        {
            // Where a note was found before, the others around it say when it should be.
            var own = onsets.TryGetValue(i, out var onset) ? onset : double.NaN;
            var hand = _chords.Hands[i] == Hand.Right ? right : left;
            var at = (hand.Knows(i, own, HandKnown) ? hand : both).For(i, own);
            var grace = _score.Notes[i].Grace;
            (asked[_chords.Keys[i] & 127] ??= []).Add(grace == 0 ? at : at with { At = at.At - GraceLength * grace });
        }
        Array.ForEach(asked, list => list?.Sort((a, b) => a.At.CompareTo(b.At)));
        var played = Enumerable
            .Range(_stretch.FirstPlayed, _stretch.PlayedEnd - _stretch.FirstPlayed)
            .GroupBy(n => _take.Notes[n].Key);
        var reach = Math.Clamp(both.Quarter * ReachInQuarters, LeastReach, MostReach);
        return [.. played.SelectMany(g => PairsOf(asked[g.Key & 127], [.. g], reach))];
    }

    private IEnumerable<(int Expected, int Played)> PairsOf(List<Appointment>? asked, List<int> played, double reach) =>
        asked is null
            ? []
            : KeyMatching
                .Pair(asked, played.ConvertAll(n => _take.Notes[n].Onset), reach)
                .Select(p => (asked[p.Expected].Note, played[p.Played]));

    private TimeMap MapOf(IEnumerable<(int Note, double Onset)> known) =>
        new(_chords, _first, _last, known.Select(k => (_chords.ChordOf[k.Note], k.Onset)));
}
