using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Makes a harmony richer, in kinds of change that are common practice of this music. A change is possible where the
/// tune's notes on the beats belong to its chords; of changes that meet in one place the worthiest set is taken (exact, by
/// the way of weighted intervals). Chords of a bar that is not touched stay to the letter.
/// </summary>
public static class Enriching
{
    /// <summary>The tune with its chords changed, and the changes in order. A tune without chords stays as it is.</summary>
    public static (Tune Tune, ValueList<HarmonyChange> Changes) Apply(Tune tune, HarmonyWish wish, Feel feel)
    {
        ArgumentNullException.ThrowIfNull(tune);
        ArgumentNullException.ThrowIfNull(wish);
        if (wish.Richness == Richness.Plain)
        {
            return (tune, []);
        }
        var beats = HarmonyGrid.Of(tune);
        var ideas = new HarmonyIdeas(beats, feel)
            .All()
            .Where(idea => !wish.Without.Contains(idea.Kind) && Worth(idea.Kind, wish.Richness) > 0)
            .Where(idea => !wish.WithoutAt.Contains(new(idea.Kind, tune.Bars[beats.Spots[idea.Start].Cut.Bar].Number)))
            .Where(beats.Suits)
            .ToList();
        var taken = Best(ideas, beats.Spots.Length, wish.Richness);
        var chords = beats.Spots.Select(s => s.Chord).ToArray();
        var changes = new List<HarmonyChange>();
        foreach (var idea in taken)
        {
            changes.Add(
                new HarmonyChange(
                    tune.Bars[beats.Spots[idea.Start].Cut.Bar].Number,
                    idea.Kind,
                    Named(chords.AsSpan(idea.Start, idea.Chords.Length)),
                    Named(idea.Chords)
                )
            );
            idea.Chords.CopyTo(chords, idea.Start);
        }
        return (beats.Written(tune, chords), changes.ToValueList());
    }

    // In seasoned harmony a change also costs, so that not every place is taken.
    private static int Worth(HarmonyChangeKind kind, Richness richness)
    {
        var worth = kind switch
        {
            HarmonyChangeKind.StrainEnding => 14,
            HarmonyChangeKind.CircleOfFifths => 8,
            HarmonyChangeKind.MinorSubdominant => 6,
            HarmonyChangeKind.PassingDiminished => 6,
            HarmonyChangeKind.SecondaryDominant => 5,
            HarmonyChangeKind.Turnaround => 5,
            HarmonyChangeKind.ChromaticBass => 4,
            HarmonyChangeKind.Tritone => 4,
            HarmonyChangeKind.TwoFive => 4,
            HarmonyChangeKind.CommonToneDiminished => 3,
            _ => 2,
        };
        return richness == Richness.Rich ? worth : worth - 3;
    }

    private static List<HarmonyIdea> Best(List<HarmonyIdea> ideas, int spots, Richness richness)
    {
        // Seasoned: after a change two bars or so have peace.
        var peace = richness == Richness.Rich ? 0 : 4;
        var ends = ideas.ToLookup(i => i.Start + i.Chords.Length - 1);
        var worth = new int[spots + 1];
        var last = new HarmonyIdea?[spots + 1];
        for (var s = 0; s < spots; s++)
        {
            worth[s + 1] = worth[s];
            foreach (var idea in ends[s])
            {
                var total = worth[Math.Max(0, idea.Start - peace)] + Worth(idea.Kind, richness);
                if (total > worth[s + 1])
                {
                    (worth[s + 1], last[s + 1]) = (total, idea);
                }
            }
        }
        var taken = new List<HarmonyIdea>();
        for (var s = spots; s > 0; )
        {
            if (last[s] is { } idea && worth[s] != worth[s - 1])
            {
                taken.Add(idea);
                s = Math.Max(0, idea.Start - peace);
            }
            else
            {
                s--;
            }
        }
        taken.Reverse();
        return taken;
    }

    private static string Named(ReadOnlySpan<ChordSymbol?> chords)
    {
        var names = new List<string>();
        foreach (var chord in chords)
        {
            if (chord is not null && (names.Count == 0 || names[^1] != chord.ToString()))
            {
                names.Add(chord.ToString());
            }
        }
        return string.Join(' ', names);
    }
}

/// <summary>A change that could be made.</summary>
/// <param name="Start">Index of its first spot.</param>
/// <param name="Chords">What would stand in its spots.</param>
internal sealed record HarmonyIdea(HarmonyChangeKind Kind, int Start, ChordSymbol[] Chords);
