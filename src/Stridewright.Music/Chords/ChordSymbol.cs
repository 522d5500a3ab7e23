namespace Stridewright.Music;

/// <summary>
/// A chord symbol: root, kind, changed degrees and bass. A kind of <see cref="ChordKind.None"/> means N.C.
/// </summary>
public sealed record ChordSymbol(Tone Root, ChordKind Kind)
{
    public static readonly ChordSymbol NoChord = new(default, ChordKind.None);

    public ValueList<ChordDegree> Degrees { get; init; } = [];

    /// <summary>The bass tone where it is not the root.</summary>
    public Tone? Bass { get; init; }

    public bool IsNoChord => Kind == ChordKind.None;

    /// <summary>
    /// Intervals of the chord's tones above the root, spelled, in order of degree. Source of the kinds: MusicXML 4.0
    /// definition text; the spelling is the usual stack of thirds.
    /// </summary>
    public ValueList<Interval> Intervals => ChordKinds.IntervalsOf(this);

    /// <summary>The spelled tones of the chord, root first; the bass is not among them unless it is a chord tone.</summary>
    public ValueList<Tone> Tones => Intervals.Select(i => Root.Plus(i)).ToValueList();

    /// <summary>Sounding pitch classes as a set of twelve bits, bit 0 = C; a foreign bass tone is included.</summary>
    public int PitchClassSet
    {
        get
        {
            var set = 0;
            foreach (var interval in Intervals)
            {
                set |= 1 << Root.Plus(interval).PitchClass;
            }
            return Bass is { } bass ? set | (1 << bass.PitchClass) : set;
        }
    }

    /// <summary>The tone expected in the bass.</summary>
    public Tone Lowest => Bass ?? Root;

    public ChordSymbol Plus(Interval interval) => this with { Root = Root.Plus(interval), Bass = Bass?.Plus(interval) };

    /// <summary>The symbol in plain text, such as <c>F#m7b5/C</c>.</summary>
    public override string ToString() => ChordText.Format(this);
}
