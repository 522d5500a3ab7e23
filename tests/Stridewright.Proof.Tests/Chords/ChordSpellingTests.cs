using Stridewright.Music;

namespace Stridewright.Proof.Tests.Chords;

/// <summary>
/// Chord tones, spelled, on the twenty-one roots with at most one accidental, against the npm library "tonal" 6.5.0.
/// </summary>
public sealed class ChordSpellingTests(TheoryLibrary library)
{
    private static readonly Tone[] Roots = [.. Enumerable.Range(-8, 21).Select(fifths => new Tone(fifths))];

    public static TheoryData<ChordKind> Kinds => new(Enum.GetValues<ChordKind>().Where(k => k != ChordKind.None));

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_kind_is_spelled_as_the_library_spells_it(ChordKind kind)
    {
        foreach (var root in Roots)
        {
            var chord = new ChordSymbol(root, kind);
            var theirs = library.Read(TheirName(chord.ToString(), root));
            if (ChordDifferences.Kinds.TryGetValue(kind, out var differ))
            {
                Assert.NotEqual(differ.Ours, differ.Theirs);
                Assert.Equal(differ.Theirs == "" ? "" : library.Above(root.ToString(), differ.Theirs), theirs);
                theirs = library.Above(root.ToString(), differ.Ours);
            }
            Assert.Equal(theirs, string.Join(' ', chord.Tones));
        }
    }

    [Fact]
    public void Each_name_of_the_library_is_read_as_the_library_reads_it()
    {
        Assert.True(library.Kinds.Count > 200);
        var explained = new HashSet<string>();
        foreach (var (name, intervals) in library.Kinds)
        {
            foreach (var root in Roots)
            {
                var read = ChordText.TryParse(root + name, out var chord);
                if (name == "b9sus")
                {
                    // An accidental after the root belongs to the root: Cb9sus is on C flat; F#b9sus is nothing.
                    Assert.Equal(root.Alter <= 0, read);
                    Assert.True(!read || chord.Root == root.PlusFifths(-7));
                    continue;
                }
                if (ChordDifferences.Refused.ContainsKey(name))
                {
                    Assert.False(read, root + name);
                    explained.Add(name);
                    continue;
                }
                Assert.True(read, root + name);
                Assert.Equal(root, chord.Root);
                var ours = intervals;
                if (ChordDifferences.Names.TryGetValue(name, out var differ))
                {
                    Assert.NotEqual(Sorted(library.Above("C", differ.Ours)), Sorted(library.Above("C", intervals)));
                    ours = differ.Ours;
                    explained.Add(name);
                }
                Assert.Equal(
                    (root + name, Sorted(library.Above(root.ToString(), ours))),
                    (root + name, Sorted(chord.Tones))
                );
            }
        }
        Assert.Equal(ChordDifferences.Refused.Count + ChordDifferences.Names.Count, explained.Count);
    }

    [Fact]
    public void Each_of_our_names_is_read_by_the_library_or_stands_among_the_differences()
    {
        var unread = new HashSet<string>();
        foreach (var name in ChordSuffix.Names)
        {
            foreach (var root in Roots)
            {
                Assert.True(ChordText.TryParse(root + name, out var chord), root + name);
                var theirs = library.Read(root + name);
                if (theirs == "")
                {
                    unread.Add(name);
                    theirs = WithoutTheirName(name, root);
                }
                else if (ChordDifferences.Names.TryGetValue(name, out var differ))
                {
                    theirs = library.Above(root.ToString(), differ.Ours);
                }
                Assert.Equal((root + name, Sorted(theirs)), (root + name, Sorted(chord.Tones)));
            }
        }
        var explained = ChordDifferences
            .OtherWays.Select(row => row.Ours)
            .Concat(ChordDifferences.NotTheirs.Select(row => row.Ours))
            .SelectMany(names => names.Split(' '));
        Assert.Equal(explained.Order(StringComparer.Ordinal), unread.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_bass_after_a_slash_is_the_lowest_note()
    {
        foreach (var root in Roots)
        {
            foreach (var bass in Roots)
            {
                var symbol = $"{root}m7/{bass}";
                Assert.True(ChordText.TryParse(symbol, out var chord), symbol);
                Assert.Equal((symbol, library.Lowest(symbol)), (symbol, chord.Lowest.ToString()));
            }
        }
    }

    // The library knows no brackets: what we write with them it reads without.
    private static string TheirName(string symbol, Tone root) =>
        root
        + (
            ChordDifferences
                .OtherWays.Where(row => row.Ours.Split(' ').Contains(symbol[root.ToString().Length..]))
                .Select(row => row.Theirs)
                .SingleOrDefault()
            ?? symbol[root.ToString().Length..]
        );

    private string WithoutTheirName(string name, Tone root)
    {
        foreach (var (theirs, ours) in ChordDifferences.OtherWays)
        {
            if (ours.Split(' ').Contains(name))
            {
                return library.Read(root + theirs);
            }
        }
        var own = ChordDifferences.NotTheirs.SingleOrDefault(row => row.Ours.Split(' ').Contains(name));
        Assert.False(own.Ours is null, $"{name}: the library does not read it, and no table says why");
        return library.Above(root.ToString(), own.Intervals);
    }

    private static string Sorted(string notes) =>
        Sorted(notes.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(note => Tone.Parse(note)));

    private static string Sorted(IEnumerable<Tone> tones) => string.Join(' ', tones.Order());
}
