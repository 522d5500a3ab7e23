using CsCheck;
using Stridewright.Formats.ChordLines;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>A left hand made from chords alone: playable, and with the right bass at every change.</summary>
public sealed class ChordLineLaws
{
    private static readonly int[] Spans = [185, 205, 230];

    /// <summary>Progressions of the trade (common practice).</summary>
    public static TheoryData<string> Progressions =>
        [
            "F | D7 | G7 C7 | F",
            "|: Dm7 G7 | Cmaj7 A7 | Dm7 G7 | C6 :| Em7b5 A7b9 | Dm7 G9 | C13 | C",
            "E7 | A7 | D7 | G7 | C7 | F7 | Bb7 | Eb7 | Ab7 | Db7 | Gb7 | B7 | E7 | A",
            "C | C#dim7 | Dm7 | D#dim7 | C/E | Fm6 | C/G G7 | C",
            "Bb Bdim7 | F/C D7 | G7 C7 | F",
            "F | F#dim7 | C | A7 | D7 | G7 | C | .",
            "Am | Am/G | F7 | E7 | Am E7/G# | C/G D7/F# | Dm6/F E7 | Am",
            "Cm G7/B | Cm7/Bb F7/A | Abmaj7 Fm7 | Dm7b5 G7#5 | Cm",
            "Eb C7 Fm7 Bb7 | Eb C7 Fm7 Bb7 | Eb Eb7/G Ab Adim7 | Eb/Bb Bb7 Eb Bb7",
            "Gm7 | C11 | Fmaj9 D7b9 | Gsus4 G7 | Caug F6 | Bbm(maj7) Eb9 | F5 | F",
            "F N.C. | N.C. | N.C. C7 | F",
        ];

    [Theory]
    [MemberData(nameof(Progressions))]
    public void Every_key_level_and_span_is_playable_with_the_right_bass_at_every_change(string line)
    {
        foreach (var feel in Enum.GetValues<Feel>())
        {
            if (ChordLineReader.Read(line, Feels.UsualMetre(feel), "Test").Value is null)
            {
                Assert.Equal(Feel.Waltz, feel); // four chords find no place in three beats
                continue;
            }
            var tune = ChordLine.Tune(line, feel);
            foreach (var tonic in TwelveKeys.From(tune.Bars[0].Key))
            {
                for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
                {
                    foreach (var span in Spans)
                    {
                        AssertRight(tune, feel, tonic, level, span);
                    }
                }
            }
        }
    }

    private static void AssertRight(Tune tune, Feel feel, Tone tonic, int level, int span)
    {
        var hands = new PlayerHands { SpanMm = span };
        var brief = new Brief
        {
            Feel = feel,
            LeftLevel = level,
            Tonic = tonic,
            Hands = hands,
        };
        var result = ChordLine.Arrange(tune, brief);
        var what = $"{feel} in {tonic}, level {level}, {span} mm: ";
        Assert.True(result.Arrangement is not null, what + result.Refusal?.Message);
        var score = result.Arrangement.Score;
        Assert.True(score.LeftHandOnly);
        Assert.True(Judge.Check(score, hands).IsPlayable, what);
        Assert.Equal(tune.Bars.Count, score.Bars.Count);
        Assert.True(ChordLine.WrongBasses(score) is [], what + string.Join("; ", ChordLine.WrongBasses(score)));
    }

    [Theory]
    [InlineData(185)]
    [InlineData(205)]
    [InlineData(230)]
    public void The_independent_audit_passes_all_keys_and_levels(int span)
    {
        var tune = ChordLine.Tune(
            "|: F | D7 | G7 C7 | F F7/Eb | Bb Bdim7 | F/C D7 | G7 C7 | F :| Dm | A7/C# | Dm7 | G7 | C7 | F"
        );
        var folder = Directory.CreateTempSubdirectory("stridewright-chords-");
        try
        {
            var scores = new List<(string, string?)>();
            foreach (var tonic in TwelveKeys.From(tune.Bars[0].Key))
            {
                for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
                {
                    var hands = new PlayerHands { SpanMm = span };
                    var brief = new Brief
                    {
                        LeftLevel = level,
                        Tonic = tonic,
                        Hands = hands,
                    };
                    var score = ChordLine.Arrange(tune, brief).Arrangement!.Score;
                    var path = Path.Combine(folder.FullName, $"{scores.Count}.musicxml");
                    using var file = File.Create(path);
                    MusicXmlWriter.Write(OnTwoStaves(score), file);
                    scores.Add((path, null));
                }
            }
            Assert.Empty(Audit.Failures(span, scores));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    // The audit wants two hands: the right one is given a single high note.
    private static Score OnTwoStaves(Score score)
    {
        var note = new ScoreEvent(default, ScoreTime.Half, new NoteValue(2)) { Notes = [new(Pitch.Parse("C7"))] };
        var first = score.Bars[0] with { Voices = [new(Hand.Right, 1, [note]), .. score.Bars[0].Voices] };
        return score with { LeftHandOnly = false, Bars = [first, .. score.Bars.Skip(1)] };
    }

    private static readonly string[] Roots = ["C", "F#", "Bb", "E", "Ab", "D", "Cb", "B#", "G", "Fbb", "C##", "A"];

    private static readonly string[] Suffixes =
    [
        "",
        "m",
        "7",
        "m7",
        "maj7",
        "dim7",
        "m7b5",
        "6",
        "9",
        "13",
        "sus4",
        "aug",
        "7b9",
        "5",
        "m(maj7)",
        "/E",
        "7/Bb",
        "ped",
        "tristan",
    ];

    private static readonly Gen<string> Words = Gen.Frequency(
        (
            12,
            Gen.Select(Gen.Int[0, Roots.Length - 1], Gen.Int[0, Suffixes.Length - 1], (r, s) => Roots[r] + Suffixes[s])
        ),
        (1, Gen.Const(".")),
        (1, Gen.Const("N.C."))
    );

    private static readonly Gen<string> Lines =
        from bars in Words.Array[1, 4].Select(w => string.Join(' ', w)).Array[1, 12]
        from repeat in Gen.Bool
        from start in Words
        select (repeat ? "|: " : "") + start + " | " + string.Join(" | ", bars) + (repeat ? " :|" : "");

    private static readonly Gen<Brief> Briefs =
        from feel in Gen.Int[0, 3]
        from level in Gen.Int[1, 6]
        from span in Gen.Int[160, 240]
        from noOctaves in Gen.Bool
        from seed in Gen.Int[0, 1000]
        from tonic in Gen.Int[-8, 12]
        select new Brief
        {
            Feel = (Feel)feel,
            LeftLevel = level,
            Seed = seed,
            Tonic = tonic > 7 ? null : new Tone(Math.Max(tonic, -7)),
            Hands = new PlayerHands { SpanMm = span, NoOctaves = noOctaves },
        };

    [Fact]
    public void Any_line_is_set_with_the_right_basses_or_refused_with_the_reason() =>
        Gen.Select(Lines, Briefs)
            .Sample(
                (line, brief) =>
                {
                    var reading = ChordLineReader.Read(line, Feels.UsualMetre(brief.Feel!.Value), "Test");
                    if (reading.Value is null)
                    {
                        Assert.NotEmpty(reading.Diagnostics);
                        return;
                    }
                    var result = Arranger.Arrange(ChordKey.Settle(reading.Value), brief with { LeftHandOnly = true });
                    if (result.Arrangement is not { } arrangement)
                    {
                        Assert.False(string.IsNullOrWhiteSpace(result.Refusal!.Message));
                        return;
                    }
                    Assert.True(Judge.Check(arrangement.Score, brief.Hands).IsPlayable);
                    Assert.Empty(ChordLine.WrongBasses(arrangement.Score));
                    using var written = new MemoryStream();
                    MusicXmlWriter.Write(arrangement.Score, written);
                    written.Position = 0;
                    Assert.Equal(arrangement.Score.Bars.Count, MusicXmlReader.ReadScore(written).Value!.Bars.Count);
                },
                iter: 400
            );

    [Fact]
    public void The_left_hand_alone_of_a_tune_is_that_of_its_setting_for_both_hands()
    {
        foreach (var tune in Tunes.Samples)
        {
            for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
            {
                var brief = new Brief { LeftLevel = level, RightLevel = level };
                var both = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement!.Score;
                var left = ChordLine.Arrange(tune, brief).Arrangement!.Score;
                Assert.True(left.LeftHandOnly);
                // A pick-up in which it is silent goes, and what stands there moves to the first bar.
                var withPickUp = both.Bars[0].Implicit;
                Assert.Equal(both.Bars.Skip(withPickUp ? 1 : 0).Select(LeftVoices), left.Bars.Select(LeftVoices));
                Assert.Equal(both.Bars[0].Directions, left.Bars[0].Directions);
                Assert.NotEmpty(left.Bars[0].Chords);
                Assert.Equal(
                    both.Bars.Skip(withPickUp ? 2 : 1).Select(b => b.Chords),
                    left.Bars.Skip(1).Select(b => b.Chords)
                );
                Assert.Equal(
                    both.Bars.Skip(withPickUp ? 2 : 1).Select(b => b.Marks),
                    left.Bars.Skip(1).Select(b => b.Marks)
                );
            }
        }
        Assert.Contains(Tunes.Samples, t => t.Bars[0].Length < t.Bars[0].Metre.BarLength);
    }

    private static ValueList<ScoreVoice> LeftVoices(ScoreBar bar) =>
        bar.Voices.Where(v => v.Hand == Hand.Left).ToValueList();

    [Fact]
    public void The_last_bar_holds()
    {
        foreach (var feel in Enum.GetValues<Feel>())
        {
            var arranged = ChordLine.Arrange(ChordLine.Tune("F | C7 | F", feel), new Brief { Feel = feel });
            var last = arranged.Arrangement!.Score.Bars[^1];
            var stroke = last.Voices[0].Events.Last(e => e.Notes.Count > 0);
            Assert.Equal(last.Length, stroke.At + stroke.Length);
            Assert.True(stroke.Length > last.Metre.BarLength / 4, feel.ToString());
        }
    }
}
