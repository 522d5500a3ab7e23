using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Practice.Tests.Takes;

namespace Stridewright.Practice.Tests;

public sealed class NastyTakeTests
{
    private const double Quarter = 0.5;

    private static double Even(ExpectedNote note) => 1 + Quarter * note.Beats;

    [Fact]
    public void An_empty_take_misses_everything_and_breaks_nothing()
    {
        var score = Played.Stride(4);
        var alignment = Aligner.Align(score, new Take([]));
        Assert.All(alignment.Pairs, p => Assert.Null(p.Played));
        Assert.Equal(score.Notes.Count, alignment.Pairs.Count);
        Assert.True(Listener.Hear(alignment).IsAnotherPiece);
        var nothing = ExpectedScore.Of(new ScoreNotes { Title = "", Bars = [] });
        Assert.Equal(2, Aligner.Align(nothing, new Take([new(0, 1, 60, 64), new(1, 2, 61, 64)])).Pairs.Count);
    }

    [Fact]
    public void One_note_is_found()
    {
        var score = Played.Stride(4);
        var take = new Take([new PlayedNote(3, 3.2, score.Notes[0].Key, 64)]);
        Assert.Single(Aligner.Align(score, take).Pairs, p => p.IsMatch);
    }

    [Fact]
    public void A_repeat_that_is_not_taken_leaves_out_one_pass()
    {
        var once = Enumerable.Range(0, 4).Select(b => Played.Bar(b + 1, Tune(b))).ToList();
        once[0] = once[0] with { Marks = new BarMarks { RepeatStart = true } };
        once[3] = once[3] with { Marks = new BarMarks { RepeatEnd = 2 } };
        var last = Enumerable.Range(4, 4).Select(b => Played.Bar(b + 1, Tune(b)));
        var score = ExpectedScore.Of(new ScoreNotes { Title = "", Bars = [.. once, .. last] });
        Assert.Equal(12, score.Bars.Count);
        var take = Played.Take(
            score,
            n => n.Bar is >= 4 and < 8 ? double.NaN : 1 + Quarter * (n.Bar < 4 ? n.Beats : n.Beats - 16)
        );
        var alignment = Aligner.Align(score, take);
        Assert.Equal(take.Notes.Count, alignment.Pairs.Count(p => p.IsMatch));
        var missing = alignment.Pairs.Where(p => p.Played is null).ToList();
        Assert.Equal(score.Notes.Count - take.Notes.Count, missing.Count);
        var report = Listener.Hear(alignment);
        Assert.Equal(4, report.Bars.Count(b => !b.IsPlayed));
        Assert.DoesNotContain(report.All, r => r.Kind == RemarkKind.MissingNotes);
    }

    [Fact]
    public void A_restart_in_the_middle_of_a_bar_matches_both_times()
    {
        var score = Played.Stride(8);
        var first = Played.Take(score, n => n.Beats < 14.2 ? Even(n) : double.NaN).Notes;
        var again = Played.Take(score, n => n.Beats >= 10 ? Even(n) + 3 : double.NaN).Notes;
        var take = new Take([.. first, .. again]);
        var alignment = Aligner.Align(score, take);
        Assert.Equal(take.Notes.Count, alignment.Pairs.Count(p => p.IsMatch));
        Assert.DoesNotContain(alignment.Pairs, p => p.Played is null);
        Assert.Equal(1, Listener.Hear(alignment).Jumps);
    }

    [Fact]
    public void A_hand_alone_is_not_told_that_the_other_is_missing()
    {
        var score = Played.Stride(8);
        var take = Played.Take(score, n => n.Hand == Hand.Left ? Even(n) : double.NaN);
        var report = Listener.Hear(Aligner.Align(score, take));
        Assert.Equal(Hand.Left, report.Alone);
        Assert.Empty(report.All);
        Assert.All(report.Bars, b => Assert.Equal((8, 0), (b.Right, b.Missing)));
    }

    [Fact]
    public void A_trill_that_is_not_written_is_extra_and_its_first_note_is_the_note()
    {
        var score = Played.Stride(8);
        var held = score
            .Notes.Index()
            .First(n => n.Item is { Bar: 3, Hand: Hand.Right } && n.Item.At == Played.Time(0.5));
        var take = Played.Take(score, Even);
        var trill = Enumerable
            .Range(1, 5)
            .Select(i => new PlayedNote(Even(held.Item) + 0.08 * i, 9, held.Item.Key + i % 2 * 2, 64));
        take = new Take(take.Notes.Concat(trill).OrderBy(n => n.Onset).ToValueList());
        var alignment = Aligner.Align(score, take);
        Assert.Equal(5, alignment.Pairs.Count(p => p.Expected is null));
        var pair = Assert.Single(alignment.Pairs, p => p.Expected == held.Index);
        Assert.Equal(Even(held.Item), take.Notes[pair.Played!.Value].Onset, 9);
    }

    [Fact]
    public void A_tremolo_of_two_notes_is_extra_but_for_its_first_ones()
    {
        // Written as two half notes with the sign for it, played as sixteen strokes.
        var bars = Enumerable.Range(0, 6).Select(b => Played.Bar(b + 1, Tune(b))).ToList();
        WrittenKey Half(double at, int key) =>
            new(Played.Time(at), ScoreTime.Half, key, Hand.Right, "1", "") { Ornamented = true };
        var bass = bars[3].Notes.Where(n => n.Hand == Hand.Left);
        bars[3] = bars[3] with
        {
            Notes = bass.Append(Half(0, 62)).Append(Half(2, 74)).OrderBy(n => n.At).ToValueList(),
        };
        var score = ExpectedScore.Of(new ScoreNotes { Title = "", Bars = bars.ToValueList() });
        var take = Played.Take(score, n => n is { Bar: 3, Hand: Hand.Right } ? double.NaN : Even(n));
        var shaken = Enumerable
            .Range(0, 16)
            .Select(i => new PlayedNote(1 + Quarter * 12 + i * Quarter / 4, 9, i % 2 == 0 ? 62 : 74, 64));
        take = new Take(take.Notes.Concat(shaken).OrderBy(n => n.Onset).ToValueList());
        var alignment = Aligner.Align(score, take);
        Assert.Single(alignment.Runs);
        Assert.Equal(14, alignment.Pairs.Count(p => p.Expected is null));
        Assert.DoesNotContain(alignment.Pairs, p => p.Played is null);
    }

    [Fact]
    public void Keys_in_the_wrong_octave_are_called_so()
    {
        var score = Played.Stride(8);
        var take = Played.Take(score, Even, n => n is { Bar: 4, Hand: Hand.Right } ? n.Key + 12 : n.Key);
        var report = Listener.Hear(Aligner.Align(score, take));
        Assert.Equal((7, 7), (report.Bars[4].Wrong, report.Bars[4].WrongOctave));
        Assert.Contains(report.All, r => r.Message.Contains("octave", StringComparison.Ordinal));
    }

    [Fact]
    public void A_take_of_another_piece_is_known_as_that()
    {
        for (var i = 0; i < Pieces.Excerpts.Count; i++)
        {
            var other = Pieces.Excerpts[(i + 1) % Pieces.Excerpts.Count];
            var take = MadeTake.Of(other, new TakeWishes { Jitter = 0.01 }, i).Take;
            Assert.True(Listener.Hear(Aligner.Align(Pieces.Excerpts[i], take)).IsAnotherPiece, $"{i}");
            // A learner's take of the piece itself is not.
            var wishes = new TakeWishes
            {
                Jitter = 0.03,
                Missing = 0.05,
                Wrong = 0.08,
                Extra = 0.05,
                Restarts = 3,
                Curve = 0.3,
            };
            var learner = MadeTake.Of(Pieces.Excerpts[i], wishes, i).Take;
            Assert.False(Listener.Hear(Aligner.Align(Pieces.Excerpts[i], learner)).IsAnotherPiece, $"{i}");
        }
    }

    [Fact]
    public void No_page_has_more_than_three_remarks_and_two_come_next()
    {
        var score = Played.Stride(60);
        var take = Played.Take(
            score,
            n => n.Bar % 3 == 0 && n.Key == 60 ? double.NaN : Even(n) + (n.Key == 55 ? 0.09 : 0),
            n => n.Bar % 4 == 1 && n.Hand == Hand.Right && n.Beats % 2 == 0 ? n.Key + 1 : n.Key
        );
        var report = Listener.Hear(Aligner.Align(score, take));
        Assert.True(report.All.Count > 20);
        Assert.All(report.Remarks.GroupBy(r => r.FirstBar / 24), page => Assert.True(page.Count() <= 3));
        Assert.Equal(2, report.Next.Count);
        Assert.All(report.Next, r => Assert.Contains(r, report.Remarks));
    }

    // Unlike from bar to bar, so that it is known where a note belongs.
    private static (double, double, int, Hand)[] Tune(int bar) =>
        [
            .. Enumerable.Range(0, 8).Select(i => (i * 0.5, 0.5, 60 + (bar * 5 + i * 7) % 24, Hand.Right)),
            .. Enumerable.Range(0, 4).Select(i => ((double)i, 1.0, 36 + (bar * 3 + i * 5) % 16, Hand.Left)),
        ];
}
