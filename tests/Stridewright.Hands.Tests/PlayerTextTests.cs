using CsCheck;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Hands.Tests;

public sealed class PlayerTextTests
{
    private const string Sample = """
        stridewright player 1
        name Ada
        hands
          octave-width 6.0in
          span ninth
          left-span 8.1in
          index-span 14.5cm
          right-leaps 13.5
          strokes 5
          right-without 5 4
          weaker left
          no-tenths
        notes
          First line.

            indented
        """;

    [Fact]
    public void A_file_is_read_as_it_says()
    {
        var player = Read(Sample);
        Assert.Equal("Ada", player.Name);
        Assert.Equal("First line.\n\n  indented", player.Notes);
        // A white ninth of 188.8 mm at 165.1 (trade figures by interval), on a keyboard of 152.4, and 4 mm of room.
        Assert.Equal(188.8 * 152.4 / 165.1 + 4, player.Hands.SpanMm, 0.1);
        Assert.Equal(
            new PlayerHands
            {
                OctaveMm = 152.4,
                SpanMm = player.Hands.SpanMm,
                IndexSpanMm = 145,
                StrokesPerSecond = 5,
                Weaker = Hand.Left,
                NoTenths = true,
                Left = new OneHand { SpanMm = 205.74 },
                Right = new OneHand { LeapBitsPerSecond = 13.5, Without = [4, 5] },
            },
            player.Hands
        );
    }

    [Fact]
    public void The_example_of_the_manual_is_read()
    {
        var manual = File.ReadAllText(Path.Combine(Corpus.CheckoutRoot, "docs", "player-file.md"));
        var example = manual.Split("## Example")[1].Split("## Lines")[0].Trim('\n').Split('\n');
        var text = string.Join('\n', example.Select(l => l.Length > 4 ? l[4..] : "")).TrimEnd() + "\n";
        var player = Read(text);
        Assert.Equal((201.0, Hand.Left), (player.Hands.Left.SpanMm!.Value, player.Hands.Weaker!.Value));
        Assert.Equal(text, PlayerText.Write(player));
        Assert.All(
            HandsText.Words,
            w =>
                Assert.Contains(
                    '`'
                        + w.Word.Replace("left-", "", StringComparison.Ordinal)
                            .Replace("right-", "", StringComparison.Ordinal),
                    manual.Replace("left-", "", StringComparison.Ordinal),
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void What_is_written_is_read_back_and_written_the_same()
    {
        var own = Gen.Select(
            Gen.Double[120, 300].Nullable(),
            Gen.Double[80, 240].Nullable(),
            Gen.Double[3, 40].Nullable(),
            Gen.Double[1, 15].Nullable(),
            Gen.Int[1, 5].HashSet[0, 3],
            (span, index, leaps, strokes, without) =>
                new OneHand
                {
                    SpanMm = span,
                    IndexSpanMm = index,
                    LeapBitsPerSecond = leaps,
                    StrokesPerSecond = strokes,
                    Without = without.Order().ToValueList(),
                }
        );
        var hands = Gen.Select(
            Gen.Select(own, own),
            Gen.Select(Gen.Double[120, 300], Gen.Double[120, 180], Gen.Double[80, 240].Nullable()),
            Gen.Select(Gen.Double[3, 40].Nullable(), Gen.Double[1, 15].Nullable(), Gen.Int[0, 2]),
            Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool),
            (each, width, speed, wishes) =>
                new PlayerHands
                {
                    Right = each.Item1,
                    Left = each.Item2,
                    SpanMm = width.Item1,
                    OctaveMm = width.Item2,
                    IndexSpanMm = width.Item3,
                    LeapBitsPerSecond = speed.Item1,
                    StrokesPerSecond = speed.Item2,
                    Weaker = speed.Item3 == 2 ? null : (Hand)speed.Item3,
                    NoOctaves = wishes.Item1,
                    NoTenths = wishes.Item2,
                    NoStrain = wishes.Item3,
                }
        );
        var notes = Gen.String[Gen.Char["ab  \n:'notes"], 0, 40].Select(t => t.TrimEnd());
        Gen.Select(hands, notes, Gen.String[Gen.Char["abcßé ♭1"], 1, 20].Where(Player.IsName))
            .Sample(
                (h, n, name) =>
                {
                    var player = new Player(name, h) { Notes = n };
                    var text = PlayerText.Write(player);
                    Assert.Equal(player, Read(text));
                    Assert.Equal(player, Read(text.Replace("\n", "\r\n", StringComparison.Ordinal)));
                },
                iter: 2000
            );
    }

    [Fact]
    public void Every_field_of_the_hands_has_a_word()
    {
        var usual = new PlayerHands();
        string[] values = ["150", "190", "12", "4", "left", "", "5"];
        var set = HandsText
            .Words.SelectMany(w => values.Select(v => w.Read(usual, v).Hands))
            .OfType<PlayerHands>()
            .Where(h => h != usual)
            .ToList();
        var fields = typeof(PlayerHands).GetProperties().Where(p => p.CanWrite).ToList();
        Assert.All(fields, f => Assert.Contains(set, h => !Equals(f.GetValue(h), f.GetValue(usual))));
        var own = typeof(OneHand).GetProperties().Where(p => p.CanWrite).ToList();
        Assert.All(own, f => Assert.Contains(set, h => !Equals(f.GetValue(h.Left), f.GetValue(usual.Left))));
        Assert.All(own, f => Assert.Contains(set, h => !Equals(f.GetValue(h.Right), f.GetValue(usual.Right))));
    }

    [Fact]
    public void A_word_for_both_hands_takes_back_what_was_said_of_one()
    {
        var hands = new PlayerHands
        {
            IndexSpanMm = 150,
            Left = new OneHand
            {
                SpanMm = 190,
                IndexSpanMm = 130,
                LeapBitsPerSecond = 9,
            },
        };
        var span = HandsText.Words.Single(w => w.Word == "span").Read(hands, "220").Hands!;
        Assert.Equal(
            new PlayerHands
            {
                SpanMm = 220,
                Left = new OneHand { LeapBitsPerSecond = 9 },
            },
            span
        );
    }

    [Theory]
    [InlineData("stridewright player 1", "stridewright player 2", "line 1, column 1", "use a newer program")]
    [InlineData("stridewright player 1", "stridewright arrangement 1", "line 1, column 1", "no player file")]
    [InlineData("name Ada", "", "line 16, column 1", "needs a name")]
    [InlineData("name Ada", "name", "line 2, column 1", "needs a name")]
    [InlineData("name Ada", "  name Ada", "line 2, column 3", "belongs to nothing")]
    [InlineData("name Ada", "name Ada\nname Bea", "line 3, column 1", "a second time")]
    [InlineData("hands", "hands\nhands", "line 4, column 1", "a second time")]
    [InlineData("hands", "fingers", "line 3, column 1", "belongs to nothing")]
    [InlineData("  strokes 5", "  strokes", "line 9, column 3", "strokes needs a value: 1 to 15 strokes a second")]
    [InlineData("strokes 5", "strokes 99", "line 9, column 11", "'99' is no value for strokes")]
    [InlineData("strokes 5", "strokes NaN", "line 9, column 11", "'NaN' is no value for strokes")]
    [InlineData("left-span 8.1in", "left-span 8.1", "line 6, column 13", "did you mean 8.1in?")]
    [InlineData("left-span 8.1in", "span 190", "line 6, column 3", "a second time")]
    [InlineData("5 4", "5 4 3 2", "line 10, column 17", "at least two are left")]
    [InlineData("5 4", "6", "line 10, column 17", "fingers such as 4 5")]
    [InlineData("weaker left", "weaker both", "line 11, column 10", "left or right")]
    [InlineData("no-tenths", "no-tenths please", "line 12, column 13", "take 'please' out")]
    [InlineData("no-tenths", "no-ninths", "line 12, column 3", "'no-ninths' is nothing that is said of hands")]
    public void A_fault_is_told_with_its_place(string good, string bad, string place, string message)
    {
        var reading = PlayerText.Read(Sample.Replace(good, bad, StringComparison.Ordinal));
        Assert.Null(reading.Value);
        Assert.Contains(
            reading.Diagnostics,
            d => d.Place.ToString() == place && d.Message.Contains(message, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void No_text_breaks_the_reader()
    {
        var lines = Sample.Split('\n');
        Gen.Select(Gen.Int[0, lines.Length - 1], Gen.String[0, 30], Gen.Int[0, 40])
            .Sample(
                (at, junk, column) =>
                {
                    var broken = lines.ToArray();
                    broken[at] = broken[at].Insert(Math.Min(column, broken[at].Length), junk);
                    var reading = PlayerText.Read(string.Join('\n', broken));
                    Assert.True(reading.Value is not null || reading.Diagnostics.Count is > 0 and <= 20);
                },
                iter: 3000
            );
        Assert.Null(PlayerText.Read("").Value);
        Assert.Null(PlayerText.Read(new string('x', PlayerText.MostCharacters + 1)).Value);
    }

    private static Player Read(string text)
    {
        var reading = PlayerText.Read(text);
        Assert.Empty(reading.Diagnostics);
        return reading.Value!;
    }
}
