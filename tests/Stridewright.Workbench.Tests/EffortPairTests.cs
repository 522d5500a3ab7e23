using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Workbench.Tests;

/// <summary>
/// Pairs of an easier and a harder setting of one piece: settings of our samples, simplified or thickened by a stated
/// change whose direction no teacher doubts (common practice). The harder must rank higher in nine pairs of ten.
/// </summary>
public sealed class EffortPairTests
{
    private static readonly string[] Tunes =
    [
        "ferry-bell",
        "lamps-along-the-quay",
        "rain-on-the-awning",
        "rope-and-lantern",
    ];

    private static readonly (string Change, Func<Score, Score> Easier)[] Simplified =
    [
        ("the right hand's lowest notes left out", s => Each(s, Hand.Right, n => n.TakeLast(1))),
        ("the left hand's upper notes left out", s => Each(s, Hand.Left, n => n.Take(1))),
        ("inner notes left out", s => Each(Each(s, Hand.Left, Outer), Hand.Right, Outer)),
        ("the left hand left out", s => Each(s, Hand.Left, _ => [])),
        (
            "the left hand's single notes and octaves brought up an octave",
            s => Each(s, Hand.Left, n => n.Count() < 3 ? Moved(n, 1) : n)
        ),
        ("half the tempo", s => Slower(s, 0.5)),
    ];

    private static readonly (string Change, Func<Score, Score> Harder)[] Thickened =
    [
        (
            "the right hand's single notes in octaves",
            s => Each(s, Hand.Right, n => n.Count() == 1 ? [.. Moved(n, -1), .. n] : n)
        ),
        (
            "the left hand's single notes in octaves",
            s => Each(s, Hand.Left, n => n.Count() == 1 ? [.. Moved(n, -1), .. n] : n)
        ),
        ("a tempo a quarter faster", s => Slower(s, 1.25)),
    ];

    [Fact]
    public void The_harder_of_a_pair_ranks_higher()
    {
        var pairs = new List<(string Name, double Easier, double Harder)>();
        foreach (var tune in Tunes)
        {
            var score = Setting(tune, level: 4);
            foreach (var (change, easier) in Simplified)
            {
                pairs.Add(($"{tune}, {change}", Effort(easier(score)), Effort(score)));
            }
            foreach (var (change, harder) in Thickened)
            {
                pairs.Add(($"{tune}, {change}", Effort(score), Effort(harder(score))));
            }
            foreach (var level in new[] { 1, 3 })
            {
                pairs.Add(
                    (
                        $"{tune}, level {level} and {level + 2}",
                        Effort(Setting(tune, level)),
                        Effort(Setting(tune, level + 2))
                    )
                );
            }
        }
        var wrong = pairs
            .Where(p => p.Easier >= p.Harder)
            .Select(p => FormattableString.Invariant($"{p.Name}: {p.Easier:0.0} {p.Harder:0.0}"))
            .ToList();
        Assert.True(
            pairs.Count >= 12 && wrong.Count <= 0.1 * pairs.Count,
            $"{wrong.Count} of {pairs.Count}: {string.Join("; ", wrong)}"
        );
        // An octave higher everything is as hard as before, to three parts in a hundred.
        foreach (var tune in Tunes)
        {
            var score = Setting(tune, level: 4);
            var moved = Each(Each(score, Hand.Left, n => Moved(n, 1)), Hand.Right, n => Moved(n, 1));
            Assert.InRange(Effort(moved) / Effort(score), 0.97, 1.03);
        }
    }

    private static double Effort(Score score) => Judge.Check(score, new PlayerHands()).Effort.Overall;

    private static Score Setting(string tune, int level)
    {
        var path = Path.Combine(Corpus.CheckoutRoot, "samples", tune + ".abc");
        var book = AbcReader.Read(new StringReader(File.ReadAllText(path)), null).Value!;
        return Arranger.Arrange(book[0], new Brief { LeftLevel = level, RightLevel = level }).Arrangement!.Score;
    }

    private static IEnumerable<ScoreNote> Outer(IEnumerable<ScoreNote> notes)
    {
        var all = notes.ToList();
        return all.Count > 2 ? [all[0], all[^1]] : all;
    }

    private static IEnumerable<ScoreNote> Moved(IEnumerable<ScoreNote> notes, int octaves) =>
        notes.Select(n => n with { Pitch = n.Pitch with { Octave = n.Pitch.Octave + octaves } });

    private static Score Slower(Score score, double factor) =>
        score with
        {
            Bars = score
                .Bars.Select(b =>
                    b with
                    {
                        Directions = b
                            .Directions.Select(d => d with { BeatsPerMinute = d.BeatsPerMinute * factor })
                            .ToValueList(),
                    }
                )
                .ToValueList(),
        };

    private static Score Each(Score score, Hand hand, Func<IEnumerable<ScoreNote>, IEnumerable<ScoreNote>> change) =>
        score with
        {
            Bars = score
                .Bars.Select(b =>
                    b with
                    {
                        Voices = b
                            .Voices.Select(v =>
                                v.Hand != hand
                                    ? v
                                    : v with
                                    {
                                        Events = v
                                            .Events.Select(e =>
                                                e.Notes.Count == 0
                                                    ? e
                                                    : e with
                                                    {
                                                        Notes = change(e.Notes).ToValueList(),
                                                    }
                                            )
                                            .ToValueList(),
                                    }
                            )
                            .ToValueList(),
                    }
                )
                .ToValueList(),
        };
}
