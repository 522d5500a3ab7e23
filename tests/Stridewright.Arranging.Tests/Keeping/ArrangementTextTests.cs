using System.Reflection;
using CsCheck;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Keeping;

public sealed class ArrangementTextTests
{
    private const string Sample = """
        stridewright arrangement 1
        brief
          feel classic
          left 3
          right 5
          raggedness 0.25
          key Bb
          bpm 96
          span 8.1in
          no-octaves
          play walking-octaves, thirds
          harmony rich
          without tritone
          form intro A A(octaves,ff) B end
          seed 7
        kept
          bar 5 left
            0+1/8 bass F2
            1/8+1/8 chord A3 C4 F4 rolled
          bar 5 right
            3/16+1/16 tune:12 {B4} C5 E5
            1/4+1/4 fill G4 voice 2
            omits 13 14
          bar 6 left
        figures
          figure run home
            over ii7 V7
              deeper
        tune
        X:1
        T:Lamps

        """;

    [Fact]
    public void A_file_is_read_as_it_says()
    {
        var file = Read(Sample);
        Assert.Equal(
            new Brief
            {
                Feel = Feel.Classic,
                LeftLevel = 3,
                RightLevel = 5,
                Raggedness = 0.25,
                Tonic = new Tone(-2),
                BeatsPerMinute = 96,
                Hands = new PlayerHands { SpanMm = 205.74, NoOctaves = true },
                LeftManners = [LeftManner.WalkingOctaves],
                RightManners = [RightManner.Thirds],
                Harmony = new HarmonyWish { Richness = Richness.Rich, Without = [HarmonyChangeKind.Tritone] },
                Form = FormLine.Read("intro A A(octaves,ff) B end", out _),
                Seed = 7,
                Kept =
                [
                    new KeptBar(
                        4,
                        Hand.Left,
                        [
                            Stroke("0", "1/8", "bass", "F2"),
                            Stroke("1/8", "1/8", "chord", "A3 C4 F4") with
                            {
                                Rolled = true,
                            },
                        ]
                    ),
                    new KeptBar(
                        4,
                        Hand.Right,
                        [
                            Stroke("3/16", "1/16", "tune", "C5 E5") with
                            {
                                Tune = 11,
                                Graces = [Pitch.Parse("B4")],
                            },
                            Stroke("1/4", "1/4", "fill", "G4") with
                            {
                                Voice = 2,
                            },
                        ]
                    )
                    {
                        LeftOut = [12, 13],
                    },
                    new KeptBar(5, Hand.Left, []),
                ],
            },
            file.Brief
        );
        Assert.Equal([new FigureText("run home", ["over ii7 V7", "  deeper"])], file.Figures);
        Assert.Equal(("X:1\nT:Lamps\n", 30), (file.Tune, file.TuneLine));
    }

    [Fact]
    public void What_is_written_is_read_back_and_written_the_same() =>
        ArrangementFiles.Any.Sample(
            file =>
            {
                var text = ArrangementText.Write(file);
                var read = Read(text);
                Assert.Equal(Placed(file), read with { TuneLine = 0 });
                Assert.Equal(text, ArrangementText.Write(read));
                Assert.Equal(read, Read(text.Replace("\n", "\r\n", StringComparison.Ordinal)));
            },
            iter: 2000
        );

    [Fact]
    public void The_example_of_the_manual_is_read()
    {
        var manual = File.ReadAllText(Path.Combine(Corpus.CheckoutRoot, "docs", "arrangement-file.md"));
        var example = manual
            .Split("## Example")[1]
            .Split("## Lines")[0]
            .Trim('\n')
            .Split('\n')
            .Select(l => l.Length > 4 ? l[4..] : "");
        var file = Read(string.Join('\n', example));
        Assert.Equal((2, 14 - 1, 1), (file.Brief.Kept.Count, file.Brief.Kept[1].LeftOut[0], file.Figures.Count));
        Assert.StartsWith("X:1\nT:Lamps", file.Tune, StringComparison.Ordinal);
    }

    [Fact]
    public void The_usual_brief_has_no_line() =>
        Assert.Equal(
            "stridewright arrangement 1\ntune\nX:1\n",
            ArrangementText.Write(new ArrangementFile(new Brief(), [], "X:1\n"))
        );

    [Fact]
    public void Every_field_of_a_brief_is_written()
    {
        // Each value beside the usual one must show; a field that is not listed here has no word yet.
        (string Field, Brief Brief)[] changed =
        [
            (nameof(Brief.Feel), new Brief { Feel = Feel.Waltz }),
            (nameof(Brief.LeftLevel), new Brief { LeftLevel = 1 }),
            (nameof(Brief.RightLevel), new Brief { RightLevel = 1 }),
            (nameof(Brief.MostEffort), new Brief { MostEffort = 30 }),
            (nameof(Brief.Raggedness), new Brief { Raggedness = 1 }),
            (nameof(Brief.Tonic), new Brief { Tonic = new Tone(1) }),
            (nameof(Brief.BeatsPerMinute), new Brief { BeatsPerMinute = 80 }),
            (nameof(Brief.LeftHandOnly), new Brief { LeftHandOnly = true }),
            (nameof(Brief.Lyrics), new Brief { Lyrics = true }),
            (nameof(Brief.ShowPlain), new Brief { ShowPlain = true }),
            (nameof(Brief.Harmony), new Brief { Harmony = new HarmonyWish { Richness = Richness.Rich } }),
            ("Without", new Brief { Harmony = new HarmonyWish { Without = [HarmonyChangeKind.Pedal] } }),
            (
                "WithoutAt",
                new Brief
                {
                    Harmony = new HarmonyWish { WithoutAt = [new UnwantedChange(HarmonyChangeKind.Pedal, "7")] },
                }
            ),
            (nameof(Brief.Form), new Brief { Form = FormLine.Read("A", out _) }),
            (nameof(Brief.LeftManners), new Brief { LeftManners = [LeftManner.LowPedal] }),
            (nameof(Brief.RightManners), new Brief { RightManners = [RightManner.Call] }),
            (nameof(Brief.Kept), new Brief { Kept = [new KeptBar(0, Hand.Left, [])] }),
            (nameof(Brief.Seconds), new Brief { Seconds = 105 }),
            ("Odd seconds", new Brief { Seconds = 63.7 }),
            (nameof(Brief.MostBars), new Brief { MostBars = 60 }),
            (nameof(Brief.Sketch), new Brief { Sketch = true }),
            (nameof(Brief.Singer), new Brief { Singer = new Singer() }),
            ("Range", new Brief { Singer = new Singer(new VocalRange(Pitch.Parse("A3"), Pitch.Parse("D5"))) }),
            (nameof(Brief.Settled), new Brief { Settled = new Settled() }),
            (
                "RunPrice",
                new Brief
                {
                    Settled = new Settled
                    {
                        BeatsPerMinute = 88.5,
                        Ragging = [new RagExtra(700, 0, 400, 250), new RagExtra(0, 1500, 0, 0)],
                        RunPrice = 1600,
                        LeftStrain = 4800,
                        ThinBars = [0, 8],
                    },
                }
            ),
            (nameof(Brief.Seed), new Brief { Seed = 2 }),
            (nameof(Brief.Hands), new Brief { Hands = new PlayerHands { SpanMm = 190 } }),
            ("OctaveMm", new Brief { Hands = new PlayerHands { OctaveMm = 150 } }),
            ("NoOctaves", new Brief { Hands = new PlayerHands { NoOctaves = true } }),
            ("NoStrain", new Brief { Hands = new PlayerHands { NoStrain = true } }),
            (
                "Each hand",
                new Brief
                {
                    Hands = new PlayerHands
                    {
                        NoTenths = true,
                        Right = new OneHand { SpanMm = 195, Without = [4] },
                    },
                }
            ),
        ];
        Assert.All(
            changed,
            c => Assert.Equal(c.Brief, Read(ArrangementText.Write(new ArrangementFile(c.Brief, [], "X:1\n"))).Brief)
        );
        // Figures that were put are bars that are kept: no setting has them in its brief (OwnFigureTests).
        var written = Settable(typeof(Brief)).Except([nameof(Brief.Figures)]).ToList();
        Assert.Equal(written, written.Intersect(changed.Select(c => c.Field)));
        Assert.Equal(11, Settable(typeof(PlayerHands)).Count); // each has its words: PlayerTextTests
        Assert.Equal(3, Settable(typeof(HarmonyWish)).Count);
    }

    [Theory]
    [InlineData(
        "  feel classic",
        "  feel tango",
        "line 3, column 8",
        "'tango' is no value for feel: choose among classic,"
    )]
    [InlineData("  feel classic", "  feeling classic", "line 3, column 3", "'feeling' is no word of a brief")]
    [InlineData("  feel classic", "  feel", "line 3, column 3", "feel needs a value")]
    [InlineData("  no-octaves", "  no-octaves please", "line 10, column 14", "take 'please' out")]
    [InlineData("key Bb", "range D5-A3", "line 7, column 9", "D5-A3")]
    [InlineData("  left 3", "  level 3", "line 4, column 3", "not both")]
    [InlineData("  right 5", "  left 5", "line 5, column 3", "a second time")]
    [InlineData("right 5", "right 7", "line 5, column 9", "1 to 6")]
    [InlineData("octaves, thirds", "octaves, thrids", "line 11, column 8", "'thrids' is no value for play")]
    [InlineData("without tritone", "without", "line 13, column 3", "without needs a value")]
    [InlineData("96", "NaN", "line 8, column 7", "10 to 480")]
    [InlineData("8.1in", "wide", "line 9, column 8", "span")]
    [InlineData("B end", "B coda", "line 14, column 8", "'coda' at character 25 is no part of a form")]
    [InlineData("bar 5 left", "bar five left", "line 17, column 3", "names no bar")]
    [InlineData("bar 5 right", "bar 5 left", "line 20, column 3", "kept twice")]
    [InlineData("  bar 5 left", "", "line 18, column 5", "belong to no bar")]
    [InlineData("0+1/8", "0+1/0", "line 18, column 5", "place and length")]
    [InlineData("0+1/8", "0-1/8", "line 18, column 5", "place and length")]
    [InlineData("bass F2", "bass", "line 18, column 11", "keys are missing")]
    [InlineData("C4 F4", "H4 F4", "line 19, column 22", "'H4' is no key of the piano")]
    [InlineData("C4 F4", "A3 F4", "line 19, column 22", "struck twice")]
    [InlineData("C4 F4", "C9 F4", "line 19, column 22", "from A0 to C8")]
    [InlineData("rolled", "rolled up", "line 19, column 35", "'up' cannot stand")]
    [InlineData("{B4}", "{B4", "line 21, column 23", "not closed")]
    [InlineData("tune:12", "tune:0", "line 21, column 15", "what the notes are for")]
    [InlineData("voice 2", "voice 3", "line 22, column 27", "1 or 2")]
    [InlineData("omits 13 14", "omits 13 13", "line 23, column 11", "each once")]
    [InlineData("figure run home", "figure", "line 26, column 3", "begins with its name")]
    [InlineData("\ntune\n", "\ntune B\n", "line 29, column 1", "belongs to no section")]
    [InlineData("\nkept\n", "\nbrief\n", "line 16, column 1", "a second time")]
    [InlineData("arrangement 1", "arrangement 2", "line 1, column 1", "version 2, and this program reads version 1")]
    [InlineData("stridewright arrangement 1", "X:1", "line 1, column 1", "first line is 'X:1'")]
    public void A_fault_is_told_with_its_place(string good, string bad, string place, string message)
    {
        Assert.Contains(good, Sample, StringComparison.Ordinal);
        var text =
            Sample[..Sample.IndexOf(good, StringComparison.Ordinal)]
            + bad
            + Sample[(Sample.IndexOf(good, StringComparison.Ordinal) + good.Length)..];
        var reading = ArrangementText.Read(text);
        Assert.Null(reading.Value);
        Assert.Equal(place, reading.Diagnostics[0].Place.ToString());
        Assert.Contains(message, reading.Diagnostics[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_beyond_all_measure_is_refused()
    {
        const string head = "stridewright arrangement 1\n";
        var strokes = string.Concat(Enumerable.Repeat("  0+1 bass F2\n", 20_001));
        string[] texts =
        [
            head + "tune\n" + new string('C', 1_000_000),
            head + "kept\n bar 1 left\n" + strokes + "tune\nX:1\n",
            head + "figures\n figure a\n" + string.Concat(Enumerable.Repeat("  x\n", 6000)) + "tune\nX:1\n",
            head
                + "kept\n bar 1 left\n  0+1 bass "
                + string.Concat(Enumerable.Range(1, 7).Select(o => $"C{o} G{o} "))
                + "\ntune\nX:1\n",
        ];
        Assert.All(
            texts,
            t => Assert.Contains("more than", ArrangementText.Read(t).Diagnostics[0].Message, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_damaged_file_gives_a_result_or_a_message_with_its_line() =>
        Gen.Select(
                Gen.Int[0, Sample.Length],
                Gen.Int[0, 12],
                Gen.String[Gen.Char["+/:{} \n\t\r0129AGgb#-,.%\0\ud800étux"], 0, 5]
            )
            .Array[1, 6]
            .Sample(
                changes =>
                {
                    var text = Sample;
                    foreach (var (at, cut, put) in changes)
                    {
                        var from = Math.Min(at, text.Length);
                        text = text[..from] + put + text[Math.Min(text.Length, from + cut)..];
                    }
                    AssertRead(text);
                    AssertRead(text[..(text.Length / 2)]);
                },
                iter: 20_000
            );

    private static void AssertRead(string text)
    {
        var reading = ArrangementText.Read(text);
        if (reading.Value is { } file)
        {
            Assert.Empty(reading.Diagnostics);
            Assert.Equal(Placed(file) with { TuneLine = 0 }, Read(ArrangementText.Write(file)) with { TuneLine = 0 });
            return;
        }
        Assert.InRange(reading.Diagnostics.Count, 1, 20);
        Assert.All(reading.Diagnostics, d => Assert.True(d.Place.Line >= 1 && d.Message.Length > 10));
    }

    private static ArrangementFile Read(string text)
    {
        var reading = ArrangementText.Read(text);
        Assert.True(reading.Value is not null, string.Join("\n", reading.Diagnostics) + "\n" + text);
        return reading.Value;
    }

    // The places of a form's parts are those in the line as it is written.
    private static ArrangementFile Placed(ArrangementFile file) =>
        file with
        {
            Brief = file.Brief with
            {
                Form = file.Brief.Form is { } form ? FormLine.Read(form.ToString(), out _) : null,
            },
        };

    private static List<string> Settable(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(p => p.CanWrite)
            .Select(p => p.Name)
            .ToList();

    private static KeptStroke Stroke(string at, string length, string role, string pitches) =>
        new(
            Time(at),
            Time(length),
            pitches.Split(' ').Select(p => Pitch.Parse(p)).ToValueList(),
            role,
            false,
            [],
            1,
            null
        );

    private static ScoreTime Time(string text)
    {
        var parts = text.Split('/')
            .Select(t => int.Parse(t, System.Globalization.CultureInfo.InvariantCulture))
            .ToArray();
        return new ScoreTime(parts[0], parts.Length > 1 ? parts[1] : 1);
    }
}
