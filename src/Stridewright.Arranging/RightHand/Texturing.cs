using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>How thick an onset of the right hand is.</summary>
internal enum Texture
{
    Single,
    TwoNote,
    Octave,
    FullOctave,
    Block,
}

/// <summary>
/// Right hand, what: the keys under each top note. Thick on downbeats and accents, thin on fillers, lasting from onset to
/// onset and changing at phrases, within the hand's reach and speed. Shares by place in the bar and persistence are those
/// measured on 34 printed rags.
/// </summary>
internal sealed class Texturing
{
    private const int Unit = Lattice.TicksPerUnit;

    // Measured: one onset in twenty reaches below key 62. The left hand needs the room under middle C.
    private const int LowestKey = 60;
    private const long Forced = 40_000;

    /// <summary>What a thick bar takes off every shape of more than one key, and a thin one adds: a choice by ear, about
    /// four times the odds.</summary>
    private const double ByFullness = 1400;

    /// <summary>Price of a shape that reaches down into the left hand's chord.</summary>
    private const long Covering = 4000;

    // Share in percent of single, two-note, octave, octave with inner notes and block at the eight places of a bar.
    private static readonly double[][] ShareByPlace =
    [
        [37, 27, 7, 15, 15],
        [73, 14, 5, 4, 5],
        [61, 15, 11, 7, 7],
        [60, 14, 8, 7, 11],
        [49, 20, 6, 12, 13],
        [70, 12, 9, 4, 5],
        [56, 14, 9, 8, 13],
        [72, 12, 8, 4, 5],
    ];

    private readonly Stage _stage;
    private readonly Lattice _lattice;
    private readonly RightNote[] _notes;
    private readonly Reach _reach;
    private readonly int _level;
    private readonly long _strainPrice;
    private readonly IReadOnlySet<int> _thin;
    private readonly ulong _seed;
    private readonly HomePositions _homes;

    private Texturing(Stage stage, RightLine line, HomePositions homes, long strainPrice, IReadOnlySet<int> thin)
    {
        _stage = stage;
        _lattice = stage.Lattice;
        _notes = line.Notes;
        _reach = stage.RightReach;
        _level = stage.Brief.RightLevel;
        _strainPrice = strainPrice;
        _thin = thin;
        _seed = stage.Seed(5);
        _homes = homes;
    }

    /// <param name="strainPrice">Price of a strained shape, raised when they are too many.</param>
    /// <param name="thin">Ticks at which the judge asked for a single note.</param>
    public static RightLine Solve(
        Stage stage,
        RightLine line,
        HomePositions homes,
        long strainPrice,
        IReadOnlySet<int> thin,
        CancellationToken cancellation
    ) => new Texturing(stage, line, homes, strainPrice, thin).Solve(cancellation);

    /// <summary>The search, to be looked into: its choices are the keys under the top one.</summary>
    public static OpenSearch<ValueList<Pitch>> Open(
        Stage stage,
        RightLine line,
        HomePositions homes,
        long strainPrice,
        IReadOnlySet<int> thin
    )
    {
        var texturing = new Texturing(stage, line, homes, strainPrice, thin);
        return new(c => texturing.Solve(c), i => [.. texturing.Shapes(i).Select(s => s.Below)]);
    }

    private RightLine Solve(CancellationToken cancellation)
    {
        if (_notes.Length == 0)
        {
            return new RightLine([], 0);
        }
        var path = new LayeredPath();
        var layers = new Shape[_notes.Length][];
        for (var i = 0; i < _notes.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            layers[i] = Shapes(i);
            path.OpenLayer(layers[i].Length);
            if (i == 0)
            {
                for (var k = 0; k < layers[0].Length; k++)
                {
                    path.Start(k, layers[0][k].Price, k);
                }
                continue;
            }
            var (note, before) = (_notes[i], _notes[i - 1]);
            var bar = _lattice.Bars[_lattice.BarAt(note.Tick)];
            var phrase = bar.StartsPhrase && before.Tick < bar.Start;
            var seconds = (note.Tick - before.Tick) * _stage.SecondsPerTick;
            var limit = _stage.LeapLimit(before.Tick, Hand.Right);
            for (var from = 0; from < layers[i - 1].Length; from++)
            {
                var sofar = path.EarlierCosts[from];
                for (var to = 0; to < layers[i].Length; to++)
                {
                    var move = Move(layers[i - 1][from], layers[i][to], phrase, seconds, limit);
                    var price = layers[i][to].Price + move;
                    path.Offer(from, to, sofar + price, to);
                }
            }
        }
        var (cost, steps) = path.Best() ?? throw new InvalidOperationException("a single note is always a shape");
        var notes = _notes.Select((n, i) => n with { Below = layers[i][steps[i].Node].Below }).ToArray();
        return new RightLine(notes, cost);
    }

    private Shape[] Shapes(int index)
    {
        var usual = Usual(index);
        var note = _notes[index];
        if (_lattice.HeldAt(note.Tick)?.Below is not { } below)
        {
            return usual;
        }
        var same = usual.Where(s => s.Below.Equals(below)).ToArray();
        var low = below.Count > 0 ? below[0].Midi : note.Top.Midi;
        return same.Length > 0
            ? same
            : [new(Kind(low, note.Top.Midi, below.Count), below, low, note.Top.Midi, _reach.Of(low, note.Top.Midi), 0)];
    }

    private static Texture Kind(int low, int top, int below) =>
        (top - low, below) switch
        {
            (_, 0) => Texture.Single,
            (12, 1) => Texture.Octave,
            (12, _) => Texture.FullOctave,
            (_, 1) => Texture.TwoNote,
            _ => Texture.Block,
        };

    private Shape[] Usual(int index)
    {
        var note = _notes[index];
        var top = note.Top.Midi;
        var prices = new long?[ShareByPlace[0].Length];
        long PriceOf(Texture texture) => prices[(int)texture] ??= Price(index, texture);
        var bar = _lattice.Bars[_lattice.BarAt(note.Tick)];
        var manner = AskedTextures.For(note, bar);
        var isAsked = AskedTextures.Names(manner);
        var level = isAsked ? 6 : _level;
        var shapes = new List<Shape>
        {
            new(
                Texture.Single,
                [],
                top,
                top,
                Stretch.Comfortable,
                PriceOf(Texture.Single) + (isAsked ? AskedTextures.Otherwise : 0)
            ),
        };
        var ease = _stage.EaseOf(_lattice.BarAt(note.Tick));
        if (
            level < 4
            || ease >= Ease.TwoNotes
            || _thin.Contains(note.Tick)
            || note.UnderHeld
            || note.Holds
            || manner == RightManner.Obbligato
        )
        {
            return [.. shapes];
        }
        var chord = _lattice.ChordAt(note.Tick).Chord;
        if (chord.IsNoChord)
        {
            return [.. shapes];
        }
        var inner = Inner(note.Top, chord);
        var chords = _homes.HighestKey(note.Tick, note.End);
        void Add(Texture texture, params Pitch[] below)
        {
            var low = below[0].Midi;
            if (low < Math.Max(LowestKey, note.Floor) || !_stage.Brief.Hands.Wants(top - low))
            {
                return;
            }
            if ((ease >= Ease.InnerNotes && below.Length > 1) || (ease >= Ease.Octaves && top - low >= 12))
            {
                return;
            }
            var stretch = _reach.Of(low, top);
            if (stretch == Stretch.Out || below.Length >= _reach.Fingers)
            {
                return;
            }
            var price = PriceOf(texture) + (stretch == Stretch.Strained ? _strainPrice : 0);
            price += low <= chords ? Covering : 0;
            price += AskedTextures.Fits(manner, note.Top, below.ToValueList()) ? 0 : AskedTextures.Otherwise;
            shapes.Add(new(texture, below.ToValueList(), low, top, stretch, price));
        }
        if (note.Use == RightUse.Run)
        {
            Add(
                note.StepsUnder == 7 ? Texture.Octave : Texture.TwoNote,
                ParallelRun.Under(_lattice, note.Tick, note.Top, note.StepsUnder)
            );
            return [.. shapes];
        }
        foreach (var pitch in inner.Where(p => top - p.Midi is >= 3 and <= 9))
        {
            Add(Texture.TwoNote, pitch);
        }
        if (
            AskedTextures.InKey(manner, note.Top, bar.Key) is { } inKey
            && !shapes.Any(s =>
                isAsked && s.Texture == Texture.TwoNote && AskedTextures.Fits(manner, note.Top, s.Below)
            )
        )
        {
            Add(Texture.TwoNote, inKey);
        }
        for (var a = 0; a < inner.Count; a++)
        {
            for (var b = a + 1; b < inner.Count; b++)
            {
                if (top - inner[a].Midi <= 9 && top - inner[b].Midi >= 3 && inner[b].Midi - inner[a].Midi >= 3)
                {
                    Add(Texture.Block, inner[a], inner[b]);
                }
            }
        }
        if (level >= 5 && manner != RightManner.ThumbTune)
        {
            var octave = note.Top with { Octave = note.Top.Octave - 1 };
            Add(Texture.Octave, octave);
            foreach (var pitch in inner.Where(p => top - p.Midi is >= 3 and <= 9))
            {
                Add(Texture.FullOctave, octave, pitch);
            }
            if (level >= 6)
            {
                for (var a = 0; a < inner.Count; a++)
                {
                    for (var b = a + 1; b < inner.Count; b++)
                    {
                        if (inner[b].Midi - inner[a].Midi >= 3 && top - inner[b].Midi >= 3 && top - inner[a].Midi <= 9)
                        {
                            Add(Texture.FullOctave, octave, inner[a], inner[b]);
                        }
                    }
                }
            }
        }
        return [.. shapes];
    }

    // Chord tones within an octave under the top, lowest first.
    internal static List<Pitch> Inner(Pitch top, ChordSymbol chord)
    {
        var found = new List<Pitch>();
        foreach (var tone in chord.Tones)
        {
            for (var key = top.Midi - 11; key < top.Midi; key++)
            {
                if (key % 12 == tone.PitchClass && !found.Any(p => p.Midi == key))
                {
                    found.Add(Pitch.At(key, tone));
                }
            }
        }
        found.Sort();
        return found;
    }

    private long Price(int index, Texture texture)
    {
        var note = _notes[index];
        var bar = _lattice.Bars[_lattice.BarAt(note.Tick)];
        var place = (note.Tick - bar.Start + bar.Lead) / Unit;
        var row = ShareByPlace[
            _lattice.IsDuple ? Math.Clamp(place, 0, 7)
            : place % 2 == 0 ? (place == 0 ? 0 : 4)
            : 1
        ];
        var share = row[(int)texture];
        var price = (long)(-1000 * Math.Log(share / row[0])) + _stage.Prices.Texture.Offset[(int)texture];
        // Thirds, sixths and blocks at level 4 stand on accents.
        var accent =
            !note.IsFiller
            && (
                place % 2 == 0
                || note.End - note.Tick >= 3 * Unit
                || (place % 2 == 1 && note.End - note.Tick >= 2 * Unit)
            );
        if (texture != Texture.Single)
        {
            price -= (long)(ByFullness * bar.Treatment.Fullness);
            price +=
                note.IsFiller ? 900
                : accent ? -350
                : 250;
            price += _level == 4 && !accent ? 3000 : 0;
            price += _level == 4 && texture == Texture.Block ? 1500 : 0;
            price += _level < 6 && texture == Texture.FullOctave ? 600 : 0;
            price += (long)(_lattice.IsOnGrid(note.Tick) && note.End - note.Tick >= Unit ? 0 : 3000);
        }
        // Each phrase has its own liking.
        var phrase = Variety.Mix(Variety.Mix(_seed, bar.StrainBar / 4 % 4 + bar.ReturnSalt), (int)texture);
        price += 60 * Variety.Cost(phrase) / 100;
        var liking = Variety.Mix(
            Variety.Mix(_seed, bar.StrainBar % 8 * 16 + place + bar.ReturnSalt),
            (int)texture + 100
        );
        return price + 25 * Variety.Cost(liking) / 100;
    }

    private long Move(in Shape from, in Shape to, bool phrase, double seconds, double limit)
    {
        var price = 0L;
        if (from.Texture != to.Texture)
        {
            price += phrase ? 0 : _stage.Prices.Texture.Leave[(int)from.Texture];
        }
        if (from.Stretch == Stretch.Strained && to.Stretch == Stretch.Strained)
        {
            price += Forced;
        }
        var rate = Leap.Bits(Leap.Shift(_reach, from.Low, from.High, to.Low, to.High), _reach.Keyboard) / seconds;
        if (rate > limit)
        {
            price += Forced + (long)(1000 * (rate - limit));
        }
        // The same octave again, faster than five a second.
        if (from.High == to.High && from.High - from.Low == 12 && to.High - to.Low == 12 && seconds < 0.2)
        {
            price += Forced;
        }
        return price;
    }

    private readonly record struct Shape(
        Texture Texture,
        ValueList<Pitch> Below,
        int Low,
        int High,
        Stretch Stretch,
        long Price
    );
}
