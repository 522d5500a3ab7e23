using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The key of each bar, modulations that no signature announces included: the cheapest path through the 24 keys, where a
/// bar is paid for by the pitch classes it has and has not, after how often they occur in a segment of a key (Kostka–Payne
/// figures in Temperley, Music and Probability, 2007), and a change of key is dear.
/// </summary>
internal static class LocalKeys
{
    private static readonly double[] Major = [.748, .060, .488, .082, .670, .460, .096, .715, .104, .366, .057, .400];
    private static readonly double[] Minor = [.712, .084, .474, .618, .049, .460, .105, .747, .404, .067, .133, .330];

    /// <summary>Of leaving a key: a section must speak for the other one.</summary>
    private const long Change = 9000;

    /// <summary>The same where a strain begins.</summary>
    private const long ChangeOfStrain = 3000;

    /// <summary>Of a bar in another key than its signature's.</summary>
    private const long Foreign = 350;

    /// <summary>The same where the written key is one of the old modes, whose tones another major or minor key has too.</summary>
    private const long Modal = 3000;

    public static Key[] Of(Tune tune)
    {
        var path = new LayeredPath();
        for (var b = 0; b < tune.Bars.Count; b++)
        {
            var bar = tune.Bars[b];
            var present = bar.Notes.Aggregate(0, (set, note) => set | 1 << note.Pitch.Tone.PitchClass);
            var written = Index(bar.Key);
            // Where the signature changes, so does the key.
            var turns = b > 0 && Index(tune.Bars[b - 1].Key) != written;
            var change = BarSeams.StrainBefore(tune, b) ? ChangeOfStrain : Change;
            path.OpenLayer(24);
            for (var to = 0; to < 24; to++)
            {
                var own =
                    Price(present, to)
                    + (
                        to == written ? 0
                        : bar.Key.Mode > Mode.Minor ? Modal
                        : Foreign
                    );
                if (b == 0)
                {
                    path.Start(to, own, to);
                    continue;
                }
                for (var from = 0; from < 24; from++)
                {
                    var way = from == to || (turns && to == written) ? 0 : change;
                    path.Offer(from, to, path.EarlierCosts[from] + own + way, to);
                }
            }
        }
        var steps = path.Best()!.Value.Steps;
        return [.. tune.Bars.Select((bar, b) => Named(steps[b].Node, bar.Key))];
    }

    private static int Index(Key key) => key.Tonic.PitchClass * 2 + (key.IsMinor ? 1 : 0);

    // The written key where it is meant, else the tonic's spelling nearest to it.
    private static Key Named(int index, Key written)
    {
        if (index == Index(written))
        {
            return written;
        }
        var mode = index % 2 == 1 ? Mode.Minor : Mode.Major;
        return Enumerable
            .Range(-14, 29)
            .Select(fifths => new Key(new Tone(fifths), mode))
            .Where(key => key.Tonic.PitchClass == index / 2)
            .MinBy(key => Math.Abs(key.Signature - written.Signature));
    }

    private static long Price(int present, int key)
    {
        if (present == 0)
        {
            return 0;
        }
        var profile = key % 2 == 1 ? Minor : Major;
        var sum = 0.0;
        for (var pc = 0; pc < 12; pc++)
        {
            var share = profile[(pc - key / 2 + 12) % 12];
            sum -= Math.Log((present >> pc & 1) == 1 ? share : 1 - share);
        }
        return (long)(1000 * sum);
    }
}
