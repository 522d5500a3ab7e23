using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// Right hand beside a voice, what: the keys of its chords and fills, the smoothest line among what the hand plays as it
/// stands in other bars, within reach and speed.
/// </summary>
internal sealed class Accompanying
{
    private const int Unit = Lattice.TicksPerUnit;
    private const long Forced = 40_000,
        ChordLine = 110,
        Apart = 200,
        NoStep = 6000;

    // Price of a fill's interval by semitones: steps, thirds and fourths before leaps, no note twice.
    private static readonly long[] LinePrice = [2500, 300, 100, 150, 150, 350, 1200, 500, 800, 1000, 1800, 3000, 900];
    private const long WideLeap = 4000;

    private readonly Stage _stage;
    private readonly Lattice _lattice;

    private Accompanying(Stage stage)
    {
        _stage = stage;
        _lattice = stage.Lattice;
    }

    /// <summary>The line with chords and fills in the bars in which the right hand only fills.</summary>
    /// <param name="octaves">From the tune on the lattice to the tune as sung.</param>
    /// <param name="strainPrice">Price of a strained shape, raised when they are too many.</param>
    /// <param name="thinBars">Bars in which the judge asked for single notes.</param>
    public static RightLine Add(
        Stage stage,
        RightLine line,
        int octaves,
        HomePositions homes,
        long strainPrice,
        IReadOnlySet<int> thinBars,
        CancellationToken cancellation
    )
    {
        if (stage.Lattice.Bars.All(b => b.Treatment.Right != RightManner.FillsOnly))
        {
            return line;
        }
        var voice = new Voice(stage.Lattice, octaves);
        var onsets = Comping
            .Solve(stage, voice, cancellation)
            .Concat(line.Notes.Select(n => new CompOnset(n.Tick, CompKind.Fixed, n.End) { Note = n }))
            .OrderBy(o => o.Tick)
            .ToArray();
        var shapes = new CompShapes(stage, homes, voice, strainPrice);
        var layers = onsets
            .Select(o =>
                o.Note is { } note
                    ? [Fixed(stage.RightReach, note)]
                    : shapes.Of(o, thinBars.Contains(stage.Lattice.BarAt(o.Tick)))
            )
            .ToArray();
        // Hands and chord may leave an onset without any shape: it goes.
        onsets = [.. onsets.Where((_, i) => layers[i].Length > 0)];
        layers = [.. layers.Where(l => l.Length > 0)];
        return new Accompanying(stage).Solve(line, onsets, layers, cancellation);
    }

    private static CompShape Fixed(Reach reach, RightNote note) =>
        new([.. note.Below, note.Top], reach.Of(note.Lowest, note.Top.Midi), false, 0);

    private RightLine Solve(RightLine line, CompOnset[] onsets, CompShape[][] layers, CancellationToken cancellation)
    {
        if (onsets.Length == 0)
        {
            return line;
        }
        var path = new LayeredPath();
        for (var i = 0; i < onsets.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            path.OpenLayer(layers[i].Length);
            for (var to = 0; to < layers[i].Length; to++)
            {
                if (i == 0)
                {
                    path.Start(to, layers[i][to].Price, to);
                    continue;
                }
                for (var from = 0; from < layers[i - 1].Length; from++)
                {
                    var move = Move(onsets[i - 1], onsets[i], layers[i - 1][from], layers[i][to]);
                    path.Offer(from, to, path.EarlierCosts[from] + layers[i][to].Price + move, to);
                }
            }
        }
        var (cost, steps) = path.Best() ?? throw new InvalidOperationException("every onset has a shape");
        return line with
        {
            Notes = [.. onsets.Select((_, i) => Note(onsets, i, layers[i][steps[i].Node]))],
            Cost = line.Cost + cost,
        };
    }

    private long Move(CompOnset before, CompOnset onset, CompShape from, CompShape to)
    {
        if (before.Kind == CompKind.Fixed && onset.Kind == CompKind.Fixed)
        {
            return 0;
        }
        var seconds = (onset.Tick - before.Tick) * _stage.SecondsPerTick;
        var bits = Leap.Bits(
            Leap.Shift(_stage.RightReach, from.Low, from.High, to.Low, to.High),
            _stage.RightReach.Keyboard
        );
        var price = bits > _stage.LeapLimit(before.Tick, Hand.Right) * seconds ? Forced : 0;
        price += from.Stretch == Stretch.Strained && to.Stretch == Stretch.Strained ? Forced : 0;
        var interval = Math.Abs(to.High - from.High);
        if (onset.Kind == CompKind.Chord && before.Kind == CompKind.Chord)
        {
            return price + ChordLine * VoiceLeading.Registered(from.Keys, to.Keys);
        }
        if (onset.Kind != CompKind.Fill || before.Kind != CompKind.Fill || before.EndsFill)
        {
            return price + (to.IsPassing ? NoStep : 0) + Apart * Math.Max(0, interval - 4) / 2;
        }
        price += interval < LinePrice.Length ? LinePrice[interval] : WideLeap;
        return price + ((from.IsPassing || to.IsPassing) && interval is 0 or > 2 ? NoStep : 0);
    }

    private RightNote Note(CompOnset[] onsets, int index, CompShape shape)
    {
        var onset = onsets[index];
        var next = index + 1 < onsets.Length ? onsets[index + 1].Tick : _lattice.End;
        if (onset.Note is { } note)
        {
            var stands = index + 1 == onsets.Length || onsets[index + 1].Kind == CompKind.Fixed;
            return stands ? note : note with { End = Math.Min(note.End, next) };
        }
        var own = onset.Kind == CompKind.Fill ? Math.Min(onset.Until, onset.Tick + 2 * Unit) : onset.Until;
        return new RightNote
        {
            Tick = onset.Tick,
            End = Math.Min(next, own),
            Tune = -1,
            Top = shape.Keys[^1],
            Below = shape.Keys.SkipLast(1).ToValueList(),
        };
    }
}
