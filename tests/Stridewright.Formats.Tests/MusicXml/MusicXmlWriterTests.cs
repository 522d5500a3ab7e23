using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsCheck;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.MusicXml;

/// <summary>What is checked by eye here follows the MusicXML 4.0 documentation; the schema checks the rest.</summary>
public sealed class MusicXmlWriterTests
{
    [Fact]
    public void Every_score_is_valid_against_the_schema()
    {
        Corpus.PathOf("standards/musicxml.xsd");
        Gen.Select(Drafts.Random, Gen.Int)
            .Sample(
                (draft, seed) =>
                {
                    var score = Notator.Write(Dressed.Up(draft, seed));
                    Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(Bytes(score))));
                },
                iter: 300
            );
    }

    [Fact]
    public void The_schema_does_find_faults()
    {
        var text = Encoding.UTF8.GetString(Bytes(Notator.Write(Drafts.Of(Drafts.Bar("2/4", "0+8")))));
        var broken = text.Replace("<staves>2</staves>", "", StringComparison.Ordinal)
            .Replace("<type>half</type>", "<type>halves</type>", StringComparison.Ordinal);
        Assert.Single(MusicXmlSchema.Faults(new MemoryStream(Encoding.UTF8.GetBytes(broken))));
    }

    [Fact]
    public void Every_kind_of_chord_is_valid_against_the_schema()
    {
        var chords = Enum.GetValues<ChordKind>()
            .Select(kind => new PlacedChord(ScoreTime.Zero, new ChordSymbol(new Tone(-2), kind)));
        var bar = Drafts.Bar("2/4", "0+8") with { Chords = chords.ToValueList() };
        var bytes = Bytes(Notator.Write(Drafts.Of(bar)));

        Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(bytes)));
        var written = XDocument.Load(new MemoryStream(bytes)).Descendants("kind").Select(k => k.Value).ToList();
        Assert.Equal(Enum.GetValues<ChordKind>().Length, written.Distinct().Count());
    }

    [Fact]
    public void The_same_score_gives_the_same_bytes_without_a_date()
    {
        var score = Notator.Write(Dressed.Up(Drafts.Of(Drafts.Bar("2/4", "0+1 1+2 3+1 4+4")), 7));
        Assert.Equal(Bytes(score), Bytes(score));
        Assert.DoesNotContain("date", Encoding.UTF8.GetString(Bytes(score)), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Voices_lie_on_their_staves_and_add_up_to_the_bar() =>
        Gen.Select(Drafts.Random, Gen.Int)
            .Sample(
                (draft, seed) =>
                {
                    var score = Notator.Write(Dressed.Up(draft, seed));
                    var document = XDocument.Load(new MemoryStream(Bytes(score)));
                    var divisions = (long)document.Descendants("divisions").First();
                    foreach (var (measure, bar) in document.Descendants("measure").Zip(score.Bars))
                    {
                        var length = (bar.Length * 4 * divisions).Numerator;
                        var timed = measure
                            .Elements()
                            .Where(e => e.Element("duration") is not null && e.Element("chord") is null)
                            .ToList();
                        foreach (
                            var voice in timed.Where(e => e.Name != "backup").GroupBy(e => (int)e.Element("voice")!)
                        )
                        {
                            Assert.Equal(length, voice.Sum(e => (long)e.Element("duration")!));
                            Assert.All(voice, e => Assert.Equal(voice.Key < 5 ? 1 : 2, (int)e.Element("staff")!));
                        }
                        Assert.Equal(bar.Voices.Count - 1, timed.Count(e => e.Name == "backup"));
                    }
                },
                iter: 100
            );

    // Pitches struck in order; expected: the accidental of each, - for none.
    [Theory]
    [InlineData(0, "F4 F#4 F#4 F4", "- sharp - natural")]
    [InlineData(1, "F#4 F4 F#4 F5", "- natural sharp natural")]
    [InlineData(-3, "Eb4 E4 Eb4 Ab4", "- natural flat -")]
    [InlineData(0, "F#4 F#5 Fx4 Bbb4", "sharp sharp double-sharp flat-flat")]
    public void Accidentals_hold_for_their_line_until_the_bar_ends(int signature, string pitches, string expected)
    {
        var bar = Drafts.Bar("4/4", "0+4 4+4 8+4 12+4") with { Key = Key.FromSignature(signature, Mode.Major) };
        var named = pitches.Split(' ').Select(Pitch.Parse).ToList();
        bar = bar with { Strokes = bar.Strokes.Select((s, i) => s with { Pitches = [named[i]] }).ToValueList() };
        Assert.Equal(expected, AccidentalsOf(Drafts.Of(bar)));
    }

    [Fact]
    public void A_note_tied_over_the_bar_line_needs_no_accidental_and_the_next_on_its_line_does()
    {
        var tied = Drafts.Bar("2/4", "4+8");
        tied = tied with { Strokes = [tied.Strokes[0] with { Pitches = [Pitch.Parse("C#5")] }] };
        var again = Drafts.Bar("2/4", "4+4") with { Number = "2" };
        again = again with { Strokes = [again.Strokes[0] with { Pitches = [Pitch.Parse("C#5")] }] };
        Assert.Equal("sharp - sharp", AccidentalsOf(Drafts.Of(tied, again)));
        Assert.Equal("sharp - natural", AccidentalsOf(Drafts.Of(tied, Drafts.Bar("2/4", "4+4") with { Number = "2" })));
    }

    [Fact]
    public void Both_voices_of_a_staff_share_their_accidentals()
    {
        var bar = Drafts.Bar("2/4", "4+4");
        var sharp = Drafts.Bar("2/4", "0+4", Hand.Right, 2).Strokes[0] with { Pitches = [Pitch.Parse("C#5")] };
        // Voice 1 is written first, but its C follows the other voice's C sharp in time.
        Assert.Equal("natural sharp", AccidentalsOf(Drafts.Of(bar with { Strokes = [.. bar.Strokes, sharp] })));
    }

    [Fact]
    public void Endings_and_repeats_stand_at_the_first_and_last_bar_of_their_run()
    {
        var bar = Drafts.Bar("2/4", "0+8");
        BarMarks[] marks =
        [
            new() { RepeatStart = true },
            new() { Ending = [1, 2] },
            new() { Ending = [1, 2], RepeatEnd = 3 },
            new() { Ending = [3] },
            new() { DoubleBarAfter = true },
            new() { FinalBarAfter = true },
        ];
        var bars = marks.Select((m, i) => bar with { Number = i.ToString(CultureInfo.InvariantCulture), Marks = m });
        var document = XDocument.Load(new MemoryStream(Bytes(Notator.Write(Drafts.Of([.. bars])))));
        Assert.Equal(
            [
                "0 left: heavy-light repeat-forward",
                "1 left: 1, 2-start",
                "2 right: light-heavy 1, 2-stop repeat-backward-3",
                "3 left: 3-start",
                "3 right: 3-discontinue",
                "4 right: light-light",
                "5 right: light-heavy",
            ],
            document.Descendants("barline").Select(Told)
        );

        static string Told(XElement barline) =>
            $"{barline.Parent!.Attribute("number")!.Value} {barline.Attribute("location")!.Value}: "
            + string.Join(
                ' ',
                barline
                    .Elements()
                    .Select(e =>
                        e.Name.LocalName switch
                        {
                            "bar-style" => e.Value,
                            "ending" => string.Join('-', e.Attributes().Select(a => a.Value)),
                            _ => "repeat-" + string.Join('-', e.Attributes().Select(a => a.Value)),
                        }
                    )
            );
    }

    [Fact]
    public void Chord_symbols_stand_before_the_note_they_sound_with_or_carry_an_offset()
    {
        var bar = Drafts.Bar("2/4", "0+4 4+4") with
        {
            Chords =
            [
                new PlacedChord(ScoreTime.Zero, new ChordSymbol(new Tone(-1), ChordKind.Major)),
                new PlacedChord(
                    ScoreTime.Quarter,
                    new ChordSymbol(new Tone(-2), ChordKind.Dominant)
                    {
                        Bass = new Tone(2),
                        Degrees = [new ChordDegree(9, -1, DegreeChange.Add)],
                    }
                ),
                new PlacedChord(new ScoreTime(3, 8), ChordSymbol.NoChord),
            ],
        };
        var measure = XDocument
            .Load(new MemoryStream(Bytes(Notator.Write(Drafts.Of(bar)))))
            .Descendants("measure")
            .Single();
        var order = measure
            .Elements()
            .Where(e => e.Name == "harmony" || e.Name == "note")
            .Select(e => e.Element("kind")?.Value ?? "note");
        Assert.Equal(["major", "note", "dominant", "none", "note", "note"], order);
        Assert.Equal(["1"], measure.Descendants("offset").Select(e => e.Value));
        Assert.Equal("2", measure.Element("attributes")!.Element("divisions")!.Value);
        var seventh = measure.Elements("harmony").ElementAt(1);
        Assert.Equal(
            "B-1D9-1add",
            string.Concat(
                seventh
                    .Descendants()
                    .Where(e => !e.HasElements && e.Name != "kind" && e.Name != "staff" && e.Name != "offset")
                    .Select(e => e.Value)
            )
        );
    }

    [Fact]
    public void Tempo_is_printed_in_its_beat_and_sounded_in_quarters()
    {
        var bar = Drafts.Bar("6/8", "0+12") with
        {
            Directions =
            [
                new Direction(ScoreTime.Zero)
                {
                    Words = "Lively",
                    BeatsPerMinute = 100,
                    BeatUnit = new NoteValue(4, 1),
                    Swing = (5, 3),
                },
            ],
        };
        var direction = XDocument
            .Load(new MemoryStream(Bytes(Notator.Write(Drafts.Of(bar)))))
            .Descendants("direction")
            .Single();
        Assert.Equal("quarter", direction.Descendants("beat-unit").Single().Value);
        Assert.Single(direction.Descendants("beat-unit-dot"));
        Assert.Equal("100", direction.Descendants("per-minute").Single().Value);
        Assert.Equal("150", direction.Element("sound")!.Attribute("tempo")!.Value);
        Assert.Equal("53eighth", direction.Descendants("swing").Single().Value);
    }

    [Fact]
    public void Syllables_tell_where_they_stand_in_their_word()
    {
        var bar = Drafts.Bar("4/4", "0+4 4+4 8+4 12+4");
        Lyric[] lyrics = [new(1, "rag", true), new(1, "ti", true), new(1, "me"), new(1, "now", false, true)];
        bar = bar with { Strokes = bar.Strokes.Select((s, i) => s with { Lyrics = [lyrics[i]] }).ToValueList() };
        var document = XDocument.Load(new MemoryStream(Bytes(Notator.Write(Drafts.Of(bar)))));
        Assert.Equal(["begin", "middle", "end", "single"], document.Descendants("syllabic").Select(e => e.Value));
        Assert.Single(document.Descendants("extend"));
    }

    [Fact]
    public void A_triplet_is_bracketed_once_around()
    {
        var third = new ScoreEvent(ScoreTime.Zero, new ScoreTime(1, 12), new NoteValue(8, 0, 3, 2));
        ScoreEvent At(int n, string pitch) =>
            third with
            {
                At = new ScoreTime(n, 12),
                Notes = [new ScoreNote(Pitch.Parse(pitch))],
            };
        var bar = Notator.Write(Drafts.Of(Drafts.Bar("1/4", "0+4"))).Bars[0];
        var voice = new ScoreVoice(Hand.Right, 1, [At(0, "C4"), At(1, "D4"), At(2, "E4")]);
        var score = new Score { Title = "Test", Bars = [bar with { Voices = [voice] }] };

        var bytes = Bytes(score);
        Assert.Empty(MusicXmlSchema.Faults(new MemoryStream(bytes)));
        var notes = XDocument.Load(new MemoryStream(bytes)).Descendants("note").Take(3).ToList();
        Assert.Equal(
            ["start", null, "stop"],
            notes.Select(n => n.Descendants("tuplet").SingleOrDefault()?.Attribute("type")?.Value)
        );
        Assert.All(notes, n => Assert.Equal("32", n.Element("time-modification")!.Value));
    }

    [Fact]
    public void Characters_that_XML_cannot_hold_are_left_out_of_texts()
    {
        var draft = Drafts.Of(Drafts.Bar("2/4", "0+8")) with { Title = "A\u0001 & <b> 𝄞\ud800 ♭" };
        var document = XDocument.Load(new MemoryStream(Bytes(Notator.Write(draft))));
        Assert.Equal("A & <b> 𝄞 ♭", document.Descendants("work-title").Single().Value);
    }

    private static string AccidentalsOf(Draft draft) =>
        string.Join(
            ' ',
            XDocument
                .Load(new MemoryStream(Bytes(Notator.Write(draft))))
                .Descendants("note")
                .Where(n => n.Element("pitch") is not null)
                .Select(n => n.Element("accidental")?.Value ?? "-")
        );

    private static byte[] Bytes(Score score)
    {
        using var stream = new MemoryStream();
        MusicXmlWriter.Write(score, stream);
        return stream.ToArray();
    }
}
