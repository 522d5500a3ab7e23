using System.Collections.Concurrent;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Singing;

/// <summary>
/// The piano beside a voice, read off finished scores: the small staff against the tune as it came, the right hand against
/// what is sung (common practice of song accompaniment; trade rules on filling: a note of a beat or more is heard alone for
/// half its length, and whoever fills is done before the next note).
/// </summary>
public sealed class AccompanimentTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<int, string?> Cases =>
        new()
        {
            { 1, null },
            { 2, "F3-E5" },
            { 3, null },
            { 4, "F3-E5" },
            { 5, "C2-G4" },
            { 6, null },
        };

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_small_staff_holds_every_note_and_every_syllable_of_the_tune(int level, string? range)
    {
        foreach (var (tune, arrangement) in Accompanied(level, range))
        {
            var written = Sung(tune);
            var shown = Shown(arrangement.Score);
            var scale = Length(arrangement.Score).Per(Length(tune));
            var by = arrangement.SungLowest!.Value.Midi - written.Min(n => n.Key);
            Assert.Equal(
                written.Select(n => (n.Start * scale, n.Length * scale, n.Key + by, n.Words)),
                shown.Select(n => (n.Start, n.Length, n.Key, n.Words))
            );
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_right_hand_never_plays_what_is_sung(int level, string? range)
    {
        var (struck, onTop) = (0, 0);
        foreach (var (_, arrangement) in Accompanied(level, range))
        {
            var sung = Shown(arrangement.Score);
            foreach (var onset in RightOnsets(arrangement.Score))
            {
                var sounding = sung.Where(n => n.Start < onset.End && n.Start + n.Length > onset.Start).ToList();
                Assert.True(
                    !sounding.Exists(n => onset.Keys.Contains(n.Key)),
                    $"{arrangement.Score.Title}, bar {onset.Bar}: {onset} {string.Join(",", onset.Keys)}"
                );
                struck++;
                onTop += sung.Any(n => n.Start == onset.Start && (n.Key - onset.Keys[^1]) % 12 == 0) ? 1 : 0;
            }
            Assert.Equal(0, arrangement.Tune.Kept);
        }
        Assert.True(struck > 300, $"{struck} onsets only");
        // The tune in octaves above the voice would double it: not one onset in a hundred may look so.
        Assert.True(100 * onTop <= struck, $"{onTop} of {struck} onsets have the sung note on top");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_fills_where_the_voice_rests_or_holds_and_is_off_the_beat_elsewhere(int level, string? range)
    {
        var (fills, chords, gaps, filled) = (0, 0, 0, 0);
        foreach (
            var (_, arrangement) in Accompanied(level, range)
                .Where(a => a.Arrangement.Feel is Feel.Classic or Feel.Stride)
        )
        {
            var score = arrangement.Score;
            var starts = Starts(score);
            var unit = score.Bars[^1].Metre.BarLength / 8;
            var sung = Shown(score);
            var last = starts[^1];
            foreach (var onset in RightOnsets(score).Where(o => o.Start < last))
            {
                var before = sung.LastOrDefault(n => n.Start <= onset.Start);
                var since = before is null ? score.Bars[0].Length : onset.Start - before.Start;
                var rests = before is null || onset.Start >= before.Start + before.Length;
                var place = onset.Start - starts[onset.Bar];
                var isOnBass = place.IsMultipleOf(unit * 4);
                if (
                    since >= unit * 2
                    && (rests || 2 * since.ToQuarters() >= before!.Length.ToQuarters() && since >= unit * 4)
                )
                {
                    fills++;
                    continue;
                }
                // Between syllables: chords, off the bass but where a phrase begins.
                chords++;
                Assert.True(onset.Keys.Length >= 2, $"{score.Title}, bar {onset.Bar}: one note beside the voice");
                Assert.True(!isOnBass || place.IsZero, $"{score.Title}, bar {onset.Bar}: on the bass");
            }
            foreach (var (gap, next) in sung.Zip(sung.Skip(1)).Where(p => p.Second.Start - p.First.Start >= unit * 12))
            {
                gaps++;
                var from = gap.Start + unit * 4;
                filled += RightOnsets(score).Any(o => o.Start >= from && o.Start < next.Start) ? 1 : 0;
            }
        }
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"level {level}: {fills} fills, {chords} chords, {filled} of {gaps} long gaps filled"
        );
        Assert.True(fills > 20 && chords > 100, $"{fills} fills, {chords} chords");
        Assert.True(filled >= 0.9 * gaps, $"{filled} of {gaps} long gaps are filled");
    }

    [Fact]
    public void It_stays_out_of_a_voice_that_leaves_it_room()
    {
        // A bass voice lies below the right hand's register; beside a high one three keys in four are
        // above it, and not so high that they tinkle all the time.
        foreach (var (range, most) in new[] { ("C2-G4", 0.02), ("F3-E5", 0.25) })
        {
            var (inside, all) = (0, 0);
            foreach (var (_, arrangement) in Accompanied(4, range))
            {
                foreach (var onset in RightOnsets(arrangement.Score))
                {
                    all += onset.Keys.Length;
                    inside += onset.Keys.Count(k =>
                        k >= arrangement.SungLowest!.Value.Midi && k <= arrangement.SungHighest!.Value.Midi
                    );
                }
            }
            TestContext.Current.TestOutputHelper?.WriteLine($"{range}: {inside} of {all} keys in the voice's register");
            Assert.True(inside <= most * all, $"{range}: {inside} of {all} keys lie in the voice's register");
        }
    }

    [Fact]
    public void What_a_level_strikes_the_next_one_strikes_too()
    {
        // Of the same tempo: another tempo may ask for other keys, never for other places.
        foreach (var tune in Tunes.Samples.Where((_, i) => i % 3 == 0))
        {
            HashSet<ScoreTime>? easier = null;
            for (var level = 1; level <= 6; level++)
            {
                var places = RightOnsets(Accompany(tune, level, null).Arrangement.Score)
                    .Select(o => o.Start)
                    .ToHashSet();
                Assert.True(easier is null || easier.IsSubsetOf(places), $"{tune.Title}, level {level}");
                easier = places;
            }
        }
    }

    [Fact]
    public void The_piano_plays_its_introduction_itself_and_the_voice_rests_there()
    {
        var tune = Tunes.Samples.First(t => t.Title.StartsWith("Lamps", StringComparison.Ordinal));
        var brief = new Brief { Singer = new Singer(), Form = FormLine.Read("intro A tag", out _) };
        var score = Arranger.Arrange(tune, brief, Cancel).Arrangement!.Score;
        Assert.All(score.Bars.Take(3), b => Assert.All(b.Above, e => Assert.Empty(e.Notes)));
        // The pick-up stands in the introduction's last bar, with its syllable.
        var pickUp = Assert.Single(score.Bars[3].Above.SelectMany(e => e.Notes.Select(_ => e)));
        Assert.Equal("The", Assert.Single(pickUp.Lyrics).Text);
        Assert.Contains(
            score.Bars.Take(4).SelectMany(b => b.Voices).SelectMany(v => v.Events).SelectMany(e => e.Notes),
            n => n.Id.Contains("tune", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(
            score.Bars.Skip(4).SkipLast(2).SelectMany(b => b.Voices).SelectMany(v => v.Events).SelectMany(e => e.Notes),
            n => n.Id.Contains("tune", StringComparison.Ordinal)
        );
    }

    private static readonly ConcurrentDictionary<(int Level, string? Range), IReadOnlyList<Case>> Found = new();

    private static IReadOnlyList<Case> Accompanied(int level, string? range) =>
        Found.GetOrAdd((level, range), _ => [.. Tunes.Samples.Select(t => Accompany(t, level, range))]);

    private static Case Accompany(Tune tune, int level, string? text)
    {
        VocalRange? range = null;
        Assert.True(text is null || VocalRange.TryRead(text, out range, out _));
        var brief = new Brief
        {
            Singer = new Singer(range),
            LeftLevel = level,
            RightLevel = level,
        };
        var arrangement = Arranger.Arrange(tune, brief, Cancel).Arrangement;
        Assert.NotNull(arrangement);
        Assert.True(Judge.Check(arrangement.Score, brief.Hands).IsPlayable);
        return new Case(Unfolding.BySectionOrder(tune), arrangement);
    }

    // Notes as they sound, ties merged, with their syllables.
    private static List<SungNote> Sung(Tune tune)
    {
        var notes = new List<SungNote>();
        var (start, tied) = (ScoreTime.Zero, false);
        foreach (var bar in tune.Bars)
        {
            foreach (var note in bar.Notes)
            {
                var at = start + note.At;
                Add(notes, at, note.Length, note.Pitch.Midi, note.Lyrics, tied);
                tied = note.TiedToNext;
            }
            start += bar.Length;
        }
        return notes;
    }

    private static List<SungNote> Shown(Score score)
    {
        var notes = new List<SungNote>();
        var start = ScoreTime.Zero;
        foreach (var bar in score.Bars)
        {
            foreach (var e in bar.Above.Where(e => e.Notes.Count > 0))
            {
                Add(notes, start + e.At, e.Length, e.Notes.Single().Pitch.Midi, e.Lyrics, e.Notes[0].TieStop);
            }
            start += bar.Length;
        }
        return notes;
    }

    private static void Add(
        List<SungNote> notes,
        ScoreTime at,
        ScoreTime length,
        int key,
        ValueList<Lyric> words,
        bool tied
    )
    {
        if (
            tied
            && notes.Count > 0
            && notes[^1].Key == key
            && notes[^1].Start + notes[^1].Length == at
            && words.Count == 0
        )
        {
            notes[^1] = notes[^1] with { Length = notes[^1].Length + length };
        }
        else
        {
            notes.Add(new SungNote(at, length, key, words));
        }
    }

    private static ScoreTime[] Starts(Score score)
    {
        var start = ScoreTime.Zero;
        return
        [
            .. score.Bars.Select(b =>
            {
                var here = start;
                start += b.Length;
                return here;
            }),
        ];
    }

    private static ScoreTime Length(Tune tune) => tune.Bars.Aggregate(ScoreTime.Zero, (sum, b) => sum + b.Length);

    private static ScoreTime Length(Score score) => score.Bars.Aggregate(ScoreTime.Zero, (sum, b) => sum + b.Length);

    private static List<RightOnset> RightOnsets(Score score) =>
        [
            .. Timeline
                .Of(score)
                .Where(s => s.Hand == Hand.Right)
                .GroupBy(s => s.Start)
                .Select(g => new RightOnset(
                    g.Key,
                    g.Max(s => s.End),
                    g.First().Bar,
                    [.. g.Select(s => s.Key).Order()]
                )),
        ];

    private sealed record Case(Tune Tune, Arrangement Arrangement);

    private sealed record SungNote(ScoreTime Start, ScoreTime Length, int Key, ValueList<Lyric> Words);

    private sealed record RightOnset(ScoreTime Start, ScoreTime End, int Bar, int[] Keys);
}
