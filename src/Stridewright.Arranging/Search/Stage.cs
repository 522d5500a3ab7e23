using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What every stage works from: the tune on its lattice, the brief, the hands and the tempo.</summary>
internal sealed record Stage(Lattice Lattice, Brief Brief, Prices Prices, double SecondsPerTick)
{
    public Reach RightReach { get; } = new(Brief.Hands, Hand.Right);

    /// <summary>Bars that go without, as settled.</summary>
    public ValueList<EasedBar> Eased
    {
        init
        {
            foreach (var (bar, ease) in value.Where(e => e.Bar < _eased.Length))
            {
                _eased[bar] = ease;
            }
        }
    }

    private readonly Ease[] _eased = new Ease[Lattice.Bars.Length];

    /// <summary>What a bar goes without.</summary>
    public Ease EaseOf(int bar) => _eased[bar];

    public Reach LeftReach { get; } = new(Brief.Hands, Hand.Left);

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

    /// <summary>Fastest move from a tick on, in bits per second: what the judge allows the hand in its bar's metre.</summary>
    public double LeapLimit(int tick, Hand hand) =>
        Brief.Hands.Of(hand).LeapLimit(Lattice.Bars[Lattice.BarAt(tick)].Metre);
}
