using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Keys that the right hand may take together beside a voice.</summary>
/// <param name="Keys">Lowest first.</param>
internal sealed record CompShape(ValueList<Pitch> Keys, Stretch Stretch, bool IsPassing, long Price)
{
    public int Low => Keys[0].Midi;

    public int High => Keys[^1].Midi;
}

/// <summary>
/// Lists the shapes of an onset beside a voice: chords of two to four tones with the third and the seventh in them, and
/// the notes of fills. Away from the voice: never its key, seldom its register, never its line on top (common practice of
/// song accompaniment: the singer has the tune, the piano the rest).
/// </summary>
internal sealed class CompShapes(Stage stage, HomePositions homes, Voice voice, long strainPrice)
{
    private const int Unit = Lattice.TicksPerUnit;
    private const int Lowest = 60,
        Highest = 88,
        Centre = 73,
        TooHigh = 84;
    private const long OnVoice = 40_000,
        BesideVoice = 2500,
        InBand = 350,
        InBandFilling = 500,
        TuneOnTop = 6000,
        Covering = 5000,
        OffCentre = 45,
        High = 160,
        NoThird = 1500,
        NoSeventh = 700,
        Passing = 500,
        PassingOnBeat = 1500,
        EndsApart = 1200,
        Thick = 350,
        Thin = 900;

    private readonly Lattice _lattice = stage.Lattice;
    private readonly int _level = stage.Brief.RightLevel;
    private readonly ulong _seed = stage.Seed(19);

    /// <summary>At least one shape.</summary>
    /// <param name="thin">The judge asked for single notes.</param>
    public CompShape[] Of(CompOnset onset, bool thin)
    {
        var found = new List<CompShape>();
        var place = new Spot(onset, _lattice, voice, homes);
        for (var key = Lowest; key <= Highest; key++)
        {
            var (tone, inChord) = ToneOf(place, key);
            var line = onset.Kind == CompKind.Fill || thin || place.Chord.IsNoChord;
            if (!inChord && !(line && place.Bar.Key.Contains(tone)))
            {
                continue;
            }
            var top = Pitch.At(key, tone);
            if (line)
            {
                Add(found, place, [top], !inChord, LinePrice(onset, place, key, inChord));
            }
            if (!thin && inChord)
            {
                AddUnder(found, onset, place, top);
            }
        }
        return [.. found];
    }

    private static (Tone Tone, bool InChord) ToneOf(Spot place, int key)
    {
        foreach (var tone in place.Tones)
        {
            if (tone.PitchClass == key % 12)
            {
                return (tone, true);
            }
        }
        return (place.Bar.Key.Spell(key), false);
    }

    // Two to four chord tones with this one on top.
    private void AddUnder(List<CompShape> found, CompOnset onset, Spot place, Pitch top)
    {
        var isChord = onset.Kind == CompKind.Chord;
        var onAccent = (onset.Tick - place.Bar.Start + place.Bar.Lead) % (2 * Unit) == 0;
        if (place.Chord.IsNoChord || (!isChord && (_level < 4 || !onAccent)))
        {
            return;
        }
        var inner = Inner(place, top);
        if (!isChord)
        {
            foreach (var under in inner.Where(p => top.Midi - p.Midi is >= 3 and <= 9))
            {
                Add(found, place, [under, top], false, LinePrice(onset, place, top.Midi, true) + Thick);
            }
            if (_level >= 5 && !stage.Brief.Hands.NoOctaves)
            {
                var octave = top with { Octave = top.Octave - 1 };
                Add(found, place, [octave, top], false, LinePrice(onset, place, top.Midi, true) + 2 * Thick);
            }
            return;
        }
        var most =
            _level <= 2 ? 2
            : _level <= 4 ? 3
            : 4;
        for (var chosen = 1; chosen < 1 << inner.Count; chosen++)
        {
            var size = int.PopCount(chosen) + 1;
            if (size > most)
            {
                continue;
            }
            Pitch[] keys = [.. inner.Where((_, i) => (chosen >> i & 1) == 1), top];
            if (top.Midi - keys[0].Midi <= 9 && Spread(keys))
            {
                Add(found, place, keys, false, ChordPrice(place, keys) + (size < 3 && most > 2 ? Thin : 0));
            }
        }
    }

    private static bool Spread(Pitch[] keys)
    {
        for (var i = 1; i < keys.Length; i++)
        {
            if (keys[i].Midi - keys[i - 1].Midi < (i == keys.Length - 1 ? 3 : 2))
            {
                return false;
            }
        }
        return true;
    }

    private static List<Pitch> Inner(Spot place, Pitch top)
    {
        var inner = new List<Pitch>();
        for (var key = top.Midi - 9; key < top.Midi; key++)
        {
            if (ToneOf(place, key) is (var tone, true))
            {
                inner.Add(Pitch.At(key, tone));
            }
        }
        return inner;
    }

    private void Add(List<CompShape> found, Spot place, Pitch[] keys, bool isPassing, long price)
    {
        if (keys[0].Midi < Lowest)
        {
            return;
        }
        var stretch = stage.RightReach.Of(keys[0].Midi, keys[^1].Midi);
        if (stretch == Stretch.Out || keys.Length > stage.RightReach.Fingers)
        {
            return;
        }
        price += stretch == Stretch.Strained ? strainPrice : 0;
        found.Add(new CompShape(keys.ToValueList(), stretch, isPassing, price + VoicePrice(place, keys)));
    }

    private static long ChordPrice(Spot place, Pitch[] keys)
    {
        var price = 0L;
        foreach (var interval in place.Chord.Intervals.Where(i => i.Steps is 2 or 6))
        {
            var tone = place.Chord.Root.Plus(interval).PitchClass;
            price +=
                keys.Any(k => k.Midi % 12 == tone) ? 0
                : interval.Steps == 2 ? NoThird
                : NoSeventh;
        }
        return price + (keys.Length > 3 ? Thick : 0);
    }

    private long LinePrice(CompOnset onset, Spot place, int key, bool inChord)
    {
        var unit = (onset.Tick - place.Bar.Start + place.Bar.Lead) / Unit;
        var price = inChord ? 0 : Passing + (unit % 2 == 0 ? PassingOnBeat : 0);
        if (onset.EndsFill && voice.NextNote(onset.Tick) is var next && next < _lattice.Notes.Length)
        {
            // The last note leads to the voice's next one, in whatever octave.
            var apart = Math.Abs(voice.KeyOf(next) - key) % 12;
            price += Math.Min(apart, 12 - apart) <= 4 ? 0 : EndsApart;
            price += inChord ? 0 : PassingOnBeat;
        }
        var salt = Variety.Mix(
            Variety.Mix(_seed, place.Bar.StrainBar % 8 * 16 + unit + place.Bar.ChorusSalt),
            key % 12
        );
        return price + 40 * Variety.Cost(salt) / 100;
    }

    // What the voice, and the left hand below, think of these keys.
    private static long VoicePrice(Spot place, Pitch[] keys)
    {
        var price = 0L;
        foreach (var key in keys)
        {
            foreach (var sung in place.Sung)
            {
                var apart = Math.Abs(sung - key.Midi);
                price +=
                    apart == 0 ? OnVoice
                    : apart <= 2 ? BesideVoice
                    : 0;
            }
            var inBand = place.Band is { } band && key.Midi >= band.Low && key.Midi <= band.High;
            price +=
                !inBand ? 0
                : keys.Length == 1 ? InBandFilling
                : InBand;
        }
        price += place.Struck.Any(s => (s - keys[^1].Midi) % 12 == 0) ? TuneOnTop : 0;
        price += keys[0].Midi <= place.Covered ? Covering : 0;
        var middle = (keys[0].Midi + keys[^1].Midi) / 2;
        return price + OffCentre * Math.Abs(middle - Centre) + High * Math.Max(0, keys[^1].Midi - TooHigh);
    }

    /// <summary>What there is around an onset.</summary>
    private sealed class Spot
    {
        public Spot(CompOnset onset, Lattice lattice, Voice voice, HomePositions homes)
        {
            var bar = lattice.BarAt(onset.Tick);
            Bar = lattice.Bars[bar];
            // A chord that is held over a beat is the beat's.
            var meant =
                onset.Kind == CompKind.Chord && onset.Until > onset.Tick + Unit ? onset.Tick + Unit : onset.Tick;
            Chord = lattice.ChordAt(meant).Chord;
            Tones = Chord.IsNoChord ? [] : Chord.Tones;
            var until = onset.Kind == CompKind.Fill ? Math.Min(onset.Until, onset.Tick + 3 * Unit) : onset.Until;
            Sung = [.. voice.KeysBetween(onset.Tick, until)];
            Struck = [.. voice.KeysStruckBetween(onset.Tick, onset.Tick + Unit)];
            Band = voice.BandAround(bar);
            Covered = homes.HighestKey(onset.Tick, until);
        }

        public LatticeBar Bar { get; }

        public ChordSymbol Chord { get; }

        public ValueList<Tone> Tones { get; }

        /// <summary>Keys sung while it sounds.</summary>
        public int[] Sung { get; }

        /// <summary>Keys that the voice strikes with it.</summary>
        public int[] Struck { get; }

        public (int Low, int High)? Band { get; }

        /// <summary>The left hand's highest key.</summary>
        public int Covered { get; }
    }
}
