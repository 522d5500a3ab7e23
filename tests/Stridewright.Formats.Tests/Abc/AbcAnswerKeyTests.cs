using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Abc;

/// <summary>
/// The sixty tunes that come with MIDI renderings by another program, as answer keys. Three habits of those keys are
/// allowed for in all tunes: they strike tied notes again, they play all notes of a chord where we keep the top one,
/// and they leave the slash bass out of the chord. What else differs is listed with its reason.
/// </summary>
public sealed class AbcAnswerKeyTests
{
    // The keys begin the tune anew at a repeat end without a start; ABC 2.1, 4.8 goes back to the last double bar or
    // repeat end. Up to that place they must agree: so many melody notes, so many chords.
    private static readonly Dictionary<string, (int Notes, int Chords)> RepeatsFromTheBeginning = new()
    {
        ["gingerhogs-no2"] = (94, 48),
        ["falling-about"] = (188, 11),
        ["wassail-1"] = (55, 20),
    };

    // Without an order of parts the key stops after the first part; the text does not.
    private static readonly Dictionary<string, (int Notes, int Chords)> FirstPartOnly = new()
    {
        ["mrs-willis"] = (114, 22),
    };

    // From the second time through, the chord key runs one quarter ahead of its own melody key.
    private static readonly Dictionary<string, int> ChordsRunAhead = new()
    {
        ["barrys-favourite"] = 41,
        ["road-to-dundee"] = 31,
    };

    // The key strikes the third of three triplet sixteenths 1/24 quarter late; otherwise it is exact to the tick.
    private static readonly HashSet<string> LateTriplets =
    [
        "bonny-green-garters",
        "kid-on-the-mountain",
        "the-lark-in-the-clear-air",
    ];

    /// <summary>
    /// The keys apply an accidental to its own note only, so the tune is read under the standard's instruction for that
    /// (ABC 2.1, 11.3, propagate-accidentals not).
    /// </summary>
    [Fact]
    public void Melody_is_that_of_the_answer_key() => Assert.All(CorpusNames(), AssertMelody);

    private static void AssertMelody(string name)
    {
        var (ours, key, most) = Melodies(name, "%%propagate-accidentals not\n");
        Assert.Equal(Math.Min(key.Count, most), Math.Min(ours.Count, most));
        for (var i = 0; i < Math.Min(ours.Count, most); i++)
        {
            AssertOnset(name, i, key[i].Onset, ours[i].Onset);
            Assert.Equal((i, key[i].Key), (i, ours[i].Pitch.Midi));
        }
    }

    /// <summary>
    /// As tunes are read by default, an accidental holds to the end of its bar (ABC 2.1, 11.3). Against the key then only
    /// a few notes differ, by a semitone, each on a letter that was altered earlier in its bar.
    /// </summary>
    [Fact]
    public void By_default_only_notes_under_an_earlier_accidental_differ() =>
        Assert.All(CorpusNames(), AssertDefaultMelody);

    private static void AssertDefaultMelody(string name)
    {
        var (ours, key, most) = Melodies(name, "");
        for (var i = 0; i < Math.Min(ours.Count, most); i++)
        {
            AssertOnset(name, i, key[i].Onset, ours[i].Onset);
            if (key[i].Key != ours[i].Pitch.Midi)
            {
                Assert.Equal(1, Math.Abs(key[i].Key - ours[i].Pitch.Midi));
                Assert.Contains(
                    ours.Take(i),
                    earlier => earlier.Bar == ours[i].Bar && earlier.Pitch.Tone == ours[i].Pitch.Tone
                );
            }
        }
    }

    [Fact]
    public void Chords_are_those_of_the_answer_key() => Assert.All(CorpusNames(), AssertChords);

    private static void AssertChords(string name)
    {
        var key = MidiKey
            .Read(PathOf(name, ".chords.mid"))
            .Notes.GroupBy(n => n.Onset)
            .Select(g => (Onset: g.Key, Set: g.Aggregate(0, (set, n) => set | (1 << (n.Key % 12)))))
            .ToList();
        var ours = new List<(double Onset, ChordSymbol Chord)>();
        foreach (var (at, bar) in Timed(Read(name, "")))
        {
            ours.AddRange(bar.Chords.Select(c => ((at + c.At).ToQuarters(), c.Chord)));
        }
        var most =
            RepeatsFromTheBeginning.TryGetValue(name, out var begins) ? begins.Chords
            : FirstPartOnly.TryGetValue(name, out var first) ? first.Chords
            : ChordsRunAhead.GetValueOrDefault(name, int.MaxValue);
        Assert.Equal(Math.Min(key.Count, most), Math.Min(ours.Count, most));
        for (var i = 0; i < Math.Min(ours.Count, most); i++)
        {
            AssertOnset(name, i, key[i].Onset, ours[i].Onset);
            Assert.Equal((i, key[i].Set), (i, (ours[i].Chord with { Bass = null }).PitchClassSet));
        }
    }

    private static void AssertOnset(string name, int index, double expected, double actual)
    {
        var tick = (LateTriplets.Contains(name) ? 1.0 / 24 : 0) + 1.0 / 960;
        Assert.True(Math.Abs(expected - actual) <= tick, $"{name} {index}: key {expected}, ours {actual}");
    }

    private static (
        List<(double Onset, Pitch Pitch, int Bar)> Ours,
        List<(double Onset, double Length, int Key)> Key,
        int Most
    ) Melodies(string name, string before)
    {
        var key = MidiKey
            .Read(PathOf(name, ".melody.mid"))
            .Notes.GroupBy(n => n.Onset)
            .Select(g => g.MaxBy(n => n.Key))
            .ToList();
        var ours = new List<(double, Pitch, int)>();
        var number = 0;
        foreach (var (at, bar) in Timed(Read(name, before)))
        {
            ours.AddRange(bar.Notes.Select(n => ((at + n.At).ToQuarters(), n.Pitch, number)));
            number++;
        }
        var most =
            RepeatsFromTheBeginning.TryGetValue(name, out var begins) ? begins.Notes
            : FirstPartOnly.TryGetValue(name, out var first) ? first.Notes
            : int.MaxValue;
        return (ours, key, most);
    }

    // Bars as played, with their beginnings. A pick-up is padded in front, so that the first full bar begins on a bar
    // line, as in the keys.
    private static IEnumerable<(ScoreTime At, TuneBar Bar)> Timed(Tune tune)
    {
        var bars = Unfolding.Unfold(tune).Bars;
        var at = ScoreTime.Max(ScoreTime.Zero, bars[0].Metre.BarLength - bars[0].Length);
        foreach (var bar in bars)
        {
            yield return (at, bar);
            at += bar.Length;
        }
    }

    private static Tune Read(string name, string before) =>
        AbcReader.Read(new StringReader(before + File.ReadAllText(PathOf(name, ".abc")))).Value![0];

    private static List<string> CorpusNames() =>
        Corpus
            .Files("corpus/abc", ".melody.mid")
            .Select(f => Path.GetFileName(f).Replace(".melody.mid", "", StringComparison.Ordinal))
            .ToList();

    private static string PathOf(string name, string ending) => Corpus.PathOf($"corpus/abc/{name}{ending}");
}
