using Stridewright.Music;

namespace Stridewright.Formats.Midi;

/// <summary>Collects findings: of each kind of damage the first place, and in how many more it occurs.</summary>
internal sealed class MidiFindings
{
    private readonly Dictionary<MidiDamage, int> _times = [];
    private readonly List<(MidiDamage Damage, Place Place, string Message)> _found = [];

    /// <summary>Notes a damage; true when the reader goes on after it.</summary>
    public bool Add(MidiDamage damage, long at, long? tick, string message)
    {
        var times = _times.GetValueOrDefault(damage) + 1;
        _times[damage] = times;
        if (times == 1)
        {
            _found.Add((damage, new Place(Byte: at, Tick: tick), message));
        }
        return MidiPolicy.Of(damage) != Severity.Error;
    }

    public ValueList<Diagnostic> ToDiagnostics() =>
        _found
            .OrderByDescending(f => MidiPolicy.Of(f.Damage) == Severity.Error)
            .Select(f => new Diagnostic(
                MidiPolicy.Of(f.Damage),
                f.Place,
                _times[f.Damage] == 1 ? f.Message : MidiMessages.AndMore(f.Message, _times[f.Damage] - 1)
            ))
            .ToValueList();
}
