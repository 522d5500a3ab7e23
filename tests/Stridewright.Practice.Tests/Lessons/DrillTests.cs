using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Practice.Listening.Reporting;

namespace Stridewright.Practice.Tests.Lessons;

public sealed class DrillTests
{
    [Fact]
    public void A_leap_drill_has_the_very_leap_it_claims_both_ways_and_widens_to_it()
    {
        var count = 0;
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var drill in lesson.Drills.Where(d => d.Kind == DrillKind.Leap))
            {
                count++;
                var move = drill.Move!;
                var (from, to) = (move.From.ToList(), move.To.ToList());
                var strokes = Strokes(drill.Score, Hand.Left).ToList();
                var pairs = strokes.Zip(strokes.Skip(1)).ToList();
                Assert.Contains(pairs, p => p.First.Keys.SequenceEqual(from) && p.Second.Keys.SequenceEqual(to));
                Assert.Contains(pairs, p => p.First.Keys.SequenceEqual(to) && p.Second.Keys.SequenceEqual(from));
                Assert.Equal(move.Semitones, to[0] - from[0]);
                Assert.Contains(
                    FormattableString.Invariant($"{to[0] - from[0]} semitones"),
                    drill.Claim,
                    StringComparison.Ordinal
                );
                // One distance after the other, never nearer again.
                var bars = strokes.GroupBy(s => s.Bar).Select(b => b.Select(s => s.Keys[0]).ToList()).ToList();
                var widths = bars.ConvertAll(b => Math.Abs(b[^1] - b[0]));
                Assert.Equal(widths.Order(), widths);
                Assert.Equal(move.Semitones, widths[^1]);
                // A slow pass, then the two notes at once.
                var gaps = strokes
                    .GroupBy(s => s.Bar)
                    .Select(b => (b.Last().Start - b.First().Start).ToQuarters())
                    .ToList();
                for (var i = 0; i + 1 < gaps.Count; i += 2)
                {
                    Assert.True(gaps[i] > gaps[i + 1], $"{name}, {drill.Id}, bar {i + 1}");
                }
                // So often in the piece, in either direction, in bars that are named.
                var piece = Strokes(lesson.Goal, Hand.Left).ToList();
                var there = piece.Zip(piece.Skip(1)).Where(p => Is(p, from, to) || Is(p, to, from)).ToList();
                Assert.Equal(move.Times, there.Count);
                Assert.Equal(there.Select(p => p.First.Bar).Distinct().Order(), drill.Bars);
            }
        }
        Assert.True(count > LessonPieces.All.Count / 2, $"{count} leap drills");

        static bool Is((Stroke First, Stroke Second) pair, List<int> from, List<int> to) =>
            pair.First.Keys.SequenceEqual(from) && pair.Second.Keys.SequenceEqual(to);
    }

    [Fact]
    public void A_rhythm_drill_is_tapped_then_on_one_note_then_as_written()
    {
        var count = 0;
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var drill in lesson.Drills.Where(d => d.Kind == DrillKind.Rhythm))
            {
                count++;
                var bars = drill.Bars.Count;
                Assert.Equal(3 * bars, drill.Score.Bars.Count);
                var (tapped, one, written) = (Third(0), Third(1), Third(2));
                var piece = Of(lesson.Goal, drill.Bars[0], bars);
                Assert.True(written.SequenceEqual(piece), $"{name}, {drill.Id}");
                Assert.Single(tapped.Where(s => s.Hand == Hand.Right).Select(s => s.Key).Distinct());
                Assert.Single(tapped.Where(s => s.Hand == Hand.Left).Select(s => s.Key).Distinct());
                Assert.Single(one.Where(s => s.Hand == Hand.Right).Select(s => s.Key).Distinct());
                // The left hand strides under the one note as it is written.
                Assert.True(
                    one.Where(s => s.Hand == Hand.Left).SequenceEqual(piece.Where(s => s.Hand == Hand.Left)),
                    name
                );
                // Each onset of the tapped rhythm is one of the piece's.
                var places = piece.Select(s => (s.Bar, s.At, s.Hand)).ToHashSet();
                Assert.All(tapped, s => Assert.Contains((s.Bar, s.At, s.Hand), places));
                List<Struck> Third(int n) => Of(drill.Score, n * bars, bars);
            }
        }
        Assert.True(count > LessonPieces.All.Count / 2, $"{count} rhythm drills");
    }

    [Fact]
    public void A_change_of_chord_has_the_two_chords_of_the_piece()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var drill in lesson.Drills.Where(d => d.Kind == DrillKind.ChordChange))
            {
                var (from, to) = (drill.Move!.From.ToList(), drill.Move.To.ToList());
                var strokes = Strokes(drill.Score, Hand.Left).ToList();
                Assert.All(strokes, s => Assert.True(s.Keys.SequenceEqual(from) || s.Keys.SequenceEqual(to), name));
                Assert.Contains(
                    strokes.Zip(strokes.Skip(1)),
                    p => p.First.Keys.SequenceEqual(from) && p.Second.Keys.SequenceEqual(to)
                );
                var there = Strokes(lesson.Goal, Hand.Left).Where(s => drill.Bars.Contains(s.Bar)).ToList();
                Assert.Contains(there, s => s.Keys.SequenceEqual(from));
                Assert.NotEqual(from, to);
            }
        }
    }

    [Fact]
    public void Joins_beats_and_frames_are_the_bars_they_claim()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var drill in lesson.Drills)
            {
                var bars = drill.Bars.Count;
                var hand = drill.Hand;
                switch (drill.Kind)
                {
                    case DrillKind.MemoryJoin
                    or DrillKind.PageTurn
                    or DrillKind.Join
                    or DrillKind.Beat
                    or DrillKind.Frame:
                        var from = drill.Score.Bars.Count - bars;
                        var piece = Of(lesson.Goal, drill.Bars[0], bars).Where(s => hand is null || s.Hand == hand);
                        Assert.True(Of(drill.Score, from, bars).SequenceEqual(piece), $"{name}, {drill.Id}");
                        break;
                }
            }
        }
    }

    [Fact]
    public void Every_drill_can_be_played_and_belongs_to_a_step()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            var steps = lesson.Steps.Select(s => s.Id).Concat(lesson.Skipped.Select(s => s.Step.Id)).ToHashSet();
            Assert.Equal(lesson.Drills.Count, lesson.Drills.Select(d => d.Id).Distinct().Count());
            Assert.True(lesson.Drills.Count <= LessonLimits.Drills.Value);
            foreach (var drill in lesson.Drills)
            {
                Assert.True(Judge.Check(drill.Score, new()).IsPlayable, $"{name}, {drill.Id}");
                Assert.Contains(drill.Step, steps);
                Assert.NotEmpty(drill.Serves);
                Assert.NotEmpty(drill.Bars);
            }
        }
    }

    [Fact]
    public void Every_remark_on_a_take_has_a_drill_that_answers_it()
    {
        foreach (var kind in Enum.GetValues<RemarkKind>())
        {
            Assert.NotEmpty(DrillServes.For(kind));
            Assert.All(DrillServes.For(kind), drill => Assert.Contains(kind, DrillServes.Of(drill)));
        }
    }

    private sealed record Stroke(int Bar, ScoreTime Start, IReadOnlyList<int> Keys);

    private sealed record Struck(int Bar, ScoreTime At, Hand Hand, int Key);

    private static IEnumerable<Stroke> Strokes(Score score, Hand hand) =>
        Timeline
            .Of(score)
            .Where(s => s.Hand == hand)
            .GroupBy(s => s.Start)
            .OrderBy(g => g.Key)
            .Select(g => new Stroke(g.First().Bar, g.Key, [.. g.Select(s => s.Key).Distinct().Order()]));

    // What is written at each place of some bars, tied on or not.
    private static List<Struck> Of(Score score, int first, int count) =>
        [
            .. score
                .Bars.Skip(first)
                .Take(count)
                .SelectMany(
                    (bar, i) =>
                        bar.Voices.SelectMany(v =>
                            v.Events.SelectMany(e => e.Notes.Select(n => new Struck(i, e.At, v.Hand, n.Pitch.Midi)))
                        )
                )
                .OrderBy(s => s.Bar)
                .ThenBy(s => s.Hand)
                .ThenBy(s => s.At)
                .ThenBy(s => s.Key),
        ];
}
