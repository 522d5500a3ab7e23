using Stridewright.Music;
using Stridewright.Practice.Listening;
using Stridewright.Practice.Listening.Reporting;
using Stridewright.Practice.Tests.Takes;

namespace Stridewright.Practice.Tests;

/// <summary>Takes of more than was asked for, the pedal, marks at notes, and taps; what was put in is what must be told.</summary>
public sealed class PartAndPedalTests
{
    private const double Quarter = 0.5; // seconds

    private static readonly ExpectedScore Stride = Played.Stride(16);

    private static double Even(ExpectedNote note) => 1 + Quarter * note.Beats;

    private static bool IsFiveToEight(ExpectedBar bar) => bar.Written is >= 4 and <= 7;

    [Fact]
    public void What_was_played_outside_of_the_bars_is_told_as_outside_and_is_no_extra_note()
    {
        var take = Played.Take(Stride, Even);
        var alignment = PartAligner.Align(Stride, IsFiveToEight, take);
        var inside = Stride.Notes.Count(n => n.Bar is >= 4 and <= 7);
        Assert.Equal(take.Notes.Count - inside, alignment.Outside.Count);
        Assert.Equal(inside, alignment.Pairs.Count(p => p.IsMatch));
        Assert.DoesNotContain(alignment.Pairs, p => !p.IsMatch);
        Assert.All(alignment.Outside, o => Assert.NotNull(o.Expected));
        var report = Listener.Hear(alignment);
        Assert.False(report.IsAnotherPiece);
        Assert.Empty(report.All);
        Assert.Equal(0, report.Bars.Sum(b => b.Extra));
        // Every played note has its line, each a match of the whole score.
        var lines = AlignmentText.Write(alignment).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).ToList();
        Assert.Equal(take.Notes.Count, lines.Count);
        Assert.All(lines, line => Assert.EndsWith("\tmatch", line, StringComparison.Ordinal));
    }

    [Fact]
    public void A_take_of_the_bars_alone_is_not_spread_over_bars_of_the_same_music()
    {
        // Sixteen bars, and the same sixteen again.
        var once = Played.Stride(16);
        var twice = ExpectedScore.Of(
            new ScoreNotes
            {
                Title = "Twice",
                Bars = once
                    .Bars.Concat(once.Bars)
                    .Select((b, i) => b.Bar with { Number = FormattableString.Invariant($"{i + 1}") })
                    .ToValueList(),
            }
        );
        static bool IsSecondTime(ExpectedBar bar) => bar.Written is >= 20 and <= 23;
        var take = Played.Take(twice.Within(IsSecondTime), n => 1 + Quarter * (n.Beats - 80));
        var alignment = PartAligner.Align(twice, IsSecondTime, take);
        Assert.Empty(alignment.Outside);
        Assert.DoesNotContain(alignment.Pairs, p => !p.IsMatch);
    }

    [Fact]
    public void A_fault_inside_the_bars_is_still_told_when_more_was_played()
    {
        var take = Played.Take(Stride, n => n is { Bar: 5, Key: 55 } ? double.NaN : Even(n));
        var report = Listener.Hear(PartAligner.Align(Stride, IsFiveToEight, take));
        var mark = Assert.Single(report.Marks);
        Assert.Equal((MarkKind.Missing, 5, Hand.Left), (mark.Kind, mark.Bar, mark.Hand!.Value));
        Assert.Equal("G3 does not sound", mark.Words); // key 55 is the G below middle C
    }

    [Fact]
    public void Marks_stand_at_the_notes_they_are_about()
    {
        // Bar 3: its second note of the tune, held over the beat, falls onto it; bar 9: the bass is a tone too high.
        var take = Played.Take(
            Stride,
            n => n is { Bar: 2, Hand: Hand.Right } && n.At == new ScoreTime(1, 8) ? Even(n) + 0.5 * Quarter : Even(n),
            n => n is { Bar: 8, Hand: Hand.Left } && n.At == ScoreTime.Zero ? n.Key + 2 : n.Key
        );
        var marks = Listener.Hear(Aligner.Align(Stride, take)).Marks;
        var flat = Stride.Notes.Single(n => n is { Bar: 2, Hand: Hand.Right } && n.At == new ScoreTime(1, 8));
        var bass = Stride.Notes.Single(n => n is { Bar: 8, Hand: Hand.Left } && n.At == ScoreTime.Zero);
        Assert.Contains(marks, m => m.Kind == MarkKind.Late && m.NoteId == flat.Id);
        Assert.Contains(marks, m => m.Kind == MarkKind.Wrong && m.NoteId == bass.Id && m.Hand == Hand.Left);
        Assert.Equal(2, marks.Count);
    }

    [Fact]
    public void The_timing_of_a_stroke_is_what_was_put_in()
    {
        var late = Stride.Notes.First(n => n is { Bar: 6, Hand: Hand.Left });
        var report = Listener.Hear(Aligner.Align(Stride, Played.Take(Stride, n => Even(n) + (n == late ? 0.04 : 0))));
        var point = report.Timing.Single(t => t.Hand == Hand.Left && t.Beats == late.Beats);
        Assert.Equal(0.04, point.Late, 0.005);
        Assert.Equal(0, report.Timing.Where(t => t.Bar is < 4 or > 9).Max(t => Math.Abs(t.Late)), 1e-6);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_pedal_held_over_into_a_new_bass_is_remarked_and_one_that_changes_with_it_is_not(bool isHeldOver)
    {
        // A bar lasts four quarters; the pedal goes down at each bass, and up at the next one or half a bar behind it.
        var take = Played.Take(Stride, Even) with
        {
            Pedal = Enumerable
                .Range(0, 4)
                .Select(i => new PedalHeld(1 + 4 * i * 4 * Quarter, 1 + (4 * i + (isHeldOver ? 1.5 : 1)) * 4 * Quarter))
                .ToValueList(),
        };
        var report = Listener.Hear(Aligner.Align(Stride, take));
        Assert.Equal(4, report.Pedal!.Presses);
        var remarks = report.All.Where(r => r.Kind == RemarkKind.Pedal).ToList();
        Assert.Equal(isHeldOver ? 1 : 0, remarks.Count);
        Assert.All(remarks, r => Assert.Contains("2, 6, 10, 14", r.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_pedal_that_the_score_asks_for_is_looked_for()
    {
        var bars = Stride.Bars.Select(b => b.Bar).ToList();
        bars[2] = bars[2] with { Directions = [new Direction(ScoreTime.Zero) { Pedal = true }] };
        bars[6] = bars[6] with { Directions = [new Direction(ScoreTime.Zero) { Pedal = true }] };
        var score = ExpectedScore.Of(new ScoreNotes { Title = "Pedal", Bars = bars.ToValueList() });
        var take = Played.Take(score, Even) with { Pedal = [new PedalHeld(1 + 8 * Quarter, 1 + 10 * Quarter)] };
        var pedal = Listener.Hear(Aligner.Align(score, take)).Pedal!;
        Assert.Equal((2, 1), (pedal.Asked, pedal.Answered));
    }

    [Fact]
    public void Taps_against_a_click_are_paired_with_the_strokes_of_their_hand()
    {
        var rhythm = Taps.Rhythm(Stride);
        // A bar has four strokes of the left hand and seven of the right.
        Assert.Equal(16 * 11, rhythm.Notes.Count);
        // All 30 ms late; one of the right hand left out, one of the left tapped twice.
        var lost = rhythm.Notes.First(n => n is { Bar: 3, Hand: Hand.Right });
        var taps = Played.Take(rhythm, n => n == lost ? double.NaN : Even(n) + 0.03);
        taps = taps with { Notes = [.. taps.Notes, new PlayedNote(Even(rhythm.Notes[^1]) + 1, 20, Taps.LeftKey, 64)] };
        var alignment = Taps.Align(rhythm, taps, n => Even(n));
        Assert.Equal(16 * 11 - 1, alignment.Pairs.Count(p => p.IsMatch));
        var report = Listener.Hear(alignment);
        Assert.Contains(report.All, r => r is { Kind: RemarkKind.MissingNotes, FirstBar: 3, Hand: Hand.Right });
        Assert.DoesNotContain(report.All, r => r.Kind is RemarkKind.WrongNotes or RemarkKind.Leap);
        Assert.Equal(1, report.Bars.Sum(b => b.Extra));
    }

    [Fact]
    public void Anticipations_that_are_tapped_on_the_beat_are_told()
    {
        var rhythm = Taps.Rhythm(Stride);
        var flat = rhythm.Notes.Single(n => n is { Bar: 5, Hand: Hand.Right } && n.At == new ScoreTime(1, 8));
        var taps = Played.Take(rhythm, n => Even(n) + (n == flat ? 0.5 * Quarter - 0.01 : 0));
        var report = Listener.Hear(Taps.Align(rhythm, taps, n => Even(n)));
        Assert.Contains(report.All, r => r is { Kind: RemarkKind.Flattened, FirstBar: 5 });
    }
}
