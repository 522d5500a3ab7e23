namespace Stridewright.Hands.Tests;

public sealed class KeyboardTests
{
    // Key centres: a research re-implementation of Jacobs 2001 (Music Perception 18(4)); stretches computed from them
    // for the three octave widths of the keyboard-size research community.
    [Theory]
    [InlineData(165.1, 3, 35.2, 41.3, 47.3)]
    [InlineData(165.1, 4, 46.8, 55.0, 61.4)]
    [InlineData(165.1, 7, 94.1, 96.3, 102.7)]
    [InlineData(165.1, 9, 117.8, 123.8, 129.9)]
    [InlineData(165.1, 10, 131.9, 137.6, 141.9)]
    [InlineData(165.1, 12, 165.1, 165.1, 165.1)]
    [InlineData(165.1, 13, 173.2, 178.9, 188.8)]
    [InlineData(165.1, 14, 188.3, 192.6, 198.3)]
    [InlineData(165.1, 15, 200.3, 206.4, 212.4)]
    [InlineData(165.1, 16, 211.9, 220.1, 226.5)]
    [InlineData(165.1, 17, 227.5, 233.9, 236.1)]
    [InlineData(152.4, 3, 32.5, 38.1, 43.7)]
    [InlineData(152.4, 4, 43.2, 50.8, 56.7)]
    [InlineData(152.4, 7, 86.9, 88.9, 94.8)]
    [InlineData(152.4, 9, 108.7, 114.3, 119.9)]
    [InlineData(152.4, 10, 121.7, 127.0, 131.0)]
    [InlineData(152.4, 12, 152.4, 152.4, 152.4)]
    [InlineData(152.4, 13, 159.8, 165.1, 174.2)]
    [InlineData(152.4, 14, 173.8, 177.8, 183.1)]
    [InlineData(152.4, 15, 184.9, 190.5, 196.1)]
    [InlineData(152.4, 16, 195.6, 203.2, 209.1)]
    [InlineData(152.4, 17, 210.0, 215.9, 217.9)]
    [InlineData(139.7, 3, 29.8, 34.9, 40.0)]
    [InlineData(139.7, 4, 39.6, 46.6, 52.0)]
    [InlineData(139.7, 7, 79.6, 81.5, 86.9)]
    [InlineData(139.7, 9, 99.7, 104.8, 109.9)]
    [InlineData(139.7, 10, 111.6, 116.4, 120.1)]
    [InlineData(139.7, 12, 139.7, 139.7, 139.7)]
    [InlineData(139.7, 13, 146.5, 151.3, 159.7)]
    [InlineData(139.7, 14, 159.3, 163.0, 167.8)]
    [InlineData(139.7, 15, 169.5, 174.6, 179.7)]
    [InlineData(139.7, 16, 179.3, 186.3, 191.7)]
    [InlineData(139.7, 17, 192.5, 197.9, 199.8)]
    public void Stretches_by_interval_are_the_published_ones(
        double octave,
        int semitones,
        double least,
        double mean,
        double most
    )
    {
        var keyboard = new Keyboard(octave);
        var stretches = Enumerable.Range(36, 12).Select(k => keyboard.Distance(k, k + semitones)).ToList();
        Assert.Equal(least, stretches.Min(), 0.0501);
        Assert.Equal(mean, stretches.Average(), 0.0501);
        Assert.Equal(most, stretches.Max(), 0.0501);
    }

    // Tenths by key on a 164 mm octave, from the same key centres.
    [Theory]
    [InlineData("C3", "E4", 211.0)]
    [InlineData("G2", "B3", 210.5)]
    [InlineData("F2", "A3", 210.5)]
    [InlineData("D3", "F#4", 219.0)]
    [InlineData("Bb2", "D4", 219.0)]
    [InlineData("Eb3", "G4", 220.5)]
    [InlineData("A2", "C#4", 220.5)]
    [InlineData("Ab2", "C4", 222.5)]
    [InlineData("E3", "G#4", 222.5)]
    [InlineData("Db3", "F4", 225.0)]
    [InlineData("B2", "D#4", 225.0)]
    [InlineData("F#2", "A#3", 218.0)]
    [InlineData("A2", "C4", 211.0)]
    [InlineData("E3", "G4", 211.0)]
    public void Tenths_differ_by_key(string low, string high, double mm) =>
        Assert.Equal(mm, new Keyboard(164).Distance(Written.Key(low), Written.Key(high)), 1e-9);

    // Common practice: 88 keys from A0 to C8, 36 of them black.
    [Fact]
    public void A_piano_has_88_keys_of_which_36_are_black()
    {
        var keys = Enumerable.Range(Keyboard.LowestKey, Keyboard.HighestKey - Keyboard.LowestKey + 1).ToList();
        Assert.Equal((88, 36), (keys.Count, keys.Count(Keyboard.IsBlack)));
        Assert.Equal((Written.Key("A0"), Written.Key("C8")), (keys[0], keys[^1]));
    }
}
