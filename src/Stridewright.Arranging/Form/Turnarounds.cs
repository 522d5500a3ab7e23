using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The way back at the end of a strain: I, VI7, II7, V7 in half bars of its last two bars, or in quarters of its last one
/// where only that has come to the tonic (common practice). What the tune strikes there must belong to the new harmony;
/// what it holds is let go where it does not.
/// </summary>
internal static class Turnarounds
{
    private const int Steps = 4;

    // Shorter bars have no room for four harmonies.
    private static readonly ScoreTime LeastBar = ScoreTime.Whole;

    /// <summary>The strain with its last bars turned back; null where the tune leaves no room.</summary>
    public static List<TuneBar>? Applied(List<TuneBar> strain)
    {
        List<TuneBar> bars = [.. strain.SkipLast(1), PickUps.Filled(strain[^1])];
        return (bars.Count >= 2 ? Turned(bars, 2) : null)
            ?? (bars[^1].Metre.BarLength >= LeastBar ? Turned(bars, 1) : null);
    }

    private static List<TuneBar>? Turned(List<TuneBar> bars, int count)
    {
        var last = bars[^count..];
        var (key, full) = (last[0].Key, last[0].Metre.BarLength);
        var each = full * count / Steps;
        if (
            !last.TrueForAll(b => b.Length == full && b.Metre.BarLength == full)
            || last[0].Chords.Any(c => c.At < each && c.Chord.Root != key.Tonic)
        )
        {
            return null;
        }
        var harmonies = Harmonies(key);
        var turned = last.Select((bar, b) => Turned(bar, each, harmonies.AsSpan(b * Steps / count))).ToList();
        return turned.TrueForAll(b => b is not null) ? [.. bars.SkipLast(count), .. turned.OfType<TuneBar>()] : null;
    }

    // Null where a note does not belong.
    private static TuneBar? Turned(TuneBar bar, ScoreTime each, ReadOnlySpan<ChordSymbol> harmonies)
    {
        var notes = new List<TuneNote>();
        for (var i = 0; i < bar.Notes.Count; i++)
        {
            var note = bar.Notes[i];
            var step = (int)(note.At.Per(each).Numerator / note.At.Per(each).Denominator);
            if (!Belongs(note, harmonies[step]))
            {
                return null;
            }
            var end = each * (step + 1);
            while (++step < harmonies.Length && end < bar.Length && Belongs(note, harmonies[step]))
            {
                end += each;
            }
            notes.Add(PickUps.Until(note, end));
        }
        var chords = new List<PlacedChord>();
        for (var at = ScoreTime.Zero; at < bar.Length; at += each)
        {
            chords.Add(new PlacedChord(at, harmonies[chords.Count]));
        }
        return bar with { Notes = notes.ToValueList(), Chords = chords.ToValueList() };
    }

    private static bool Belongs(TuneNote note, ChordSymbol chord) =>
        (chord.PitchClassSet >> (note.Pitch.Midi % 12) & 1) == 1;

    private static ChordSymbol[] Harmonies(Key key) =>
        [
            Additions.Tonic(key),
            new(key.Tonic.PlusFifths(key.IsMinor ? -4 : 3), ChordKind.Dominant),
            new(key.Tonic.PlusFifths(2), key.IsMinor ? ChordKind.HalfDiminished : ChordKind.Dominant),
            Additions.Dominant(key),
        ];
}
