using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Harmony;

/// <summary>Keys of progressions as any musician names them (common practice), and the twelve keys round by
/// fourths.</summary>
public sealed class ChordKeyTests
{
    [Theory]
    [InlineData("F | D7 | G7 C7 | F", "F major")]
    [InlineData("C A7 | Dm G7", "C major")]
    [InlineData("Dm7 | G7 | Cmaj7", "C major")]
    [InlineData("Dm7b5 | G7 | Cm", "C minor")]
    [InlineData("Am | E7 | Am", "A minor")]
    [InlineData("Am | F | C | G", "A minor")]
    [InlineData("C | G | Am | F", "C major")]
    [InlineData("Bb7 | Eb7 | Bb7 | F7 | Eb7 | Bb7", "Bb major")]
    [InlineData("E7 | A7 | D7 | G7 | C", "C major")]
    [InlineData("Bb Bdim7 | F/C D7 | G7 C7 | F", "F major")]
    [InlineData("Gm | D7/F# | Gm/F | C7/E | Eb | D7 | Gm", "G minor")]
    [InlineData("N.C. | Eb | Bb7 | Eb", "Eb major")]
    [InlineData("F#m | C#7 | F#m", "F# minor")]
    [InlineData("Gb | Db7 | Gb", "Gb major")]
    [InlineData("F# | C#7 | F#", "F# major")]
    [InlineData("G# | D#7 | G#", "Ab major")] // eight sharps are spelled anew
    [InlineData("Fb | Cb7 | Fb", "E major")]
    [InlineData("C", "C major")]
    [InlineData("Cm", "C minor")]
    [InlineData("Dm7 | G7", "C major")]
    public void The_key_is_found_from_the_chords(string line, string key) =>
        Assert.All(ChordLine.Tune(line).Bars, b => Assert.Equal(key, b.Key.ToString()));

    [Fact]
    public void Chords_are_spelled_anew_with_their_key() =>
        Assert.Equal(
            ["Ab", "Eb7", "Ab"],
            ChordLine.Tune("G# | D#7 | G#").Bars.Select(b => b.Chords[0].Chord.ToString())
        );

    [Theory]
    [InlineData("F major", "F Bb Eb Ab Db Gb B E A D G C")]
    [InlineData("C major", "C F Bb Eb Ab Db Gb B E A D G")]
    [InlineData("F# major", "F# B E A D G C F Bb Eb Ab Db")]
    [InlineData("A minor", "A D G C F Bb Eb G# C# F# B E")]
    public void Twelve_keys_go_round_by_fourths_in_the_simpler_spelling(string key, string tonics)
    {
        var words = key.Split(' ');
        var mode = words[1] == "minor" ? Mode.Minor : Mode.Major;
        Assert.Equal(tonics.Split(' '), TwelveKeys.From(new Key(Tone.Parse(words[0]), mode)).Select(t => t.ToString()));
    }

    [Theory]
    [InlineData("Gb", "Gb Eb7 Ab7 Db7 D")] // the flat sixth of G flat is named D, not E double flat
    [InlineData("B", "B G#7 C#7 F#7 G")]
    [InlineData("Db", "Db Bb7 Eb7 Ab7 A")]
    public void Chords_in_far_keys_are_named_readably(string tonic, string chords)
    {
        var tune = ChordLine.Tune("F D7 | G7 C7 | Db | F");
        var moved = Register.Move(tune, Register.For(tune, Tone.Parse(tonic)));
        var names = moved.Bars.Take(3).SelectMany(b => b.Chords).Select(c => c.Chord.ToString());
        Assert.Equal(chords.Split(' '), names);
    }

    [Fact]
    public void A_tune_without_chords_keeps_its_key()
    {
        var tune = Tunes.Abc("M:2/4\nL:1/8\nK:D", "DFAF|d4|");
        Assert.Equal(tune, ChordKey.Settle(tune));
    }
}
