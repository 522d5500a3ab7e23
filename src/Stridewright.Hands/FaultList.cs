using Stridewright.Music;

namespace Stridewright.Hands;

/// <summary>Collects faults and gives them out in time order.</summary>
internal sealed class FaultList(Passage passage)
{
    private readonly List<(ScoreTime Start, Fault Fault)> _found = [];

    public void Add(FaultKind kind, Onset onset, double need, double limit, string message) =>
        Add(kind, onset.Hand, onset.Start, onset.Bar, onset.At, need, limit, message);

    public void Add(FaultKind kind, Sounding sounding, double need, double limit, string message) =>
        Add(kind, sounding.Hand, sounding.Start, sounding.Bar, sounding.At, need, limit, message);

    public ValueList<Fault> InOrder() => _found.OrderBy(f => f.Start).Select(f => f.Fault).ToValueList();

    private void Add(
        FaultKind kind,
        Hand hand,
        ScoreTime start,
        int bar,
        ScoreTime at,
        double need,
        double limit,
        string message
    ) => _found.Add((start, new(kind, hand, bar, passage.Place(bar, at), need, limit, message) { At = at }));
}
