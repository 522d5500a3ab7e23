using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>Collects findings while a file is read, a bounded number of them.</summary>
internal sealed class Findings
{
    private readonly List<Diagnostic> _kept = [];
    private int _more;

    /// <summary>Name of the entry being read inside a compressed file.</summary>
    public string? Entry { get; set; }

    public bool HasError => _kept.Exists(d => d.Severity == Severity.Error);

    public void Note(Place place, string message) => Add(Severity.Note, place, message);

    public void Warn(Place place, string message) => Add(Severity.Warning, place, message);

    public void Fail(Place place, string message) => Add(Severity.Error, place, message);

    public ValueList<Diagnostic> ToValueList() =>
        _more == 0
            ? _kept.ToValueList()
            : _kept
                .Append(new Diagnostic(Severity.Warning, Place.Whole, MusicXmlMessages.MoreFindings(_more)))
                .ToValueList();

    private void Add(Severity severity, Place place, string message)
    {
        if (_kept.Count >= MusicXmlLimits.Findings && severity != Severity.Error)
        {
            _more++;
            return;
        }
        _kept.Add(new Diagnostic(severity, place with { Entry = Entry }, message));
    }
}
