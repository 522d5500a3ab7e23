using Stridewright.Music;

namespace Stridewright.Practice.Lessons;

/// <summary>What a hand strikes at one moment of the piece.</summary>
/// <param name="Bar">Index of the bar.</param>
/// <param name="At">Place in the bar.</param>
/// <param name="Start">From the start of the piece.</param>
/// <param name="Pitches">Lowest first, each key once.</param>
internal sealed record HandStroke(int Bar, ScoreTime At, ScoreTime Start, ValueList<Pitch> Pitches)
{
    private const int Octave = 12;

    public Pitch Low => Pitches[0];

    public ValueList<int> Keys => Pitches.Select(p => p.Midi).ToValueList();

    /// <summary>A single key, an octave or a tenth.</summary>
    public bool IsBass =>
        Pitches.Count == 1 || (Pitches.Count == 2 && Pitches[1].Midi - Low.Midi is Octave or 15 or 16);

    /// <summary>A hand's strokes in time order.</summary>
    public static List<HandStroke> Of(Score score, Hand hand) =>
        [
            .. Timeline
                .Strike(score, Enumerable.Range(0, score.Bars.Count))
                .Where(s => s.Sounding.Hand == hand && s.Sounding.End > s.Sounding.Start)
                .GroupBy(s => s.Sounding.Start)
                .OrderBy(g => g.Key)
                .Select(g => new HandStroke(
                    g.First().Sounding.Bar,
                    g.First().Sounding.At,
                    g.Key,
                    g.Select(s => s.Source.Notes[s.Note].Pitch)
                        .DistinctBy(p => p.Midi)
                        .OrderBy(p => p.Midi)
                        .ToValueList()
                )),
        ];
}

/// <summary>From one stroke of the left hand to another, with how often it comes.</summary>
/// <param name="From">The lower one, a bass; of a change of chords the first.</param>
/// <param name="Apart">From one to the other as written.</param>
/// <param name="Seconds">The least time there is for it.</param>
/// <param name="Rate">Bits per second of the lowest keys in that time.</param>
/// <param name="Bars">Indexes of the bars that it begins in, in order, once for each time.</param>
/// <param name="Ends">Index of the bar that it ends in the first time.</param>
internal sealed record StrokePair(
    HandStroke From,
    HandStroke To,
    ScoreTime Apart,
    double Seconds,
    double Rate,
    ValueList<int> Bars,
    int Ends
)
{
    public KeyMove Move => new(From.Keys, To.Keys, Bars.Count, Math.Round(Seconds, 3));
}
