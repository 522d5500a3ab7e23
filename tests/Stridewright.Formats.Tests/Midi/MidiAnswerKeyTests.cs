using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.Tests.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Midi;

/// <summary>
/// The sixty tunes that come both as ABC and, by another program, as MIDI of their melody and of their chords: read as
/// tunes they are the same, note for note and chord for chord. The keys strike tied notes again, as separate notes, and
/// leave the slash bass out.
/// </summary>
public sealed class MidiAnswerKeyTests
{
    // So many notes and changes of chord agree until the key departs from its text: the first three begin anew at a
    // repeat end without a start (ABC 2.1, 4.8, goes back to the last double bar), the fourth stops after its first part.
    private static readonly Dictionary<string, (int Notes, int Chords)> Departs = new()
    {
        ["gingerhogs-no2"] = (94, 32),
        ["falling-about"] = (187, 9),
        ["wassail-1"] = (55, 13),
        ["mrs-willis"] = (114, 21),
    };

    // From the second time through the chord key does not keep time with its own melody key.
    private static readonly Dictionary<string, int> ChordsStray = new()
    {
        ["barrys-favourite"] = 40,
        ["road-to-dundee"] = 26,
    };

    /// <summary>Onset, length and pitch of every note. The keys apply an accidental to its own note only, so the ABC is
    /// read under the standard's instruction for that (ABC 2.1, 11.3).</summary>
    [Fact]
    public void A_melody_key_read_as_a_tune_has_the_notes_of_its_abc()
    {
        var compared = 0;
        foreach (var name in Names())
        {
            var tune = Read(File.ReadAllBytes(PathOf(name, ".melody.mid")), out _);
            var ours = Notes(tune);
            var abc = Notes(Abc(name));
            var most = Departs.TryGetValue(name, out var departs) ? departs.Notes : Math.Max(abc.Count, ours.Count);
            Assert.Equal(abc.Take(most), ours.Take(most));
            compared += Math.Min(most, ours.Count);
        }
        Assert.True(compared >= 11_000, $"{compared} notes compared");
    }

    /// <summary>Melody and chords in one file of two tracks without names: the melody is found, the chords are named.</summary>
    [Fact]
    public void Both_keys_in_one_file_give_the_notes_and_chords_of_the_abc()
    {
        var (same, all) = (0, 0);
        foreach (var name in Names())
        {
            var melody = File.ReadAllBytes(PathOf(name, ".melody.mid"));
            var chords = File.ReadAllBytes(PathOf(name, ".chords.mid"));
            foreach (var melodyFirst in (bool[])[true, false])
            {
                var (first, second) = melodyFirst ? (melody, chords) : (chords, melody);
                byte[] both = [.. first[..8], 0, 1, 0, 2, .. first[12..], .. second[14..]];
                var tune = Read(both, out var silent);
                var abc = Abc(name);
                var most = Departs.TryGetValue(name, out var departs)
                    ? departs
                    : (Notes: int.MaxValue, Chords: int.MaxValue);
                Assert.Equal(Notes(abc).Take(most.Notes), Notes(tune).Take(most.Notes));

                var changes = Math.Min(most.Chords, ChordsStray.GetValueOrDefault(name, int.MaxValue));
                var (ours, theirs) = (
                    Changes(tune, silent).Take(changes).ToList(),
                    Changes(abc).Take(changes).ToList()
                );
                Assert.Equal(theirs.Count, ours.Count);
                same += ours.Zip(theirs).Count(p => p.First == p.Second);
                all += ours.Count;
            }
        }
        Assert.Equal(all, same);
        Assert.True(all > 5000, $"{all} changes of chord compared");
    }

    /// <summary>A chord key alone is a tune with its own chords.</summary>
    [Fact]
    public void A_chord_key_read_as_a_tune_has_the_chords_of_its_abc()
    {
        foreach (var name in Names().Except(ChordsStray.Keys))
        {
            var ours = Changes(Read(File.ReadAllBytes(PathOf(name, ".chords.mid")), out var silent), silent);
            var abc = Changes(Abc(name));
            var most = Departs.TryGetValue(name, out var departs) ? departs.Chords : int.MaxValue;
            Assert.Equal(abc.Take(most), ours.Take(most));
        }
    }

    private static Tune Read(byte[] bytes, out int silentBars)
    {
        var reading = MidiTuneReader.Read(new MemoryStream(bytes));
        ReaderLaws.Check(reading.Value!, "key");
        silentBars = reading.Diagnostics.Any(d =>
            d.Message.Contains("1 bar was left out before", StringComparison.Ordinal)
        )
            ? 1
            : 0;
        Assert.DoesNotContain(reading.Diagnostics, d => d.Severity > Severity.Note);
        return reading.Value!;
    }

    private static List<(ScoreTime At, ScoreTime Length, int Key)> Notes(Tune tune) =>
        FromFirst(Timed(tune).SelectMany(b => b.Bar.Notes.Select(n => (b.At + n.At, n.Length, n.Pitch.Midi))).ToList());

    // Where the first note does not stand in the first bar, the silence before it is not compared.
    private static List<(ScoreTime At, ScoreTime Length, int Key)> FromFirst(
        List<(ScoreTime At, ScoreTime Length, int Key)> notes
    ) => notes.ConvertAll(n => n with { At = n.At - notes[0].At });

    // Chords where they change; the slash bass is not in the keys.
    private static List<(ScoreTime At, ChordSymbol Chord)> Changes(Tune tune, int silentBars = 0)
    {
        var all = Timed(tune)
            .SelectMany(b => b.Bar.Chords.Select(c => (At: b.At + c.At, Chord: c.Chord with { Bass = null })))
            .Select(c => c with { At = c.At + tune.Bars[0].Metre.BarLength * silentBars })
            .ToList();
        return all.Where((c, i) => i == 0 || all[i - 1].Chord != c.Chord).ToList();
    }

    // Bars as played; a pick-up is padded in front, as in the keys.
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

    private static Tune Abc(string name) =>
        AbcReader
            .Read(new StringReader("%%propagate-accidentals not\n" + File.ReadAllText(PathOf(name, ".abc"))))
            .Value![0];

    private static List<string> Names() =>
        Corpus
            .Files("corpus/abc", ".melody.mid")
            .Select(f => Path.GetFileName(f).Replace(".melody.mid", "", StringComparison.Ordinal))
            .ToList();

    private static string PathOf(string name, string ending) => Corpus.PathOf($"corpus/abc/{name}{ending}");
}
