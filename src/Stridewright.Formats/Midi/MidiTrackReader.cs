using System.Text;
using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>Reads the events of one track chunk.</summary>
/// <param name="start">First byte of the track's data.</param>
/// <param name="end">First byte after it, within the file.</param>
/// <param name="isCut">The chunk says that it goes on past the end of the file.</param>
internal sealed class MidiTrackReader(
    byte[] bytes,
    int start,
    int end,
    bool isCut,
    MidiFindings findings,
    MidiBudget budget
)
{
    private const byte Meta = 0xFF,
        SystemExclusive = 0xF0,
        Continued = 0xF7;

    private const byte SustainPedal = 64, // controller 64, down from the value 64 (MIDI 1.0)
        PedalDown = 64;

    private enum Step
    {
        Next,
        EndOfTrack,
        Cut,
        Refused,
    }

    private readonly MidiKeys _keys = new(findings, budget);
    private readonly List<MidiLyric> _lyrics = [];
    private readonly List<PedalChange> _pedal = [];
    private readonly List<TempoChange> _tempi = [];
    private readonly List<MetreChange> _metres = [];
    private readonly List<KeyChange> _signatures = [];
    private string _name = "";
    private string _instrument = "";
    private int _eventAt;
    private byte _running; // last channel status; 0: none yet
    private bool _runs; // no meta or exclusive event has come between

    public int Start { get; } = start;

    /// <summary>The byte it has come to.</summary>
    public int At { get; private set; } = start;

    /// <summary>The tick it has come to.</summary>
    public long Tick { get; private set; }

    /// <summary>False when the file is refused.</summary>
    public bool Read(long mostTicks)
    {
        var step = Step.Next;
        while (step == Step.Next && At < end)
        {
            _eventAt = At;
            step = ReadEvent(mostTicks);
        }
        if (step == Step.Refused)
        {
            return false;
        }
        if (step == Step.Cut && !isCut)
        {
            findings.Add(MidiDamage.EventPastTrackEnd, _eventAt, Tick, MidiMessages.EventPastTrackEnd);
        }
        else if (step == Step.Next && !isCut)
        {
            findings.Add(MidiDamage.NoEndOfTrack, end, Tick, MidiMessages.NoEndOfTrack);
        }
        else if (step == Step.EndOfTrack && At < end && !isCut)
        {
            findings.Add(MidiDamage.BytesAfterEnd, At, Tick, MidiMessages.BytesAfterEnd(end - At));
        }
        At = step == Step.EndOfTrack ? At : end;
        _keys.Finish(Tick);
        return true;
    }

    public MidiTrack ToTrack(int number) =>
        new()
        {
            Number = number,
            Name = _name.Length > 0 ? _name : _instrument,
            Strokes = _keys.Strokes.OrderBy(s => s.Tick).ThenBy(s => s.Key).ToValueList(),
            Lyrics = _lyrics.ToValueList(),
            Pedal = _pedal.ToValueList(),
            Tempi = _tempi.ToValueList(),
            Metres = _metres.ToValueList(),
            Keys = _signatures.ToValueList(),
            EndTick = Math.Max(Tick, _keys.LastTick),
        };

    private Step ReadEvent(long mostTicks)
    {
        if (!TryQuantity(out var delta, out var step))
        {
            return step;
        }
        if (Tick + delta > mostTicks)
        {
            findings.Add(MidiDamage.TooLong, _eventAt, Tick + delta, MidiMessages.TooLong(MidiLimits.Quarters));
            At = end;
            return Step.EndOfTrack;
        }
        Tick += delta;
        if (At >= end)
        {
            return Step.Cut;
        }
        var status = bytes[At];
        if (status >= 0x80)
        {
            At++;
        }
        switch (status)
        {
            case < 0x80:
                return ReadRunning();
            case < 0xF0:
                (_running, _runs) = (status, true);
                return ReadChannelEvent(status);
            case Meta:
                _runs = false;
                return ReadMeta();
            case SystemExclusive or Continued:
                _runs = false;
                return TryBlock(out _, out step) ? Step.Next : step;
            // Timing clock, start, continue, stop and active sensing carry no data: nothing is lost without them.
            case 0xF8 or 0xFA or 0xFB or 0xFC or 0xFE:
                findings.Add(MidiDamage.RealTimeByte, At - 1, Tick, MidiMessages.RealTimeByte(status));
                return Step.Next;
            default:
                findings.Add(MidiDamage.IllegalStatus, At - 1, Tick, MidiMessages.IllegalStatus(status));
                return Step.Refused;
        }
    }

    private Step ReadRunning()
    {
        if (_running == 0)
        {
            findings.Add(MidiDamage.NoStatus, At, Tick, MidiMessages.NoStatus(bytes[At]));
            return Step.Refused;
        }
        if (!_runs)
        {
            findings.Add(MidiDamage.RunningStatusAcrossMeta, At, Tick, MidiMessages.RunningStatusAcrossMeta);
            _runs = true;
        }
        return ReadChannelEvent(_running);
    }

    private Step ReadChannelEvent(byte status)
    {
        var count = (status & 0xF0) is 0xC0 or 0xD0 ? 1 : 2;
        for (var i = At; i < At + count; i++)
        {
            if (i >= end)
            {
                return Step.Cut;
            }
            if (bytes[i] >= 0x80)
            {
                findings.Add(MidiDamage.StatusInData, i, Tick, MidiMessages.StatusInData(bytes[i]));
                return Step.Refused;
            }
        }
        var (first, second) = (bytes[At], count > 1 ? bytes[At + 1] : (byte)0);
        At += count;
        var channel = (status & 0x0F) + 1;
        switch (status & 0xF0)
        {
            case 0x90 when second > 0:
                _keys.Strike(channel, first, second, Tick, _eventAt);
                break;
            case 0x80 or 0x90:
                _keys.Release(channel, first, Tick, _eventAt);
                break;
            case 0xB0 when first == SustainPedal:
                Press(second >= PedalDown);
                break;
            default:
                break;
        }
        return Step.Next;
    }

    // A pedal that tells every step of its way says most of them twice.
    private void Press(bool isDown)
    {
        if (isDown != (_pedal is [.., { Down: true }]) && _pedal.Count < MidiLimits.Marks)
        {
            _pedal.Add(new(Tick, isDown));
        }
    }

    private Step ReadMeta()
    {
        if (At >= end)
        {
            return Step.Cut;
        }
        var type = bytes[At++];
        if (!TryBlock(out var data, out var step))
        {
            return step;
        }
        if (type == 0x2F)
        {
            return Step.EndOfTrack;
        }
        if (type is 0x51 or 0x58 or 0x59 or 0x05 && ++budget.Marks > MidiLimits.Marks)
        {
            findings.Add(MidiDamage.TooManyMarks, _eventAt, Tick, MidiMessages.TooManyMarks(MidiLimits.Marks));
            return Step.Next;
        }
        var understood = type switch
        {
            0x51 => AddTempo(data),
            0x58 => AddMetre(data),
            0x59 => AddKey(data),
            _ => AddText(type, data),
        };
        if (!understood)
        {
            findings.Add(MidiDamage.BadMeta, _eventAt, Tick, MidiMessages.BadMeta(type));
        }
        return Step.Next;
    }

    private bool AddTempo(ReadOnlySpan<byte> data)
    {
        if (data.Length < 3)
        {
            return false;
        }
        var microseconds = data[0] << 16 | data[1] << 8 | data[2];
        if (microseconds == 0)
        {
            return false;
        }
        _tempi.Add(new(Tick, microseconds));
        return true;
    }

    private bool AddMetre(ReadOnlySpan<byte> data)
    {
        if (data.Length < 2 || data[0] is 0 or > MidiLimits.MetreCount || data[1] > MidiLimits.MetreUnitPower)
        {
            return false;
        }
        _metres.Add(new(Tick, new Metre(data[0], 1 << data[1])));
        return true;
    }

    private bool AddKey(ReadOnlySpan<byte> data)
    {
        if (data.Length < 2 || data[1] > 1)
        {
            return false;
        }
        var sharps = data[0] < 0x80 ? data[0] : data[0] - 0x100;
        if (sharps is < -7 or > 7)
        {
            return false;
        }
        _signatures.Add(new(Tick, Key.FromSignature(sharps, data[1] == 1 ? Mode.Minor : Mode.Major)));
        return true;
    }

    private bool AddText(byte type, ReadOnlySpan<byte> data)
    {
        switch (type)
        {
            case 0x03 when _name.Length == 0:
                _name = Text(data).Trim();
                break;
            case 0x04 when _instrument.Length == 0:
                _instrument = Text(data).Trim();
                break;
            case 0x05:
                _lyrics.Add(new(Tick, Text(data)));
                break;
            default:
                break;
        }
        return true;
    }

    // UTF-8, else Latin-1, without control characters.
    private static string Text(ReadOnlySpan<byte> data)
    {
        var some = data[..Math.Min(data.Length, MidiLimits.Text)];
        string text;
        try
        {
            text = new UTF8Encoding(false, throwOnInvalidBytes: data.Length == some.Length).GetString(some);
        }
        catch (DecoderFallbackException)
        {
            text = Encoding.Latin1.GetString(some);
        }
        return string.Concat(text.Select(c => c is '\r' or '\n' or '\t' ? ' ' : c).Where(c => !char.IsControl(c)));
    }

    // A length with so many bytes behind it.
    private bool TryBlock(out ReadOnlySpan<byte> data, out Step step)
    {
        data = default;
        if (!TryQuantity(out var length, out step))
        {
            return false;
        }
        if (length > end - At)
        {
            step = Step.Cut;
            return false;
        }
        data = bytes.AsSpan(At, length);
        At += length;
        return true;
    }

    private bool TryQuantity(out int value, out Step step)
    {
        step = Step.Next;
        if (VariableLength.TryRead(bytes.AsSpan(At, end - At), out value, out var count))
        {
            At += count;
            return true;
        }
        step = count < VariableLength.MostBytes ? Step.Cut : Step.Refused;
        if (step == Step.Refused)
        {
            findings.Add(MidiDamage.NumberTooLong, At, Tick, MidiMessages.NumberTooLong);
        }
        return false;
    }
}
