using Stridewright.Hands;

namespace Stridewright.Arranging;

/// <summary>What every stage works from: the tune on its lattice, the brief, the hands and the tempo.</summary>
internal sealed record Stage(Lattice Lattice, Brief Brief, Prices Prices, double SecondsPerTick)
{
    public Reach Reach { get; } = new(Brief.Hands);

    /// <summary>Hash of the seed and the tune's notes, from which a stage draws its variety.</summary>
    /// <param name="salt">One number per stage.</param>
    public ulong Seed(int salt) => Seed(Lattice, Brief, salt);

    public static ulong Seed(Lattice lattice, Brief brief, int salt)
    {
        var hash = Variety.Mix((ulong)salt, brief.Seed);
        foreach (var note in lattice.Notes)
        {
            hash = Variety.Mix(hash, note.Key * 64L + note.Length);
        }
        return hash;
    }

    /// <summary>Fastest move from a tick on, in bits per second: what the judge allows in its bar's metre.</summary>
    public double LeapLimit(int tick) => Leap.Limit(Lattice.Bars[Lattice.BarAt(tick)].Metre);
}
