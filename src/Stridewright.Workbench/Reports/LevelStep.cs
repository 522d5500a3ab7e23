using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What a setting has of the next easier one: onsets of the right hand with their top key, and off-beat chords of
/// the left with their keys, at the same bar and place.</summary>
/// <param name="Onsets">Right-hand onsets of the easier setting.</param>
/// <param name="OnsetsAgain">How many stand again.</param>
/// <param name="Chords">Left-hand chords of the easier setting.</param>
/// <param name="ChordsAgain">How many stand again.</param>
internal sealed record LevelStep(int Onsets, int OnsetsAgain, int Chords, int ChordsAgain)
{
    private const int Octave = 12;

    public static LevelStep Between(Score easier, Score harder)
    {
        var (tops, topsNext) = (Tops(easier), Tops(harder));
        var (chords, chordsNext) = (Stands(easier), Stands(harder));
        return new LevelStep(
            tops.Count,
            tops.Count(t => topsNext.TryGetValue(t.Key, out var top) && top == t.Value),
            chords.Count,
            chords.Count(c => chordsNext.TryGetValue(c.Key, out var keys) && keys.Equals(c.Value))
        );
    }

    private static Dictionary<ScoreTime, int> Tops(Score score) =>
        Timeline
            .Of(score)
            .Where(s => s.Hand == Hand.Right)
            .GroupBy(s => s.Start)
            .ToDictionary(g => g.Key, g => g.Max(s => s.Key));

    // Two keys or more that are no bare octave.
    private static Dictionary<ScoreTime, ValueList<int>> Stands(Score score) =>
        Timeline
            .Of(score)
            .Where(s => s.Hand == Hand.Left)
            .GroupBy(s => s.Start)
            .Select(g => (g.Key, Keys: g.Select(s => s.Key).Order().ToValueList()))
            .Where(g => g.Keys.Count > 2 || (g.Keys.Count == 2 && g.Keys[1] - g.Keys[0] < Octave))
            .ToDictionary(g => g.Key, g => g.Keys);
}
