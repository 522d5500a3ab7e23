using CsCheck;
using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Planning;

/// <summary>
/// Straightening against what is wanted of a plain tune, found here by another way: places are looked up in lists of a
/// bar's beats and half-beats.
/// </summary>
public sealed class StraighteningTests
{
    // What is sung off the beat and what stands in a plain song book (common practice).
    [Theory]
    // An eighth anticipation over the beat, over mid-bar, over the bar line.
    [InlineData("M:4/4\nL:1/8", "c2d2e2fg-|g4c4|", "c2d2e2f2|g4c4|")]
    [InlineData("M:4/4\nL:1/8", "c2de-e2f2|c8|", "c2d2e2f2|c8|")]
    [InlineData("M:4/4\nL:1/8", "c3d-d4|c8|", "c4d4|c8|")]
    // Quarters between eighths.
    [InlineData("M:4/4\nL:1/8", "cd2e2f2g|c8|", "c2d2e2fg|c8|")]
    // Sixteenths: the short-long-short figure untied and tied, and the tresillo.
    [InlineData("M:2/4\nL:1/16", "cd2e f2g2|c8|", "c2de f2g2|c8|")]
    [InlineData("M:2/4\nL:1/16", "c2de2fg2|c8|", "c2d2efg2|c8|")]
    [InlineData("M:2/4\nL:1/16", "c3d3e2|c8|", "c4d2e2|c8|")]
    // In six-eight the last eighth of a beat; the second eighth is no anticipation and is struck again.
    [InlineData("M:6/8\nL:1/8", "cde-e2f|c6|", "cd2e2f|c6|")]
    [InlineData("M:6/8\nL:1/8", "cd2-d2f|c6|", "cd2d2f|c6|")]
    // Triplets: the last third held over the beat.
    [InlineData("M:4/4\nL:1/8", "(3cde-e2f4|c8|", "(3:2:2cd2 e2f4|c8|")]
    // Words, graces and the symbol go along; a rest stays one.
    [InlineData(
        "M:4/4\nL:1/8",
        "\"C\"c4z3{a}\"G\"g-|g4c4|\nw:one two * three",
        "\"C\"c4z4|\"G\"{a}g4c4|\nw:one two three"
    )]
    // A repetition on the same syllable is the same sound.
    [InlineData("M:4/4\nL:1/8", "c4z2fg|g4c4|\nw:one two three_ four", "c4z2f2|g4c4|\nw:one two three four")]
    // A pick-up is counted from the bar's end.
    [InlineData("M:4/4\nL:1/8", "g|c4c4|c7g-|g4c4|", "g|c4c4|c8|g4c4|")]
    public void An_off_beat_note_held_through_the_beat_returns_to_it(string head, string sung, string plain)
    {
        var straight = Straightening.Apply(Tunes.Abc(head + "\nK:C", sung));
        Assert.Equal(Lines(Tunes.Abc(head + "\nK:C", plain)), Lines(straight.Tune));
        Assert.True(straight.Moved > 0);
    }

    [Theory]
    [InlineData("M:4/4\nL:1/8", "c3d e3f|c>de<f c4-|c4c2zg|")]
    [InlineData("M:4/4\nL:1/8", "c2d4e2|(3cde (3fga g4|c8|")]
    [InlineData("M:6/8\nL:1/8", "cd2e2f|c>de c3-|c3f2g|")]
    [InlineData("M:3/4\nL:1/4", "cd2|c3-|c2c|")]
    [InlineData("M:6/4\nL:1/4", "cde2fg|c2d2e2|")]
    [InlineData("M:2/4\nL:1/16", "c3d e2fg|cd3e4|")]
    // Tied on the beat, and off the beat into the next half-beat.
    [InlineData("M:2/4\nL:1/16", "c4-c2de|f2g2a4|")]
    public void A_tune_without_syncopation_is_not_changed(string head, string body)
    {
        var tune = Tunes.Abc(head + "\nK:C", body);
        Assert.Equal(new Straightened(tune, 0), Straightening.Apply(tune));
    }

    [Fact]
    public void A_tie_over_a_repeat_is_struck_again_behind_it()
    {
        var tune = Tunes.Abc("M:4/4\nL:1/8\nK:C", "|:c4c4|c7g-:|g4c4|");
        var straight = Straightening.Apply(tune).Tune;
        Assert.DoesNotContain(straight.Bars.SelectMany(b => b.Notes), n => n.TiedToNext);
        Assert.Equal(tune.Bars.Select(b => b.Notes.Count), straight.Bars.Select(b => b.Notes.Count));
    }

    [Fact]
    public void Symbols_that_stand_there_already_are_kept()
    {
        var same = Straightening.Apply(Tunes.Abc("M:4/4\nL:1/8\nK:C", "\"C\"c7\"G\"g-|\"G\"g8|")).Tune;
        Assert.Equal([1, 1], same.Bars.Select(b => b.Chords.Count));
        var other = Straightening.Apply(Tunes.Abc("M:4/4\nL:1/8\nK:C", "\"C\"c7\"F\"g-|\"G\"g8|")).Tune;
        Assert.Equal([2, 1], other.Bars.Select(b => b.Chords.Count));
    }

    [Fact]
    public void No_tune_of_the_corpus_holds_an_off_beat_note_through_a_beat_when_straightened()
    {
        var changed = 0;
        foreach (var tune in CorpusTunes().Concat(Tunes.Samples))
        {
            AssertLaws(tune);
            changed += Straightening.Apply(tune).Moved > 0 ? 1 : 0;
        }
        Assert.True(changed >= 20);
    }

    [Fact]
    public void No_random_tune_holds_an_off_beat_note_through_a_beat_when_straightened() =>
        Gen.Select(Tunes.Any, Gen.Int[0, 0x7FFF]).Sample((tune, ties) => AssertLaws(Tied(tune, ties)), iter: 2000);

    // Printed plain and read back: the same notes at the same places, so the law holds for the sheet too.
    [Fact]
    public void A_straightened_tune_printed_plain_is_valid_and_holds_no_off_beat_note_through_a_beat() =>
        Gen.Select(Tunes.Any, Gen.Int[0, 0x7FFF])
            .Sample(
                (tune, ties) =>
                {
                    var plain = Arranger.Plain(Tied(tune, ties)).Tune;
                    if (!plain.Bars.Any(b => b.Notes.Count > 0))
                    {
                        return;
                    }
                    using var sheet = new MemoryStream();
                    MusicXmlWriter.Write(plain, sheet);
                    sheet.Position = 0;
                    Assert.Empty(MusicXmlSchema.Faults(sheet));
                    sheet.Position = 0;
                    var read = MusicXmlReader.ReadTune(sheet).Value!;
                    Assert.Equal(plain.Bars.Select(b => b.Length), read.Bars.Select(b => b.Length));
                    Assert.Equal(Sounds(plain, (_, _) => false), Sounds(read, (_, _) => false));
                    Assert.Empty(Syncopations(read));
                },
                iter: 200
            );

    private static void AssertLaws(Tune tune)
    {
        var straight = Straightening.Apply(tune).Tune;
        Assert.Empty(Syncopations(straight));
        // As played too; what counts as a snap is told by the written neighbours.
        Assert.DoesNotContain(
            Syncopations(Unfolding.Unfold(straight)),
            s => s.Contains(" beat ", StringComparison.Ordinal)
        );
        // Once is enough, and what needs nothing gets nothing.
        Assert.Equal(new Straightened(straight, 0), Straightening.Apply(straight));
        if (!Syncopations(tune).Any())
        {
            Assert.Equal(tune with { }, straight);
        }
        // The form stays; the notes stay, in their order; none goes further than half a beat.
        Assert.Equal(
            tune.Bars.Select(b => b with { Notes = [], Chords = [] }),
            straight.Bars.Select(b => b with { Notes = [], Chords = [] })
        );
        Assert.Equal(Heard(tune).Select(h => h.Key), Heard(straight).Select(h => h.Key));
        Assert.Equal(Words(tune), Words(straight));
        Assert.Equal(
            tune.Bars.Sum(b => b.Notes.Sum(n => n.Graces.Count)),
            straight.Bars.Sum(b => b.Notes.Sum(n => n.Graces.Count))
        );
        Assert.All(
            straight.Bars,
            bar =>
            {
                var at = ScoreTime.Zero;
                foreach (var note in bar.Notes)
                {
                    Assert.True(note.At >= at && note.Length > ScoreTime.Zero);
                    at = note.At + note.Length;
                }
                Assert.True(at <= bar.Length);
            }
        );
    }

    // Keys in order, a key that comes again at once counted once: ties are resolved and made by straightening.
    private static List<(int Key, ScoreTime At)> Heard(Tune tune)
    {
        var heard = new List<(int Key, ScoreTime At)>();
        foreach (var (key, at) in tune.Bars.SelectMany(b => b.Notes.Select(n => (n.Pitch.Midi, n.At))))
        {
            if (heard.Count == 0 || heard[^1].Key != key)
            {
                heard.Add((key, at));
            }
        }
        return heard;
    }

    private static IEnumerable<string> Words(Tune tune) =>
        tune.Bars.SelectMany(b => b.Notes).SelectMany(n => n.Lyrics).Select(l => $"{l.Verse} {l.Text} {l.HyphenAfter}");

    /// <summary>
    /// The law's two clauses. A sound is a note and those tied to it. Beats are the metre's, counted from where a short
    /// bar begins in it; a note may be held through them and through every bar line.
    /// </summary>
    private static IEnumerable<string> Syncopations(Tune tune)
    {
        var beats = new SortedSet<ScoreTime>();
        var halves = new SortedSet<ScoreTime>();
        var fine = new HashSet<ScoreTime>();
        var lines = new List<ScoreTime>();
        var now = ScoreTime.Zero;
        for (var i = 0; i < tune.Bars.Count; i++)
        {
            var bar = tune.Bars[i];
            var from = now - BarSeams.Lead(tune, i);
            var threefold = bar.Metre is { Count: 6 or 9 or 12, Unit: 8 };
            var beat = new ScoreTime(threefold ? 3 : 1, bar.Metre.Unit);
            foreach (var (parts, places) in new[] { (1, beats), (2, halves) })
            {
                for (var k = 0; from + beat * k / parts < now + bar.Length; k++)
                {
                    if (from + beat * k / parts is var place && place >= now)
                    {
                        places.Add(place);
                    }
                }
            }
            var end = now + bar.Length;
            lines.Add(end);
            for (var parts = 4; parts <= 64 && !threefold; parts *= 2)
            {
                for (var k = 1; from + beat * k / parts < end; k += 2)
                {
                    fine.Add(from + beat * k / parts);
                }
            }
            now = end;
        }
        // Over a repeat's lines the written neighbours need not be the played ones.
        var apart = Sounds(tune, BarSeams.TurnBefore).ToHashSet();
        var sounds = Sounds(tune, (_, _) => false);
        for (var i = 0; i < sounds.Count; i++)
        {
            var (start, end) = sounds[i];
            ScoreTime? Through(SortedSet<ScoreTime> places) =>
                places.Contains(start) ? null
                : places.GetViewBetween(start, end).Concat(lines.Where(l => l > start)).Min() is var place
                && place < end
                    ? place
                : null;
            if (Through(beats) is { } beat)
            {
                yield return $"at {start} held through the beat {beat} until {end}";
            }
            if (fine.Contains(start) && Through(halves) is { } half)
            {
                var before = halves.GetViewBetween(ScoreTime.Zero, start).Max;
                if (!apart.Contains((before, start)) || half + (half - before) != end)
                {
                    yield return $"at {start} held through the half-beat {half} until {end}";
                }
            }
        }
    }

    private static List<(ScoreTime Start, ScoreTime End)> Sounds(Tune tune, Func<Tune, int, bool> breaks)
    {
        var sounds = new List<(ScoreTime Start, ScoreTime End)>();
        var tied = false;
        Pitch pitch = default;
        var now = ScoreTime.Zero;
        foreach (var (i, bar) in tune.Bars.Index())
        {
            tied &= !breaks(tune, i);
            foreach (var note in bar.Notes)
            {
                var start = now + note.At;
                if (tied && sounds[^1].End == start && pitch == note.Pitch)
                {
                    sounds[^1] = (sounds[^1].Start, start + note.Length);
                }
                else
                {
                    sounds.Add((start, start + note.Length));
                }
                (tied, pitch) = (note.TiedToNext, note.Pitch);
            }
            now += bar.Length;
        }
        return sounds;
    }

    // Makes neighbours alike and ties them, here and there.
    private static Tune Tied(Tune tune, int ties)
    {
        var notes = tune.Bars.Select(b => b.Notes.ToArray()).ToArray();
        (int Bar, int Note)? before = null;
        var count = 0;
        for (var bar = 0; bar < notes.Length; bar++)
        {
            for (var n = 0; n < notes[bar].Length; n++)
            {
                if (
                    before is var (b, m)
                    && (ties >> (count++ % 15) & 1) == 1
                    && Touch(tune, notes[b][m], b, notes[bar][n], bar)
                )
                {
                    notes[b][m] = notes[b][m] with { TiedToNext = true };
                    notes[bar][n] = notes[bar][n] with { Pitch = notes[b][m].Pitch };
                }
                before = (bar, n);
            }
        }
        return tune with { Bars = tune.Bars.Select((b, i) => b with { Notes = notes[i].ToValueList() }).ToValueList() };
    }

    private static bool Touch(Tune tune, TuneNote from, int bar, TuneNote to, int toBar) =>
        bar == toBar
            ? from.At + from.Length == to.At
            : toBar == bar + 1 && from.At + from.Length == tune.Bars[bar].Length && to.At.IsZero;

    private static IEnumerable<Tune> CorpusTunes()
    {
        foreach (var path in Corpus.Files("corpus/abc", ".abc"))
        {
            foreach (var tune in AbcReader.Read(new StringReader(File.ReadAllText(path))).Value ?? [])
            {
                yield return tune;
            }
        }
        foreach (var path in Corpus.Files("corpus/musicxml/valid", ".mxl", ".musicxml"))
        {
            using var file = File.OpenRead(path);
            if (MusicXmlReader.ReadTune(file).Value is { } tune)
            {
                yield return tune;
            }
        }
    }

    private static IEnumerable<string> Lines(Tune tune) =>
        tune.Bars.Select(b =>
            string.Join(' ', b.Chords.Select(c => $"{c.At}={c.Chord}"))
            + " | "
            + string.Join(
                ' ',
                b.Notes.Select(n =>
                    $"{n.At}+{n.Length}:{n.Pitch}{(n.TiedToNext ? "~" : "")}{n.Graces}{string.Concat(n.Lyrics.Select(l => l.Text + l.Extends))}"
                )
            )
        );
}
