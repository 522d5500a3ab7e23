using Stridewright.Music;

namespace Stridewright.Sound;

/// <summary>Sounds the strokes of a performance together, block after block.</summary>
internal sealed class Mixer
{
    private readonly List<Voice> _voices = [];
    private readonly List<Voice> _sounding = [];
    private int _next;

    public Mixer(ValueList<RingingStroke> strokes, Dictionary<int, PianoString> strings)
    {
        foreach (var stroke in strokes.OrderBy(s => s.Start))
        {
            var key = Strings.OnKeyboard(stroke.Stroke.Key);
            var sound = strings[key];
            var start = (long)Math.Round(stroke.Start * Wav.Rate);
            var damped = PianoString.IsDamped(key)
                ? (int)Math.Min(sound.Frames, Math.Round((stroke.Damped - stroke.Start) * Wav.Rate))
                : sound.Frames;
            var end = start + Math.Min(sound.Frames, damped + sound.DampingFrames);
            _voices.Add(new Voice(sound, start, damped, end, stroke.Stroke.Velocity));
            End = Math.Max(End, end);
        }
    }

    /// <summary>The frame after the last that sounds.</summary>
    public long End { get; }

    /// <summary>Adds the frames of a block to it; blocks are asked for in order.</summary>
    /// <param name="start">The block's first frame.</param>
    public void Add(Span<float> block, long start, float level)
    {
        var end = start + (block.Length / 2);
        for (; _next < _voices.Count && _voices[_next].Start < end; _next++)
        {
            _sounding.Add(_voices[_next]);
        }
        _sounding.RemoveAll(v => v.End <= start);
        foreach (var voice in _sounding)
        {
            var from = Math.Max(start, voice.Start);
            var until = Math.Min(end, voice.End);
            var part = block[(2 * (int)(from - start))..(2 * (int)(until - start))];
            voice.Sound.AddTo(part, (int)(from - voice.Start), voice.Damped, voice.Velocity);
        }
        foreach (ref var sample in block)
        {
            sample *= level;
        }
    }

    /// <param name="Damped">Frame of the voice at which the damper falls.</param>
    private sealed record Voice(PianoString Sound, long Start, int Damped, long End, int Velocity);
}
