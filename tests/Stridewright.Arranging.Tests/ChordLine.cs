using Stridewright.Formats.ChordLines;
using Stridewright.Music;

namespace Stridewright.Arranging.Tests;

/// <summary>Lines of chords set for the left hand, and what its basses do at the changes.</summary>
internal static class ChordLine
{
    public static Tune Tune(string line, Feel feel = Feel.Classic) =>
        ChordKey.Settle(ChordLineReader.Read(line, Feels.UsualMetre(feel), "Test").Value!);

    public static ArrangeResult Arrange(Tune tune, Brief brief) =>
        Arranger.Arrange(tune, brief with { LeftHandOnly = true }, TestContext.Current.CancellationToken);

    /// <summary>
    /// Changes at which the lowest key struck is not the chord's root or written bass. Common practice knows one more:
    /// the fifth under the tonic's chord after the diminished chord on its raised fourth.
    /// </summary>
    public static List<string> WrongBasses(Score score)
    {
        var wrong = new List<string>();
        ChordSymbol? before = null;
        foreach (var bar in score.Bars)
        {
            foreach (var (at, chord) in bar.Chords.Select(c => (c.At, c.Chord)))
            {
                if (!chord.IsNoChord && !chord.Equals(before))
                {
                    var struck = bar
                        .Voices.SelectMany(v => v.Events)
                        .FirstOrDefault(e => e.At == at && e.Notes.Any(n => !n.TieStop));
                    var lowest = struck?.Notes[0].Pitch.Tone.PitchClass;
                    if (
                        lowest != chord.Lowest.PitchClass
                        && !(before is not null && IsFifthUnder(before, chord, lowest))
                    )
                    {
                        var keys = struck is null ? "nothing" : string.Join(' ', struck.Notes.Select(n => n.Pitch));
                        wrong.Add($"bar {bar.Number}, {at}: {chord} over {keys}");
                    }
                }
                before = chord;
            }
        }
        return wrong;
    }

    private static bool IsFifthUnder(ChordSymbol before, ChordSymbol chord, int? lowest) =>
        before.Kind is ChordKind.Diminished or ChordKind.DiminishedSeventh
        && before.Root.PitchClass == (chord.Root.PitchClass + 6) % 12
        && chord.Bass is null
        && lowest == (chord.Root.PitchClass + 7) % 12;
}
