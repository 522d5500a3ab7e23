using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>What a tick is (Standard MIDI File 1.0, header): a part of a quarter note, or of a second.</summary>
/// <param name="TicksPerQuarter">As the file says; where ticks are parts of a second, what they are turned into.</param>
/// <param name="TicksPerSecond">Zero where ticks are parts of a quarter note.</param>
internal readonly record struct MidiDivision(int TicksPerQuarter, double TicksPerSecond)
{
    private const int Fine = 960;
    private const int UsualTempo = 500_000; // microseconds a quarter where a file has no tempo

    public bool IsSeconds => TicksPerSecond > 0;

    /// <summary>Ticks beyond which nothing is read.</summary>
    public long MostTicks =>
        MidiLimits.Quarters * (IsSeconds ? Math.Max(1, (long)(TicksPerSecond / 2)) : TicksPerQuarter);

    public static bool TryRead(int division, out MidiDivision result)
    {
        if (division < 0x8000)
        {
            result = new(division, 0);
            return division > 0;
        }
        var frames = (0x100 - (division >> 8)) switch
        {
            24 => 24,
            25 => 25,
            29 => 30_000 / 1001.0,
            30 => 30,
            _ => 0,
        };
        result = new(Fine, frames * (division & 0xFF));
        return result.IsSeconds;
    }

    /// <summary>A file in parts of a second, laid on the quarter notes of its first tempo, or of 120 a minute.</summary>
    public MidiContents InQuarters(MidiContents file)
    {
        var tempo =
            file.Tracks.SelectMany(t => t.Tempi).Where(MidiLimits.Believes).MinBy(t => t.Tick)?.MicrosecondsPerQuarter
            ?? UsualTempo;
        var factor = Fine * 1e6 / (TicksPerSecond * tempo);
        long Tick(long tick) => (long)Math.Round(tick * factor);
        return file with
        {
            Tracks = file
                .Tracks.Select(track =>
                    track with
                    {
                        Strokes = track
                            .Strokes.Select(s =>
                                s with
                                {
                                    Tick = Tick(s.Tick),
                                    Length = Math.Max(1, Tick(s.End) - Tick(s.Tick)),
                                }
                            )
                            .ToValueList(),
                        Lyrics = track.Lyrics.Select(l => l with { Tick = Tick(l.Tick) }).ToValueList(),
                        Pedal = track.Pedal.Select(p => p with { Tick = Tick(p.Tick) }).ToValueList(),
                        Tempi = track.Tempi.Select(t => t with { Tick = Tick(t.Tick) }).ToValueList(),
                        Metres = track.Metres.Select(m => m with { Tick = Tick(m.Tick) }).ToValueList(),
                        Keys = track.Keys.Select(k => k with { Tick = Tick(k.Tick) }).ToValueList(),
                        EndTick = Tick(track.EndTick) + 1,
                    }
                )
                .ToValueList(),
        };
    }
}
