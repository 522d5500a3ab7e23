using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Reads off a solution what became of the tune: what was moved, filled and thickened, and on which rhythm.
/// </summary>
internal sealed class RightReader
{
    private const int Unit = Lattice.TicksPerUnit;

    // How far back a rhythm is looked for, the likeliest first: motifs return after four, two and eight bars.
    private static readonly int[] BarsBack = [4, 2, 8, 1, 16];
    private readonly Lattice _lattice;
    private readonly RightNote[] _notes;
    private readonly RightNote[][] _bars;
    private readonly int[] _patterns;
    private readonly int _first;

    /// <param name="first">Bars of the lattice that are not in the score.</param>
    public RightReader(Solution solution, int first)
    {
        _lattice = solution.Lattice;
        _notes = solution.Right.Notes;
        _first = first;
        var bars = _notes.ToLookup(n => _lattice.BarAt(n.Tick));
        _bars = [.. _lattice.Bars.Select((_, i) => bars[i].ToArray())];
        _patterns = Figures.Patterns(_lattice, [.. _notes.Select(n => new RightOnset(n.Tick, n.Tune))]);
    }

    /// <summary>The claims about a bar of the lattice.</summary>
    public IEnumerable<Reason> Of(int bar)
    {
        var notes = _bars[bar];
        if (IsDevice(_lattice.Bars[bar].Treatment.Right) || notes.Any(n => n.Use != default))
        {
            // What was asked for says it all.
            yield break;
        }
        var shifts = notes.Where(n => !n.IsFiller && n.Tick != Plain(n).Start).Select(n => Shift(bar, n)).ToList();
        var figure = Figure(bar);
        var fillers = notes.Count(n => n.IsFiller);
        if (figure is not null)
        {
            yield return figure;
        }
        foreach (var shift in shifts)
        {
            yield return shift;
        }
        if (notes.Length >= 3 && (shifts.Count > 0 || fillers > 0 || figure is not null) && Motif(bar) is { } motif)
        {
            yield return motif;
        }
        if (fillers > 0)
        {
            yield return new FillReason(bar - _first, fillers, HeldAbove(bar));
        }
        if (Texture(bar) is { } texture)
        {
            yield return texture;
        }
        foreach (var note in notes.Where(n => n.Crushed is not null))
        {
            yield return new CrushedReason(bar - _first, At(note), note.Crushed!.Value, note.Top);
        }
    }

    private static bool IsDevice(RightManner manner) =>
        manner
            is RightManner.ThumbTune
                or RightManner.Obbligato
                or RightManner.ThreeAgainstFour
                or RightManner.ParallelRun
                or RightManner.Tremolo;

    private TuneSpot Plain(RightNote note) => _lattice.Notes[note.Tune];

    private ScoreTime At(RightNote note) =>
        _lattice.Tick * (note.Tick - _lattice.Bars[_lattice.BarAt(note.Tick)].Start);

    private ShiftReason Shift(int bar, RightNote note)
    {
        var plain = Plain(note);
        var chord = _lattice.ChordAt(plain.Start).Chord;
        var early = note.Tick < plain.Start;
        return new ShiftReason(
            bar - _first,
            At(note),
            note.Top,
            _lattice.Tick * Math.Abs(note.Tick - plain.Start),
            early,
            PlainPlaceOf(plain.Start),
            early && note.End > plain.Start,
            !chord.IsNoChord && (chord.PitchClassSet >> (plain.Key % 12) & 1) == 1 ? chord : null,
            plain.Stress == Stress.Strong ? plain.Lyrics.FirstOrDefault(l => l.Verse == 1)?.Text : null
        );
    }

    private PlainPlace PlainPlaceOf(int tick)
    {
        var bar = _lattice.Bars[_lattice.BarAt(tick)];
        var place = _lattice.Tick * (tick - bar.Start + bar.Lead);
        return tick == bar.Start ? PlainPlace.BarLine
            : Feels.IsDuple(bar.Metre) && place + place == bar.Metre.BarLength ? PlainPlace.MidBar
            : place.IsMultipleOf(bar.Metre.Beat) ? PlainPlace.Beat
            : PlainPlace.OffBeat;
    }

    private FigureReason? Figure(int bar)
    {
        if (_patterns[bar] < 0)
        {
            return null;
        }
        var next = bar + 1 < _patterns.Length && _patterns[bar + 1] >= 0 ? _patterns[bar + 1] : 0xFF;
        var (untied, mid, line) = Figures.In(_patterns[bar], next);
        return untied + mid + line == 0 ? null : new FigureReason(bar - _first, untied, mid > 0, line > 0);
    }

    private MotifReason? Motif(int bar)
    {
        var like = BarsBack.Select(back => bar - back).FirstOrDefault(b => b >= _first && Alike(b, bar), -1);
        return like < 0 ? null : new MotifReason(bar - _first, like - _first, _lattice.Bars[like].Number);
    }

    private bool Alike(int one, int other)
    {
        var (a, b) = (_lattice.Bars[one], _lattice.Bars[other]);
        return a.Length == b.Length
            && _bars[one].Select(n => n.Tick - a.Start).SequenceEqual(_bars[other].Select(n => n.Tick - b.Start));
    }

    // The tune's note that sounds on above the fillers of a bar.
    private Pitch? HeldAbove(int bar)
    {
        var under = Array.Find(_bars[bar], n => n.UnderHeld);
        return under is null ? null : _notes.LastOrDefault(n => n.Holds && n.Tick < under.Tick)?.Top;
    }

    private TextureReason? Texture(int bar)
    {
        if (Thickest(bar) is not var (texture, notes))
        {
            return null;
        }
        var ground =
            AskedTextures.Names(_lattice.Bars[bar].Treatment.Right) && IsAsked(bar, notes) ? TextureGround.Asked
            : bar > 0 && Thickest(bar - 1)?.Texture == texture ? TextureGround.Lasts
            : notes.All(n => IsAccent(bar, n)) ? TextureGround.Accents
            : TextureGround.Usual;
        return new TextureReason(bar - _first, texture, notes.Length, _bars[bar].Length, ground);
    }

    private bool IsAsked(int bar, RightNote[] notes) =>
        notes.All(n => AskedTextures.Fits(_lattice.Bars[bar].Treatment.Right, n.Top, n.Below));

    private (TuneTexture Texture, RightNote[] Notes)? Thickest(int bar)
    {
        var kinds = _bars[bar].Where(n => n.Below.Count > 0).GroupBy(TextureOf).ToList();
        return kinds.Count == 0
            ? null
            : kinds
                .OrderByDescending(k => k.Count())
                .ThenBy(k => k.Key)
                .Select(k => ((TuneTexture, RightNote[])?)(k.Key, [.. k]))
                .First();
    }

    private static TuneTexture TextureOf(RightNote note) =>
        (note.Below.Count, note.Top.Midi - note.Lowest) switch
        {
            (1, 3 or 4) => TuneTexture.Thirds,
            (1, 8 or 9) => TuneTexture.Sixths,
            (1, 12) => TuneTexture.Octaves,
            (1, _) => TuneTexture.TwoNotes,
            (_, 12) => TuneTexture.FullOctaves,
            _ => TuneTexture.Chords,
        };

    // On every second unit, or as long as three.
    private bool IsAccent(int bar, RightNote note) =>
        (note.Tick - _lattice.Bars[bar].Start + _lattice.Bars[bar].Lead) % (2 * Unit) == 0
        || note.End - note.Tick >= 3 * Unit;
}
