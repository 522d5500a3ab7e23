using Stridewright.Music;

namespace Stridewright.Arranging.Tests.Harmony;

/// <summary>Voice-leading distances computed from the definition (taxicab norm over the best pairing).</summary>
public sealed class VoiceLeadingTests
{
    [Theory]
    [InlineData("C", "Cm", 1)]
    [InlineData("C", "Em", 1)]
    [InlineData("C", "C+", 1)]
    [InlineData("C", "Am", 2)]
    [InlineData("C", "E", 2)]
    [InlineData("C", "Ab", 2)]
    [InlineData("C", "Fm", 2)]
    [InlineData("C", "F", 3)]
    [InlineData("C", "G", 3)]
    [InlineData("C", "A", 3)]
    [InlineData("C", "Eb", 3)]
    [InlineData("C", "Db", 3)]
    [InlineData("C", "Gm", 4)]
    [InlineData("C", "Dm", 5)]
    [InlineData("C", "Bdim", 5)]
    [InlineData("C", "D", 6)]
    [InlineData("C", "Bb", 6)]
    [InlineData("C", "F#", 6)]
    [InlineData("Dm7", "G7", 3)]
    [InlineData("G7", "Cmaj7", 3)]
    [InlineData("Am7", "D7", 3)]
    [InlineData("C7", "F7", 4)]
    [InlineData("D7", "G7", 4)]
    [InlineData("A7", "D7", 4)]
    [InlineData("Ab7", "G7", 4)]
    [InlineData("C7", "Cdim7", 3)]
    public void Distance_of_two_chords_is_the_least_over_all_pairings(string from, string to, int distance)
    {
        Assert.Equal(distance, VoiceLeading.OfChords(Read(from), Read(to)));
        Assert.Equal(distance, VoiceLeading.OfChords(Read(to), Read(from)));
    }

    private static ChordSymbol Read(string text) =>
        ChordText.TryParse(text, out var chord) ? chord : throw new FormatException(text);
}
