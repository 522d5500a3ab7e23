using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Testing;

namespace Stridewright.Practice.Tests.Lessons;

public sealed class StepTests
{
    // Levels nest to nine tenths (docs/decisions/levels-nest.md).
    private const double NineTenths = 0.9;

    [Fact]
    public void Every_step_can_be_played_at_its_own_tempo_and_at_the_piece_s()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            var quarters = lesson.BeatsPerMinute * lesson.Beat.Length.ToQuarters();
            foreach (var step in lesson.Steps)
            {
                Assert.True(Judge.Check(step.Score, new()).IsPlayable, $"{name}, {step.Id}");
                Assert.True(Judge.Check(step.Score, new(), quarters).IsPlayable, $"{name}, {step.Id}, full tempo");
            }
        }
    }

    [Fact]
    public void Effort_rises_within_a_hand_s_steps_and_those_together()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var hands in lesson.Steps.GroupBy(s => s.Hands))
            {
                var steps = hands.ToList();
                for (var i = 1; i < steps.Count; i++)
                {
                    Assert.True(
                        steps[i].Effort > steps[i - 1].Effort,
                        $"{name}, {steps[i].Id}: {steps[i - 1].Effort} and {steps[i].Effort}"
                    );
                }
            }
        }
    }

    [Fact]
    public void Effort_is_what_Hands_measures_of_the_step()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var step in lesson.Steps.Where(s => s.Hands != StepHands.Together))
            {
                // The step prints the tempo of its test.
                var whole = Judge.Check(step.Score, new()).Effort;
                var value = step.Hands == StepHands.Left ? whole.Left.Value : whole.Right.Value;
                Assert.True(Math.Abs(value - step.Effort) < 0.5, $"{name}, {step.Id}: {value} and {step.Effort}");
            }
        }
    }

    [Fact]
    public void Each_step_of_a_hand_stands_again_in_the_next()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var hand in (Hand[])[Hand.Left, Hand.Right])
            {
                var of = hand == Hand.Left ? StepHands.Left : StepHands.Right;
                var steps = lesson.Steps.Where(s => s.Hands == of).ToList();
                for (var i = 1; i < steps.Count; i++)
                {
                    var share = Again(steps[i - 1].Score, steps[i].Score, hand);
                    Assert.True(share >= NineTenths, $"{name}, {steps[i - 1].Id} in {steps[i].Id}: {share:0.00}");
                    Assert.Equal(share, steps[i].Again, 6);
                }
            }
        }
    }

    [Fact]
    public void Steps_end_in_the_piece_itself()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            var last = lesson.Steps[^1];
            Assert.Equal(StepKind.TogetherWhole, last.Kind);
            Assert.True(Keys(last.Score).SequenceEqual(Keys(lesson.Goal)), name);
            Assert.Equal(Math.Round(lesson.BeatsPerMinute), last.Test.BeatsPerMinute);
            foreach (
                var (hands, hand) in ((StepHands, Hand)[])[(StepHands.Left, Hand.Left), (StepHands.Right, Hand.Right)]
            )
            {
                var whole = lesson.Steps.Last(s => s.Hands == hands);
                Assert.True(Keys(whole.Score).SequenceEqual(Keys(lesson.Goal).Where(k => k.Hand == hand)), name);
            }
        }
    }

    [Fact]
    public void Steps_of_a_part_are_those_bars_of_the_piece()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var step in lesson.Steps.Where(s => s.Hands == StepHands.Together && s.IsOfThePiece))
            {
                var bars = Enumerable.Range(step.First, step.Last - step.First + 1).ToHashSet();
                var there = Timeline
                    .Of(lesson.Goal)
                    .Where(s => bars.Contains(s.Bar))
                    .Select(s => (s.Bar - step.First, s.At, s.Hand, s.Key));
                var here = Timeline.Of(step.Score).Select(s => (s.Bar, s.At, s.Hand, s.Key)).ToList();
                // What is tied into the first bar is struck in an excerpt.
                Assert.True(there.All(here.Contains), $"{name}, {step.Id}");
            }
        }
    }

    [Fact]
    public void Nothing_is_learned_before_what_it_is_made_of_and_no_step_is_the_one_before_it()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            var known = new HashSet<string>();
            foreach (var step in lesson.Steps)
            {
                Assert.True(step.After.All(known.Contains), $"{name}, {step.Id}");
                Assert.True(known.Add(step.Id), $"{name}, {step.Id}");
            }
            foreach (var hands in lesson.Steps.GroupBy(s => s.Hands))
            {
                foreach (var (first, second) in hands.Zip(hands.Skip(1)))
                {
                    Assert.False(Keys(first.Score).SequenceEqual(Keys(second.Score)), $"{name}, {second.Id}");
                }
            }
        }
    }

    [Fact]
    public void The_left_hand_begins_without_leaps_and_the_right_without_syncopation()
    {
        var (inPlace, plain, all) = (0, 0, 0);
        foreach (var (name, lesson) in LessonPieces.All)
        {
            all++;
            if (lesson.Steps.First(s => s.Hands == StepHands.Left) is { Kind: StepKind.LeftInPlace } left)
            {
                inPlace++;
                Assert.True(
                    Leaps(left.Score) <= 0.05,
                    $"{name}: {Leaps(left.Score):0.00} of its moves are over an octave"
                );
            }
            plain += lesson.Steps.First(s => s.Hands == StepHands.Right).Kind == StepKind.RightPlain ? 1 : 0;
        }
        // Not each tune has a syncopation to put back, nor each left hand a bass to bring near.
        Assert.True(inPlace >= 0.8 * all, $"{inPlace} of {all} begin in one place");
        Assert.True(plain >= 0.7 * all, $"{plain} of {all} begin on the beat");
    }

    [Fact]
    public void Tempo_begins_where_it_is_comfortable_and_first_at_half_of_the_piece_s_at_most()
    {
        foreach (var (name, lesson) in LessonPieces.All)
        {
            foreach (var step in lesson.Steps)
            {
                var isFirst = step.Id.EndsWith("-1", StringComparison.Ordinal);
                var share = isFirst ? 0.5 : 0.65;
                Assert.True(step.Tempo.From <= Math.Round(share * lesson.BeatsPerMinute), $"{name}, {step.Id}");
                var comfortable = Assess.Comfortable(step.Score, new());
                var limit = comfortable is null ? double.MaxValue : comfortable.Speed * step.Test.BeatsPerMinute;
                Assert.True(step.Tempo.From <= limit + 1, $"{name}, {step.Id}: {step.Tempo.From} and {limit}");
                Assert.True(step.Tempo.To <= Math.Round(lesson.BeatsPerMinute), $"{name}, {step.Id}");
            }
        }
    }

    [Fact]
    public void Steps_and_drills_are_valid_MusicXML()
    {
        Corpus.PathOf("standards/musicxml.xsd");
        foreach (var (name, lesson) in LessonPieces.All)
        {
            var scores = lesson.Steps.Select(s => (s.Id, s.Score)).Concat(lesson.Drills.Select(d => (d.Id, d.Score)));
            foreach (var (id, score) in scores)
            {
                using var bytes = new MemoryStream();
                MusicXmlWriter.Write(score, bytes);
                bytes.Position = 0;
                Assert.True(MusicXmlSchema.Faults(bytes) is [], $"{name}, {id}");
                bytes.Position = 0;
                if (score.RightHandOnly)
                {
                    // A right hand alone reads as a tune or as notes to be heard.
                    Assert.NotNull(MusicXmlReader.ReadNotes(bytes).Value);
                    continue;
                }
                var read = MusicXmlReader.ReadScore(bytes);
                Assert.True(
                    read.Value is not null,
                    $"{name}, {id}: {string.Join("; ", read.Diagnostics.Select(d => d.Message))}"
                );
                Assert.True(Keys(read.Value).SequenceEqual(Keys(score)), $"{name}, {id} reads back");
            }
        }
    }

    // Of the right hand the top keys, at their place or up to half a beat ahead; of the left the chords with their keys and the
    // tones of the basses: reckoned here from the sounding keys alone.
    private static double Again(Score easier, Score harder, Hand hand)
    {
        var there = Timeline.Of(harder).Where(s => s.Hand == hand).ToLookup(s => s.Start, s => s.Key);
        var half = easier.Bars[0].Metre.Beat.ToQuarters() / 2;
        var strokes = Timeline.Of(easier).Where(s => s.Hand == hand).GroupBy(s => s.Start, s => s.Key).ToList();
        bool Stands(IGrouping<ScoreTime, int> stroke)
        {
            var keys = stroke.Distinct().Order().ToList();
            if (hand == Hand.Right)
            {
                return there.Any(t =>
                    t.Key.ToQuarters() <= stroke.Key.ToQuarters() + 1e-9
                    && t.Key.ToQuarters() >= stroke.Key.ToQuarters() - half - 1e-9
                    && t.Max() == keys[^1]
                );
            }
            var isChord = keys.Count > 2 || (keys.Count == 2 && keys[1] - keys[0] < 12);
            var other = there[stroke.Key].Distinct().Order().ToList();
            return isChord ? other.SequenceEqual(keys) : other.Exists(k => (k - keys[0]) % 12 == 0);
        }
        return strokes.Count == 0 ? 1 : strokes.Count(Stands) / (double)strokes.Count;
    }

    // Share of the moves between lowest keys that are wider than an octave.
    private static double Leaps(Score left)
    {
        var lows = Timeline.Of(left).GroupBy(s => s.Start).OrderBy(g => g.Key).Select(g => g.Min(s => s.Key)).ToList();
        return lows.Zip(lows.Skip(1)).Count(p => Math.Abs(p.First - p.Second) > 12)
            / (double)Math.Max(1, lows.Count - 1);
    }

    private static IEnumerable<(ScoreTime Start, ScoreTime End, Hand Hand, int Key)> Keys(Score score) =>
        Timeline.Of(score).Select(s => (s.Start, s.End, s.Hand, s.Key));
}
