using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// The left hand where its thumb has the tune: every note of the tune is struck in its place, and on the strong places a
/// tone of the chord under it as far down as the hand reaches, so that the tune lies on a bass of its own.
/// </summary>
internal sealed class ThumbShapes
{
    private const int LowestBass = 36,
        NearestBass = 3;
    private const long Alone = 4000,
        OffRoot = 900,
        OnFifth = 500,
        PerSemitone = 60;
    private readonly Stage _stage;
    private readonly Lattice _lattice;
    private readonly Pitch?[] _thumb;

    public ThumbShapes(Stage stage) => (_stage, _lattice, _thumb) = (stage, stage.Lattice, ThumbTune.Of(stage.Lattice));

    /// <summary>Places of the bars whose tune is in the thumb, struck there or held over from before: where the tune strikes,
    /// and the basses.</summary>
    public LeftSlot[] Apply(LeftSlot[] slots)
    {
        var bars = Enumerable.Range(0, _thumb.Length).Where(i => _thumb[i] is not null).SelectMany(Sounded).ToHashSet();
        if (bars.Count == 0)
        {
            return slots;
        }
        var found = slots.Where(s => !bars.Contains(s.Bar)).ToList();
        foreach (var bar in bars)
        {
            var basses = slots.Where(s => s.Bar == bar && s.IsBass && !s.IsLast).ToDictionary(s => s.Tick);
            var struck = Enumerable.Range(0, _thumb.Length).Where(i => InBar(i, bar)).ToDictionary(At);
            var ticks = basses.Keys.Concat(struck.Keys).Distinct().Order().ToList();
            for (var i = 0; i < ticks.Count; i++)
            {
                var (tick, end) = (ticks[i], i + 1 < ticks.Count ? ticks[i + 1] : _lattice.Bars[bar].End);
                var place = basses.GetValueOrDefault(tick) ?? new LeftSlot(tick, end, bar, false, false, false, false);
                found.Add(
                    place with
                    {
                        End = end,
                        Thumb = struck.TryGetValue(tick, out var note) ? note : null,
                        IsUnderThumb = true,
                    }
                );
            }
        }
        return [.. found.OrderBy(s => s.Tick)];
    }

    /// <summary>True where a place is the thumb's own, or under it.</summary>
    public bool Has(LeftSlot slot) => slot.Thumb is not null || Sounding(slot) is not null;

    /// <summary>The pitch of the thumb's note that is struck or sounds on at a place; null: none.</summary>
    public Pitch? At(LeftSlot slot) => slot.Thumb is { } note ? _thumb[note] : Sounding(slot);

    public IEnumerable<LeftShape> Of(LeftSlot slot)
    {
        var thumb = At(slot)!.Value;
        var isStruck = slot.Thumb is not null;
        if (isStruck)
        {
            yield return Shape(LeftKind.Run, [thumb], slot.IsBass ? Alone : 0);
        }
        else
        {
            yield return new LeftShape(LeftKind.Rest, [], Stretch.Comfortable, Alone, false);
        }
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        if (!slot.IsBass || chord.IsNoChord)
        {
            yield break;
        }
        for (var key = LowestBass; key <= thumb.Midi - NearestBass; key++)
        {
            var stretch = _stage.LeftReach.Of(key, thumb.Midi);
            var wide = !_stage.Brief.Hands.Wants(thumb.Midi - key);
            foreach (var tone in chord.Tones.Where(t => t.PitchClass == key % 12).Take(stretch == Stretch.Out ? 0 : 1))
            {
                var price =
                    tone == chord.Lowest ? 0
                    : chord.Intervals.Any(i => i.Steps == 4 && chord.Root.Plus(i) == tone) ? OnFifth
                    : OffRoot;
                if (!wide)
                {
                    var under = Pitch.At(key, tone);
                    yield return Shape(
                        LeftKind.Bass,
                        isStruck ? [under, thumb] : [under],
                        price + PerSemitone * Math.Max(0, key - LowestBass)
                    ) with
                    {
                        Stretch = stretch,
                    };
                }
            }
        }
    }

    private static LeftShape Shape(LeftKind kind, ValueList<Pitch> pitches, long price) =>
        MannerShapes.Asked(kind, pitches, price, null);

    // Indices of the bars in which the thumb's note sounds.
    private IEnumerable<int> Sounded(int note)
    {
        var first = _lattice.BarAt(At(note));
        var end = Math.Min(_lattice.Notes[note].End, ThumbTune.EndOf(_lattice, first));
        return Enumerable.Range(first, Math.Max(1, _lattice.BarAt(end - 1) - first + 1));
    }

    private bool InBar(int note, int bar) => _thumb[note] is not null && _lattice.BarAt(At(note)) == bar;

    private int At(int note) => _lattice.Notes[note].Start;

    private Pitch? Sounding(LeftSlot slot)
    {
        if (!slot.IsUnderThumb)
        {
            return null;
        }
        var last = Array.FindLastIndex(_lattice.Notes, n => n.Start <= slot.Tick);
        return last >= 0 && _lattice.Notes[last].End > slot.Tick ? _thumb[last] : null;
    }
}
