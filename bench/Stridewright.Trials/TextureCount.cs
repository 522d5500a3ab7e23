using Stridewright.Arranging;

namespace Stridewright.Trials;

/// <summary>Shares and persistence of the right hand's textures.</summary>
internal sealed class TextureCount
{
    private readonly int[] _seen = new int[5];
    private readonly int[] _followed = new int[5];
    private readonly int[] _kept = new int[5];

    public void Add(RightLine line)
    {
        var before = -1;
        foreach (var note in line.Notes)
        {
            var kind = Kind(note);
            _seen[kind]++;
            if (before >= 0)
            {
                _followed[before]++;
                _kept[before] += kind == before ? 1 : 0;
            }
            before = kind;
        }
    }

    public double Share(int kind) => (_seen[kind] + 0.5) / (_seen.Sum() + 2.5);

    public double Persistence(int kind) => (_kept[kind] + 0.5) / (_followed[kind] + 1.0);

    public override string ToString() =>
        string.Join(
            ", ",
            Enumerable
                .Range(0, 5)
                .Select(k => FormattableString.Invariant($"{(Texture)k} {Share(k):0.000} stays {Persistence(k):0.00}"))
        );

    private static int Kind(RightNote note) =>
        note.Below.Count == 0 ? 0
        : note.Top.Midi - note.Lowest == 12
            ? note.Below.Count == 1 ? 2
                : 3
        : note.Below.Count == 1 ? 1
        : 4;
}
