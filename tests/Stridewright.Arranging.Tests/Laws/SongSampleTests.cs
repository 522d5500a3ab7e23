using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>The samples in the manner of today's songs, at all levels and three spans against the independent audit, the
/// straightened tune as the melody asked for.</summary>
public sealed class SongSampleTests : IDisposable
{
    private const int TicksPerQuarter = 480;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-songs-");

    public void Dispose() => _folder.Delete(recursive: true);

    public static TheoryData<string> Songs =>
        ["seven-lamps-to-home", "half-past-the-ferry", "rope-and-lantern", "paper-boats-by-the-steps"];

    [Theory]
    [MemberData(nameof(Songs))]
    public void A_song_is_long_sung_off_the_beat_and_of_coloured_chords(string name)
    {
        var tune = Read(name);
        Assert.True(tune.Bars.Count > 90);
        var chords = tune.Bars.SelectMany(b => b.Chords).Select(c => c.Chord).ToList();
        Assert.Contains(chords, c => c.Bass is not null);
        Assert.Contains(chords, c => c.Degrees.Count > 0 || c.Kind == ChordKind.MajorSixth);
        Assert.Contains(chords, c => c.Kind is ChordKind.SuspendedFourth or ChordKind.MajorSeventh);
        var notes = tune.Bars.SelectMany(b => b.Notes).ToList();
        // Struck on the last sixteenth of a beat and held over it.
        Assert.True(notes.Count(n => n.TiedToNext && n.Length == ScoreTime.Sixteenth) > 40);
        Assert.True(Arranger.Plain(tune).Moved > 40);
        Assert.True(notes.Count(n => n.Lyrics.Count > 0) > 0.7 * notes.Count);
        Assert.Contains("Bridge", tune.Bars.Select(b => b.Section));
    }

    [Theory]
    [MemberData(nameof(Songs))]
    public void A_song_passes_the_independent_audit_at_all_levels_and_spans(string name)
    {
        var tune = Read(name);
        var melody = Path.Combine(_folder.FullName, "plain.mid");
        using (var file = File.Create(melody))
        {
            MidiWriter.Write(Played(Unfolding.Unfold(Arranger.Plain(tune).Tune)), file);
        }
        foreach (var span in (int[])[185, 205, 230])
        {
            var scores = new List<(string Score, string? Melody)>();
            for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
            {
                var brief = new Brief
                {
                    LeftLevel = level,
                    RightLevel = level,
                    Hands = new PlayerHands { SpanMm = span },
                    Lyrics = true,
                };
                var result = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);
                Assert.True(result.Arrangement is not null, $"level {level} span {span}: {result.Refusal}");
                Assert.Contains(result.Arrangement.Notes, n => n.Message.Contains("put back on the beat"));
                Assert.True(result.Arrangement.Tune.Kept >= 0.99 * result.Arrangement.Tune.Notes);
                var path = Path.Combine(_folder.FullName, $"{level}.{span}.musicxml");
                using (var file = File.Create(path))
                {
                    MusicXmlWriter.Write(result.Arrangement.Score, file);
                }
                using var written = File.OpenRead(path);
                Assert.Empty(MusicXmlSchema.Faults(written));
                scores.Add((path, melody));
            }
            Assert.Empty(Audit.Failures(span, scores));
        }
    }

    // Every syllable of the tune stands under the note that carries it, in order, where words are asked for.
    [Theory]
    [MemberData(nameof(Songs))]
    public void Words_stand_under_their_notes_only_when_asked_for(string name)
    {
        var tune = Read(name);
        var cancellation = TestContext.Current.CancellationToken;
        var printed = Arranger.Arrange(tune, new Brief { Lyrics = true }, cancellation).Arrangement!.Score;
        var bare = Arranger.Arrange(tune, new Brief(), cancellation).Arrangement!.Score;
        Assert.DoesNotContain(Events(bare), e => e.Lyrics.Count > 0);
        var sung = tune.Bars.SelectMany(b => b.Notes).Where(n => n.Lyrics.Count > 0).ToList();
        var under = Events(printed).Where(e => e.Lyrics.Count > 0).ToList();
        Assert.Equal(sung.SelectMany(n => n.Lyrics).Select(Syllable), under.SelectMany(e => e.Lyrics).Select(Syllable));
        Assert.Equal(sung.Select(n => n.Pitch.Midi % 12), under.Select(e => e.Notes[^1].Pitch.Midi % 12));
        Assert.Equal(
            Events(bare).Select(e => (e.At, e.Length, e.Notes.Count)),
            Events(printed).Select(e => (e.At, e.Length, e.Notes.Count))
        );
    }

    private static (string, bool) Syllable(Lyric lyric) => (lyric.Text, lyric.HyphenAfter);

    // The right hand's strokes in time order.
    private static IEnumerable<ScoreEvent> Events(Score score) =>
        score.Bars.SelectMany(b =>
            b.Voices.Where(v => v.Hand == Hand.Right).SelectMany(v => v.Events).OrderBy(e => e.At)
        );

    private static Performance Played(Tune tune)
    {
        var strokes = new List<KeyStroke>();
        var now = ScoreTime.Zero;
        foreach (var bar in tune.Bars)
        {
            foreach (var note in bar.Notes)
            {
                var tick = (now + note.At).Round(new ScoreTime(1, 4 * TicksPerQuarter));
                var length = note.Length.Round(new ScoreTime(1, 4 * TicksPerQuarter));
                strokes.Add(new KeyStroke(tick, length, note.Pitch.Midi, 80, Hand.Right));
            }
            now += bar.Length;
        }
        return new Performance
        {
            TicksPerQuarter = TicksPerQuarter,
            Strokes = strokes.ToValueList(),
            Tempi = [new TempoChange(0, 500_000)],
        };
    }

    private static Tune Read(string name) =>
        AbcReader
            .Read(new StringReader(File.ReadAllText(Path.Combine(Corpus.CheckoutRoot, "samples", name + ".abc"))))
            .Value![0];
}
