using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Planning;

public sealed class LatticeTests
{
    [Theory]
    [InlineData("M:4/4\nL:1/4\nK:C", "CDEF|GFED|CDEF|GFED|", 2)] // quarters: halved, one 2/4 bar a bar
    [InlineData("M:4/4\nL:1/8\nK:C", "CDEFGFED|CDEFGFED|CDEFGFED|", 4)] // eighths: kept, two 2/4 bars a bar
    [InlineData("M:2/4\nL:1/8\nK:C", "CDEF|GFED|CDEF|GFED|", 4)]
    [InlineData("M:2/4\nL:1/16\nK:C", "CDEFGFED|CDEFGFED|CDEFGFED|", 8)]
    public void Note_values_follow_the_motion_of_the_tune(string head, string body, int unitsPerQuarter) =>
        Assert.Equal(unitsPerQuarter, Recast.UnitsPerQuarter(Tunes.Abc(head, body), Feel.Classic));

    [Fact]
    public void Three_in_a_beat_become_long_short_long()
    {
        var lattice = Lay(Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"(3CDE (3EDC|CDEF|GFED|C4|"));
        Assert.Equal([0, 2, 6, 8, 10, 14], lattice.Notes.Take(6).Select(n => n.Start));
    }

    [Fact]
    public void A_pick_up_is_a_short_bar_that_lacks_its_beginning()
    {
        var lattice = Lay(Tunes.Abc("M:2/4\nL:1/8\nK:C", "G|\"C\"cdec|g2e2|c4|"));
        Assert.Equal(
            (4, 12, true, "0"),
            (lattice.Bars[0].Length, lattice.Bars[0].Lead, lattice.Bars[0].IsShort, lattice.Bars[0].Number)
        );
        Assert.Equal((4, 16, "1"), (lattice.Bars[1].Start, lattice.Bars[1].Length, lattice.Bars[1].Number));
    }

    [Fact]
    public void A_bar_split_by_a_repeat_lacks_its_end_and_the_next_its_beginning()
    {
        var lattice = Lay(Tunes.Abc("M:2/4\nL:1/8\nK:C", "G|:\"C\"cdec|g2e2|c2e:|g|c4|"));
        var shorts = lattice.Bars.Where(b => b.IsShort).ToList();
        Assert.Equal([(4, 12), (12, 0), (4, 12)], shorts.Select(b => (b.Length, b.Lead)));
    }

    [Fact]
    public void Tied_notes_are_struck_again_but_for_the_last()
    {
        var lattice = Lay(Tunes.Abc("M:2/4\nL:1/8\nK:C", "\"C\"c4-|c2d2|e4-|e4|"));
        Assert.Equal([(0, 16), (16, 8), (24, 8), (32, 32)], lattice.Notes.Select(n => (n.Start, n.Length)));
    }

    [Theory]
    [InlineData(2, 4, "0 8", "4 12")]
    [InlineData(3, 4, "0", "8 16")]
    [InlineData(6, 8, "0 12", "8 20")]
    [InlineData(9, 8, "0 12 24", "8 20 32")]
    [InlineData(3, 2, "0 16 32", "8 24 40")]
    [InlineData(5, 4, "0 16", "8 24 32")]
    public void The_left_hand_strikes_bass_on_strong_and_chord_on_weak_beats(
        int count,
        int unit,
        string basses,
        string chords
    )
    {
        // A tick is a thirty-second here; places by common practice of march, waltz and two-step.
        var groove = Groove.Of(new Metre(count, unit), new ScoreTime(1, 32));
        Assert.Equal((basses, chords), (string.Join(' ', groove.Basses), string.Join(' ', groove.Chords)));
    }

    private static Lattice Lay(Tune tune) => LatticeReader.Read(Piece.Of(tune), Feel.Classic);
}
