using System.Globalization;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What changes from one way of a bar to another, in a musician's words.</summary>
internal static class WayWords
{
    public static ValueList<string> Of(Lattice lattice, KeptBar before, KeptBar after)
    {
        return (before.Hand == Hand.Left ? Left(before, after) : Right(lattice, before, after)).ToValueList();
    }

    private static IEnumerable<string> Left(KeptBar before, KeptBar after)
    {
        foreach (var at in before.Strokes.Concat(after.Strokes).Select(s => s.At).Distinct().Order())
        {
            var was = before.Strokes.FirstOrDefault(s => s.At == at);
            var becomes = after.Strokes.FirstOrDefault(s => s.At == at);
            if (was is null)
            {
                yield return WayMessages.Added(at, Named(becomes!));
            }
            else if (becomes is null)
            {
                yield return WayMessages.Gone(at, Named(was));
            }
            else if (IsInversion(was, becomes))
            {
                yield return WayMessages.Inversion(at, Keys(becomes), Keys(was));
            }
            else if (!was.Pitches.Equals(becomes.Pitches) || was.Rolled != becomes.Rolled || was.Role != becomes.Role)
            {
                yield return WayMessages.Instead(at, Named(becomes), Named(was));
            }
            else if (was.Length != becomes.Length)
            {
                yield return WayMessages.Lasts(at, Named(becomes), becomes.Length, was.Length);
            }
        }
    }

    private static IEnumerable<string> Right(Lattice lattice, KeptBar before, KeptBar after)
    {
        var (start, end) = (lattice.Bars[after.Bar].Start, lattice.Bars[after.Bar].End);
        foreach (var note in Tunes(before).Union(Tunes(after)).Order())
        {
            var was = before.Strokes.FirstOrDefault(s => s.Tune == note);
            var becomes = after.Strokes.FirstOrDefault(s => s.Tune == note);
            var place = lattice.Notes[note].Start;
            var plain = lattice.Tick * (place - start);
            if (was is null || becomes is null)
            {
                var (pitch, isHere) = ((was ?? becomes)!.Pitches[^1], becomes is not null);
                yield return place < start ? WayMessages.OfBarBefore(pitch, isHere)
                : place >= end ? WayMessages.OfBarAfter(pitch, isHere)
                : WayMessages.OfThisBar(pitch, isHere);
            }
            else if (was.At != becomes.At)
            {
                yield return WayMessages.Placed(becomes.Pitches[^1], becomes.At - plain, was.At - plain);
            }
            else if (!was.Pitches.Equals(becomes.Pitches))
            {
                yield return WayMessages.Thickness(becomes.Pitches[^1], Thickness(becomes), Thickness(was));
            }
            if (was is not null && becomes is not null && was.Graces.Count != becomes.Graces.Count)
            {
                yield return WayMessages.Crushed(becomes.Pitches[^1], becomes.Graces.Count > 0);
            }
        }
        var fills = (Old: Fills(before), New: Fills(after));
        if (!fills.Old.SequenceEqual(fills.New))
        {
            yield return WayMessages.Fills(fills.New, fills.Old);
        }
    }

    private static IEnumerable<int> Tunes(KeptBar bar) => bar.Strokes.Select(s => s.Tune).OfType<int>();

    private static List<string> Fills(KeptBar bar) =>
        [.. bar.Strokes.Where(s => s.Tune is null).Select(s => WayMessages.At(Keys(s), s.At))];

    private static string Keys(KeptStroke stroke) => string.Join(' ', stroke.Pitches);

    private static string Named(KeptStroke stroke) =>
        stroke.Role switch
        {
            "bass" when stroke.Rolled => WayMessages.Rolled(Keys(stroke)),
            "bass" when Width(stroke) == 12 => WayMessages.Octave(stroke.Pitches[0]),
            "bass" when Width(stroke) > 12 => WayMessages.Tenth(stroke.Pitches[0]),
            "run" when Width(stroke) == 12 => WayMessages.RunOctave(stroke.Pitches[0]),
            var role => string.Create(CultureInfo.InvariantCulture, $"{role} {Keys(stroke)}"),
        };

    private static string Thickness(KeptStroke stroke) =>
        (Width(stroke), stroke.Pitches.Count) switch
        {
            (_, 1) => WayMessages.Single,
            (12, 2) => WayMessages.InOctaves,
            (12, _) => WayMessages.FullOctave(Keys(stroke)),
            _ => WayMessages.Chord(Keys(stroke)),
        };

    private static int Width(KeptStroke stroke) => stroke.Pitches[^1].Midi - stroke.Pitches[0].Midi;

    private static bool IsInversion(KeptStroke a, KeptStroke b) =>
        a.Role == "chord"
        && b.Role == "chord"
        && !a.Pitches.Equals(b.Pitches)
        && a.Pitches.Select(p => p.Midi % 12).ToHashSet().SetEquals(b.Pitches.Select(p => p.Midi % 12));
}
