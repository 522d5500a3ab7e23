using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Left hand: basses, chords and runs, the cheapest line under the finished right hand. A node is the last bass with the
/// last chord, so that bass follows bass, chord follows chord, and every move is paid in millimetres against time.
/// </summary>
internal sealed class Striding
{
    /// <summary>Largest share of off-beat chords that give way to runs and breaks, by level: each leaves nine tenths of the level
    /// below standing.</summary>
    private static readonly double[] MostRuns = [1, 1, 1, 0.055, 0.105, 0.105];
    private const long DearestRun = 6400;
    private const int RunHalvings = 4;
    private readonly Stage _stage;
    private readonly Lattice _lattice;
    private readonly Reach _reach;
    private readonly LeftMoves _moves;
    private readonly RightLine _right;
    private readonly long _strainPrice;
    private readonly LayeredPath _path = new();
    private readonly StrideLayer _arcs = new();
    private Layer[]? _layers;
    private readonly int _level;
    private readonly ulong _seed;
    private readonly BassShapes _basses;
    private readonly MannerShapes _manners;
    private readonly ThumbShapes _thumb;
    private readonly HomePositions _homes;
    private readonly Dictionary<(ChordSymbol Chord, bool Changes), LeftShape[]> _voicings = [];

    // Latest release among the right hand's notes up to each.
    private readonly int[] _soundsUntil;

    internal Striding(Stage stage, RightLine right, HomePositions homes, long strainPrice)
    {
        _stage = stage;
        _lattice = stage.Lattice;
        _reach = stage.LeftReach;
        _moves = new LeftMoves(stage);
        _right = right;
        _strainPrice = strainPrice;
        _level = stage.Brief.LeftLevel;
        _seed = stage.Seed(7);
        _basses = new BassShapes(stage);
        _manners = new MannerShapes(stage);
        _thumb = new ThumbShapes(stage);
        _homes = homes;
        _soundsUntil = new int[right.Notes.Length];
        for (var i = 0; i < right.Notes.Length; i++)
        {
            _soundsUntil[i] = Math.Max(right.Notes[i].End, i > 0 ? _soundsUntil[i - 1] : 0);
        }
    }

    /// <param name="strainPrice">Price of a strained shape, raised when they are too many.</param>
    public static LeftLine Solve(
        Stage stage,
        RightLine right,
        HomePositions homes,
        long strainPrice,
        CancellationToken cancellation
    )
    {
        var striding = new Striding(stage, right, homes, strainPrice);
        return Multiplier.Least(
            DearestRun,
            RunHalvings,
            price => striding.Solve(price, cancellation),
            line => !line.Runs || line.GivenWay <= MostRuns[stage.Brief.LeftLevel - 1]
        );
    }

    /// <summary>One search at one price of runs, however many there are.</summary>
    public static LeftLine Solve(
        Stage stage,
        RightLine right,
        HomePositions homes,
        long strainPrice,
        long runPrice,
        CancellationToken cancellation
    ) => new Striding(stage, right, homes, strainPrice).Solve(runPrice, cancellation);

    /// <summary>The search at one price of runs, to be looked into.</summary>
    public static OpenSearch<LeftNote> Open(
        Stage stage,
        RightLine right,
        HomePositions homes,
        long strainPrice,
        long runPrice,
        CancellationToken cancellation
    )
    {
        var striding = new Striding(stage, right, homes, strainPrice);
        striding._layers = striding.Prepare(striding.Slots(LeftSlot.Of(stage.Lattice)), cancellation);
        return new(
            c => striding.Solve(runPrice, c),
            i => [.. striding._layers[i].Shapes.Select(s => new LeftNote(striding._layers[i].Slot, s))]
        );
    }

    private LeftLine Solve(long runPrice, CancellationToken cancellation)
    {
        var places = LeftSlot.Of(_lattice);
        _layers ??= Prepare(Slots(places), cancellation);
        if (_layers.Length == 0)
        {
            return new LeftLine([], runPrice, 0, 0);
        }
        _path.Restart();
        var own = new long[_layers.Max(l => l.Shapes.Length)];
        for (var i = 0; i < _layers.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (slot, shapes, lines, moves, kept) = _layers[i];
            _path.OpenLayer(shapes.Length * kept);
            for (var s = 0; s < shapes.Length; s++)
            {
                own[s] = shapes[s].Price + (shapes[s].IsRun && shapes[s].MustStep ? runPrice : 0);
            }
            var before = i == 0 ? [0] : _path.EarlierCosts;
            _arcs.Offer(_path, slot.IsBass, before, lines, moves, own.AsSpan(0, shapes.Length), kept);
        }
        var (cost, steps) = _path.Best() ?? throw new InvalidOperationException("every place has a shape");
        var notes = _layers.Select((layer, i) => new LeftNote(layer.Slot, layer.Shapes[steps[i].Choice]));
        return new LeftLine([.. notes.Where(n => !n.Shape.IsRest)], runPrice, places.Count(p => !p.IsBass), cost);
    }

    /// <summary>Of the usual places, those at which something may be struck here.</summary>
    internal LeftSlot[] Slots(LeftSlot[] places) =>
        HeldPlaces.Apply(_lattice, _thumb.Apply(Answers.Apply(_lattice, _right, Breaks.Apply(_stage, _right, places))));

    // All that is the same at every price of runs.
    private Layer[] Prepare(LeftSlot[] slots, CancellationToken cancellation)
    {
        var nothing = new LeftShape(LeftKind.Rest, [], Stretch.Comfortable, 0, false);
        LeftShape[] basses = [nothing],
            chords = [nothing];
        var layers = new Layer[slots.Length];
        for (var i = 0; i < slots.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            var slot = slots[i];
            var shapes = Shapes(slots, i);
            var (oldBasses, oldChords) = (basses, chords);
            (basses, chords) = slot.IsBass ? (shapes, oldChords) : (oldBasses, shapes);
            var (replaced, kept) = slot.IsBass ? (oldBasses, oldChords) : (oldChords, oldBasses);
            var lines = LeftMoves.Lines(slot, replaced, shapes, i);
            int[] moves = [];
            if (i > 0)
            {
                // The hand comes from the shape struck last: the one replaced, or else the one kept.
                var fromReplaced = slots[i - 1].IsBass == slot.IsBass;
                moves = _moves.Between(slots[i - 1], slot, fromReplaced ? replaced : kept, shapes);
                if (fromReplaced)
                {
                    for (var k = 0; k < lines.Length; k++)
                    {
                        lines[k] += moves[k];
                    }
                    moves = [];
                }
            }
            layers[i] = new Layer(slot, shapes, lines, moves, kept.Length);
        }
        return layers;
    }

    private LeftShape[] Shapes(LeftSlot[] slots, int index)
    {
        var slot = slots[index];
        return _lattice.Bars[slot.Bar].Held?.Left is null
            ? Usual(slots, index)
            : HeldPlaces.Shapes(_lattice, _reach, slot, slot.IsOwn ? [] : Usual(slots, index));
    }

    private LeftShape[] Usual(LeftSlot[] slots, int index)
    {
        var slot = slots[index];
        if (_thumb.Has(slot))
        {
            return [.. _thumb.Of(slot).Select(s => Priced(slot, s))];
        }
        var next = index + 1 < slots.Length ? slots[index + 1] : null;
        var nextBass = slots.Skip(index + 1).FirstOrDefault(s => s.IsBass);
        var found = slot.IsBass
            ? _basses.Of(slot, nextBass).ToList()
            : [.. Chords(slot), .. next is { IsBass: true } ? Runs(slot) : []];
        var asked = _manners.Of(slots, index).ToList();
        var unasked = asked.Count > 0 ? MannerShapes.Unasked : 0;
        var priced = asked
            .Concat(unasked == 0 ? found : found.Select(s => s with { Price = s.Price + unasked }))
            .Select(s => Priced(slot, s))
            .ToList();
        // Where the right hand leaves no room the left may rest, but not to spare itself the way to a new harmony.
        var rest = (slot.IsBass ? 12_000 : 8000) + (slot.Changes ? 20_000 : 0);
        priced.Add(new LeftShape(LeftKind.Rest, [], Stretch.Comfortable, rest + unasked, false));
        return [.. priced];
    }

    private LeftShape Priced(LeftSlot slot, LeftShape shape) =>
        shape with
        {
            Price =
                shape.Price
                + Against(slot, shape)
                + (shape.IsStrained ? _strainPrice : 0)
                + Liking(slot, shape)
                + (slot.IsBass ? _stage.Brief.Unlike?.Bass(slot.Tick, shape.Low) ?? 0 : 0),
        };

    private List<LeftShape> Chords(LeftSlot slot)
    {
        var chord = _lattice.ChordAt(slot.Tick).Chord;
        if (!_voicings.TryGetValue((chord, slot.Changes), out var voicings))
        {
            voicings =
            [
                .. ChordShapes.Of(
                    chord,
                    _lattice.Feel,
                    _reach,
                    ChordShapes.LowestKey(slot),
                    ChordShapes.HighestKey,
                    slot.Changes
                ),
            ];
            _voicings.Add((chord, slot.Changes), voicings);
        }
        var found = voicings.Select(v => v with { Price = v.Price + _homes.Price(slot.Tick, v) }).ToList();
        if (slot.Changes)
        {
            // A change on a weak place: its root alone will do.
            for (var key = 40; key <= 52; key++)
            {
                if (key % 12 == chord.Lowest.PitchClass)
                {
                    found.Add(
                        new LeftShape(LeftKind.Run, [Pitch.At(key, chord.Lowest)], Stretch.Comfortable, 900, false)
                    );
                }
            }
        }
        return found;
    }

    // Notes of a run into the next bass, mostly where phrases end.
    private IEnumerable<LeftShape> Runs(LeftSlot slot)
    {
        var bar = _lattice.Bars[slot.Bar];
        // Where the piece goes back the next bass is another one.
        if (_level < 4 || slot.Changes || slot.Bar == _lattice.Bars.Length - 1 || bar.Marks.RepeatEnd > 0)
        {
            yield break;
        }
        var price =
            bar.EndsPhrase ? 700
            : bar.StrainBar % 2 == 1 ? 1900
            : 2400;
        var tones = _lattice.ChordAt(slot.Tick).Chord.Tones;
        for (var key = 36; key <= 53; key++)
        {
            var inChord = tones.FirstOrDefault(t => t.PitchClass == key % 12);
            var tone = tones.Any(t => t.PitchClass == key % 12) ? inChord : bar.Key.Spell(key);
            var chromatic = !bar.Key.Contains(tone) && !tones.Contains(tone);
            var total = price + (chromatic ? 500 : 0);
            var pitch = Pitch.At(key, tone);
            yield return new LeftShape(
                LeftKind.Run,
                [pitch],
                Stretch.Comfortable,
                total + (_level >= 5 ? 300 : 0),
                true
            );
            if (
                _level >= 5
                && _stage.EaseOf(slot.Bar) < Ease.Octaves
                && key <= 46
                && !_stage.Brief.Hands.NoOctaves
                && _reach.Of(key, key + 12) is var stretch and not Stretch.Out
            )
            {
                var upper = pitch with { Octave = pitch.Octave + 1 };
                yield return new LeftShape(LeftKind.RunOctave, [pitch, upper], stretch, total, true);
            }
        }
    }

    // Against what the right hand holds or strikes meanwhile: no shared keys, no crossing, no struck semitones.
    internal long Against(LeftSlot slot, LeftShape shape)
    {
        var price = 0L;
        for (var i = FirstSounding(slot.Tick); i < _right.Notes.Length && _right.Notes[i].Tick < slot.End; i++)
        {
            var note = _right.Notes[i];
            if (note.End <= slot.Tick)
            {
                continue;
            }
            if (shape.High >= note.Lowest)
            {
                price += 4000;
            }
            foreach (var pitch in shape.Pitches)
            {
                if (pitch.Midi == note.Top.Midi || note.Below.Any(p => p.Midi == pitch.Midi))
                {
                    price += LeftMoves.Forced;
                }
                if (note.Tick == slot.Tick && shape.Kind == LeftKind.Chord && Clash(pitch.Midi, note))
                {
                    price += 1500;
                }
            }
        }
        return price;
    }

    private static bool Clash(int key, RightNote note) =>
        (note.Top.Midi - key) % 12 is 1 or 11 && note.Top.Midi - key < 14
        || note.Below.Any(p => p.Midi - key is 1 or 13);

    // The first right-hand note that may still sound at a tick. A held note may outlast those after it.
    private int FirstSounding(int tick)
    {
        int low = 0,
            high = _soundsUntil.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = _soundsUntil[middle] > tick ? (low, middle) : (middle + 1, high);
        }
        return low;
    }

    // Each pair of bars has its own way of moving, so that a phrase is not one pattern throughout.
    internal long Liking(LeftSlot slot, LeftShape shape)
    {
        var bar = _lattice.Bars[slot.Bar];
        var root = _lattice.ChordAt(slot.Tick).Chord.Root;
        // Runs as such, whatever their notes: else the many ways to run would win by number.
        var kind = shape.IsRun ? LeftKind.Run : shape.Kind;
        var what = (long)kind * 16 + (shape.MustStep ? 0 : (shape.Low % 12 - root.PitchClass + 12) % 12);
        var key = Variety.Mix(
            Variety.Mix(_seed, bar.StrainBar % 8 * 64 + slot.Tick - bar.Start + 16 * bar.ReturnSalt),
            what
        );
        return (
                slot.IsBass ? 50
                : shape.IsRun ? 60
                : 20
            )
            * Variety.Cost(key)
            / 100;
    }

    /// <param name="Shapes">What may be struck at the place.</param>
    /// <param name="Lines">Prices by replaced and by new shape.</param>
    /// <param name="Moves">Prices by kept and by new shape; empty: none.</param>
    /// <param name="Kept">How many shapes are kept.</param>
    private sealed record Layer(LeftSlot Slot, LeftShape[] Shapes, int[] Lines, int[] Moves, int Kept);
}
