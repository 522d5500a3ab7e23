using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>Collects findings up to the limit. Bars get their numbers late, so they are asked for them at the end.</summary>
internal sealed class AbcFindings
{
    private readonly List<(Severity Severity, int? Line, int? Column, AbcBar? Bar, string Message)> _found = [];
    private readonly HashSet<(int Tune, string Message)> _said = [];
    private readonly List<int> _leftOut = []; // places in _found
    private int _tune;
    private int _firstOfBody;

    public void Add(Severity severity, AbcSpot spot, string message, AbcBar? bar = null)
    {
        if (_found.Count < AbcLimits.Findings)
        {
            _found.Add((severity, spot.Line, spot.Column, bar, message));
        }
        else if (_found.Count == AbcLimits.Findings)
        {
            _found.Add((Severity.Note, null, null, null, AbcMessages.MoreFindings));
        }
    }

    /// <summary>The finding that matters most, before all others.</summary>
    public void AddFirst(Severity severity, string message) => _found.Insert(0, (severity, null, null, null, message));

    public void Warn(AbcSpot spot, string message, AbcBar? bar = null) => Add(Severity.Warning, spot, message, bar);

    /// <summary>Says this once for each tune.</summary>
    public void Once(Severity severity, AbcSpot spot, string message, AbcBar? bar = null)
    {
        if (_said.Add((_tune, message)))
        {
            Add(severity, spot, message, bar);
        }
    }

    public bool HasError => _found.Exists(f => f.Severity == Severity.Error);

    /// <summary>Tells that the tune is left out, at the first fault of its body where there is one, else at its start.</summary>
    public void LeaveOut(AbcSpot start, string message)
    {
        var fault = _found.FindIndex(_firstOfBody, f => f.Severity == Severity.Warning);
        _leftOut.Add(_found.Count);
        if (fault >= 0)
        {
            var (_, line, column, bar, text) = _found[fault];
            Warn(new(line, column), AbcMessages.NoNotesAfter(text), bar);
        }
        else
        {
            Warn(start, message);
        }
    }

    /// <summary>Makes errors of the tunes left out: there is no other.</summary>
    public void FailLeftOut()
    {
        foreach (var i in _leftOut.Where(i => i < _found.Count && _found[i].Severity == Severity.Warning))
        {
            _found[i] = _found[i] with { Severity = Severity.Error };
        }
    }

    /// <summary>What is found from now on is about the music of the tune.</summary>
    public void BodyBegins() => _firstOfBody = _found.Count;

    public void NextTune()
    {
        _tune++;
        _firstOfBody = _found.Count;
        _said.Clear();
    }

    public ValueList<Diagnostic> ToDiagnostics() =>
        _found
            .Select(f => new Diagnostic(f.Severity, new Place(f.Line, f.Column, f.Bar?.Number), f.Message))
            .ToValueList();
}

/// <summary>A line and column of the source, both from 1.</summary>
internal readonly record struct AbcSpot(int? Line, int? Column = null);
