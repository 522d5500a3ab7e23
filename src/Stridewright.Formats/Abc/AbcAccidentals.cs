using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>How far an accidental holds to the end of its bar (ABC 2.1, 11.3, <c>propagate-accidentals</c>).</summary>
internal enum AbcScope
{
    /// <summary>For the letter in all octaves; this holds where nothing is said.</summary>
    Pitch,

    /// <summary>For the letter in its octave only.</summary>
    Octave,

    /// <summary>For its own note only.</summary>
    Not,
}

/// <summary>The accidentals that hold in a bar.</summary>
internal sealed class AbcAccidentals
{
    private readonly Dictionary<(Step, int), int> _alters = [];

    public void Set(Step step, int octave, int alter, AbcScope scope)
    {
        if (scope != AbcScope.Not)
        {
            _alters[(step, scope == AbcScope.Octave ? octave : 0)] = alter;
        }
    }

    public int? Of(Step step, int octave, AbcScope scope) =>
        _alters.TryGetValue((step, scope == AbcScope.Octave ? octave : 0), out var alter) ? alter : null;
}
