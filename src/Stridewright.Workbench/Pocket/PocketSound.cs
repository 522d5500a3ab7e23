using Stridewright.Music;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Pocket;

/// <summary>What of the recorded piano goes into a file, and performances as its page plays them.</summary>
internal static class PocketSound
{
    private const int Decimals = 4; // of seconds: a tenth of a millisecond

    /// <summary>Every second recorded key, as on the page: no key is stretched further than a minor third.</summary>
    private static readonly ValueList<int> Keys = PianoFiles.Keys.Where((_, i) => i % 2 == 0).ToValueList();

    /// <summary>The recorded keys that the keys of these performances are played on, low to high.</summary>
    public static IEnumerable<int> KeysFor(IEnumerable<Heard> heard) =>
        heard.SelectMany(h => h.Notes).Select(n => Nearest(n.Key)).Distinct().Order();

    /// <summary>A performance with times to a tenth of a millisecond, in which nobody hears a difference and which makes it
    /// half as long.</summary>
    public static Heard Rounded(Heard heard) =>
        new(
            Round(heard.Seconds),
            heard
                .Notes.Select(n => n with { At = Round(n.At), Length = Round(n.Length), Rings = Round(n.Rings) })
                .ToValueList(),
            heard.Pedal.Select(p => p with { At = Round(p.At) }).ToValueList(),
            heard
                .Bars.Select(b =>
                    b with
                    {
                        At = Round(b.At),
                        Length = Round(b.Length),
                        Beats = b.Beats.Select(Round).ToValueList(),
                    }
                )
                .ToValueList()
        );

    // As the page chooses: of two that are as near the higher.
    private static int Nearest(int key) => Keys.MinBy(k => (Math.Abs(k - key), -k));

    private static double Round(double seconds) => Math.Round(seconds, Decimals);
}
