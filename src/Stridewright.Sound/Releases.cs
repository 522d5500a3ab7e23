using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>Sees that a hand lets a key go before it strikes it again.</summary>
internal static class Releases
{
    private const long Gap = 20; // ticks between release and the next stroke, where there is room

    /// <summary>The strokes by tick and key; of two on one key at one tick the longer stays.</summary>
    public static ValueList<KeyStroke> BeforeRestrikes(List<KeyStroke> strokes)
    {
        var kept = new List<KeyStroke>(strokes.Count);
        foreach (var line in strokes.GroupBy(s => (s.Hand, s.Key)))
        {
            KeyStroke? before = null;
            foreach (var stroke in line.OrderBy(s => s.Tick).ThenByDescending(s => s.Length))
            {
                if (before is null || stroke.Tick > before.Tick)
                {
                    AddReleased(kept, before, stroke.Tick);
                    before = stroke;
                }
            }
            AddReleased(kept, before, long.MaxValue);
        }
        return kept.OrderBy(s => s.Tick).ThenBy(s => s.Key).ThenBy(s => s.Hand).ToValueList();
    }

    private static void AddReleased(List<KeyStroke> kept, KeyStroke? stroke, long next)
    {
        if (stroke is null)
        {
            return;
        }
        var room = next - stroke.Tick;
        var longest = room - Math.Min(Gap, room / 4);
        kept.Add(stroke.Length > longest ? stroke with { Length = longest } : stroke);
    }
}
