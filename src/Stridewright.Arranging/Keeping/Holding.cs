using System.Diagnostics.CodeAnalysis;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Puts kept bars onto the lattice, where the stages find them.</summary>
internal static class Holding
{
    /// <summary>The lattice with these bars held and no others; null with the conflict where they do not fit it.</summary>
    public static Lattice? Apply(Lattice lattice, ValueList<KeptBar> kept, out Diagnostic? conflict)
    {
        conflict = null;
        if (kept.Count == 0 && lattice.Bars.All(b => b.Held is null))
        {
            return lattice;
        }
        var bars = lattice.Bars.Select(b => b with { Held = null }).ToArray();
        var tunes = new HashSet<int>();
        foreach (var spot in kept)
        {
            if (spot.Bar < 0 || spot.Bar >= bars.Length)
            {
                conflict = Conflict(Place.Whole, KeepingMessages.NoBar(spot.Bar, bars.Length));
                return null;
            }
            var bar = bars[spot.Bar];
            var held = bar.Held ?? new HeldBar();
            if (spot.Hand == Hand.Left ? held.Left is not null : held.Right is not null)
            {
                conflict = Conflict(Place.AtBar(bar.Number), KeepingMessages.KeptTwice(spot.Hand));
                return null;
            }
            if (!Fits(lattice, bar, spot, out var fault))
            {
                conflict = Conflict(Place.AtBar(bar.Number), fault);
                return null;
            }
            if (spot.Strokes.FirstOrDefault(s => s.Tune is { } note && !tunes.Add(note)) is { } twice)
            {
                conflict = Conflict(Place.AtBar(bar.Number), KeepingMessages.InTwoBars(twice.At, twice.Pitches[^1]));
                return null;
            }
            held =
                spot.Hand == Hand.Left
                    ? held with
                    {
                        Left = Left(lattice, bar, spot),
                    }
                    : held with
                    {
                        Right = Right(lattice, bar, spot),
                        LeftOut = spot.LeftOut,
                    };
            bars[spot.Bar] = bar with { Held = held };
        }
        return lattice with { Bars = bars };
    }

    private static Diagnostic Conflict(Place place, string message) => new(Severity.Error, place, message);

    private static bool Fits(Lattice lattice, LatticeBar bar, KeptBar spot, [NotNullWhen(false)] out string? fault)
    {
        // The thumb's tune and what lies under it are two lines of one hand.
        fault =
            spot.Hand == Hand.Left && bar.Treatment.Right == RightManner.ThumbTune ? KeepingMessages.TuneInThumb : null;
        var length = lattice.Tick * bar.Length;
        ScoreTime? last = null;
        foreach (var stroke in spot.Strokes)
        {
            fault ??=
                stroke.At < ScoreTime.Zero || stroke.At >= length ? KeepingMessages.OutsideBar(stroke.At, length)
                : !stroke.At.IsMultipleOf(lattice.Tick) ? KeepingMessages.OffTheGrid(stroke.At, lattice.Tick)
                : stroke.At == last ? KeepingMessages.StruckTwice(stroke.At)
                : stroke.At < last ? KeepingMessages.OutOfOrder(stroke.At)
                : stroke.Pitches.Count == 0 || stroke.Length <= ScoreTime.Zero ? KeepingMessages.NoKeys(stroke.At)
                : null;
            last = stroke.At;
            if (spot.Hand == Hand.Right && stroke.Tune is { } tune)
            {
                fault ??=
                    tune < 0 || tune >= lattice.Notes.Length || lattice.Notes[tune].Key != stroke.Pitches[^1].Midi
                        ? KeepingMessages.NotTheTune(stroke.At, stroke.Pitches[^1])
                        : null;
            }
        }
        return fault is null;
    }

    private static ValueList<HeldRight> Right(Lattice lattice, LatticeBar bar, KeptBar spot) =>
        spot
            .Strokes.Select(stroke =>
            {
                var (tick, end) = Ticks(lattice, bar, stroke);
                return new HeldRight(tick, stroke.Tune ?? -1)
                {
                    Top = stroke.Pitches[^1],
                    Below = [.. stroke.Pitches.SkipLast(1)],
                    Crushed = stroke.Graces.Count > 0 ? stroke.Graces[^1] : null,
                    End = end,
                    UnderHeld = stroke.Voice == 2,
                };
            })
            .ToValueList();

    private static ValueList<HeldLeft> Left(Lattice lattice, LatticeBar bar, KeptBar spot) =>
        spot
            .Strokes.Select(stroke =>
            {
                var (tick, end) = Ticks(lattice, bar, stroke);
                return new HeldLeft(tick, end, Kind(stroke), stroke.Pitches) { Broken = stroke.Role == Spots.Broken };
            })
            .ToValueList();

    private static (int Tick, int End) Ticks(Lattice lattice, LatticeBar bar, KeptStroke stroke)
    {
        var tick = bar.Start + (int)stroke.At.Round(lattice.Tick);
        return (tick, tick + (int)Math.Max(1, stroke.Length.Round(lattice.Tick)));
    }

    private static LeftKind Kind(KeptStroke stroke) =>
        (stroke.Role, stroke.Pitches.Count) switch
        {
            (Spots.Broken, _) => LeftKind.Run,
            ("run", 1) => LeftKind.Run,
            ("run", _) => LeftKind.RunOctave,
            ("bass", 1) => LeftKind.Bass,
            ("bass", 2) when stroke.Pitches[1].Midi - stroke.Pitches[0].Midi == 12 => LeftKind.Octave,
            ("bass", 2) when stroke.Rolled => LeftKind.RolledTenth,
            ("bass", 2) => LeftKind.Tenth,
            _ => LeftKind.Chord,
        };
}
