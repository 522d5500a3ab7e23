using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>What a form adds to the tune: bars of the arranger's own.</summary>
internal static class Additions
{
    /// <summary>Bars of an introduction by a run: two of the scale, one of turning, one of waiting on the dominant.</summary>
    private const int RunBars = 2;

    // The run ends near the middle of the right hand's octaves.
    private const int RunTop = 79;

    /// <summary>Tonic and dominant, a bar each.</summary>
    public static List<TuneBar> Vamp(TuneBar bar) =>
        [
            bar with
            {
                Notes = [],
                Chords = [new PlacedChord(ScoreTime.Zero, Tonic(bar.Key))],
            },
            bar with
            {
                Notes = [],
                Chords = [new PlacedChord(ScoreTime.Zero, Dominant(bar.Key))],
            },
        ];

    /// <summary>A closing bar on the tonic that lies nearest to the note before.</summary>
    public static TuneBar Close(TuneBar bar, int before)
    {
        var down = (before - bar.Key.Tonic.PitchClass + 120) % 12;
        var close = before - (down > 6 ? down - 12 : down);
        return bar with
        {
            Notes = [new TuneNote(ScoreTime.Zero, bar.Length, Pitch.At(close, bar.Key.Tonic))],
            Chords = [new PlacedChord(ScoreTime.Zero, Tonic(bar.Key))],
        };
    }

    /// <summary>Four bars on the dominant: up the scale to it, round it by the raised fourth, and a wait.</summary>
    public static List<TuneBar> Run(TuneBar bar)
    {
        var dominant = bar.Key.Tonic.PlusFifths(1);
        var top = Pitch.At(RunTop - (RunTop - dominant.PitchClass) % 12, dominant);
        var each = StepOf(bar.Metre);
        var inBar = (int)bar.Length.Per(each).Round(ScoreTime.Whole);
        var scale = Enumerable
            .Range(0, RunBars * inBar)
            .Select(i => Down(bar.Key, top, RunBars * inBar - 1 - i))
            .ToList();
        var half = each * (inBar / 2);
        TuneBar Of(params IEnumerable<TuneNote> notes) =>
            bar with
            {
                Notes = notes.ToValueList(),
                Chords = [new PlacedChord(ScoreTime.Zero, Dominant(bar.Key))],
            };
        return
        [
            .. Enumerable
                .Range(0, RunBars)
                .Select(b =>
                    Of(Enumerable.Range(0, inBar).Select(i => new TuneNote(each * i, each, scale[b * inBar + i])))
                ),
            Of(
                new TuneNote(ScoreTime.Zero, half, top),
                new TuneNote(half, bar.Length - half - each, Pitch.At(top.Midi - 1, bar.Key.Tonic.PlusFifths(6))),
                new TuneNote(bar.Length - each, each, top)
            ),
            Of(new TuneNote(ScoreTime.Zero, bar.Length, top)),
        ];
    }

    // Four to a bar of two or four, a note a pulse elsewhere.
    private static ScoreTime StepOf(Metre metre) =>
        Feels.IsDuple(metre) ? metre.BarLength / 4 : new ScoreTime(1, metre.Unit);

    // So many steps of the key under a note; in minor the seventh is raised on its way to the dominant.
    private static Pitch Down(Key key, Pitch from, int steps)
    {
        var index = from.DiatonicIndex - steps;
        var step = (Step)(index % 7);
        var tone = key.ToneOf(step);
        return new Pitch(
            key.IsMinor && tone == key.Tonic.PlusFifths(-2) ? key.Tonic.PlusFifths(5) : tone,
            (index - (int)step) / 7
        );
    }

    public static ChordSymbol Tonic(Key key) => new(key.Tonic, key.IsMinor ? ChordKind.Minor : ChordKind.Major);

    public static ChordSymbol Dominant(Key key) => new(key.Tonic.PlusFifths(1), ChordKind.Dominant);
}
