using System.Text;
using CsCheck;
using Stridewright.Formats.Abc;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Abc;

public sealed class AbcRobustnessTests
{
    private const string Seed =
        "%abc-2.1\nX:1\nT:Seed\nC:Nobody\nP:A2B\nM:6/8\nL:1/8\nQ:3/8=80\nK:GMix ^c\nP:A\n|:\"G\"G>A{/c}B (3ABc [ceg]2|1 !trill!d3- d2z:|2 \"D7/f#\"d6||\nw:one two-three_ * four | five\n[P:B][K:Dm][M:2/4] \"^slow\"D2 _E=F-|\\\nV:2\nF4&G4|Z2|]\n";

    [Fact]
    public void Every_tune_of_the_corpus_is_read()
    {
        foreach (var path in Corpus.Files("corpus/abc", ".abc"))
        {
            var reading = AbcReader.Read(new StreamReader(path));
            var tune = Assert.Single(reading.Value!);
            Assert.True(IsSound(tune), path);
            Assert.DoesNotContain(reading.Diagnostics, d => d.Severity == Severity.Error);
            Assert.All(reading.Diagnostics, d => Assert.NotNull(d.Place.Line));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n\n")]
    [InlineData("hello")]
    [InlineData("X:1")]
    [InlineData("X:1\nT:t\nK:C\n")]
    [InlineData("X:1\nT:t\nK:C\nz8|z8|")]
    [InlineData("\0\u0001\u0002\uFFFD|\n:::\n[[[[\n")]
    public void Without_a_tune_there_is_an_error(string text)
    {
        var reading = Abc.Read(text);
        Assert.Null(reading.Value);
        Assert.Contains(reading.Diagnostics, d => d.Severity == Severity.Error && d.Message.Length > 20);
    }

    [Theory]
    [InlineData("X:1\nT:t\nC D|E F|\n", "no key")]
    [InlineData("T:t\nK:C\nC D|\n", "no X: line")]
    [InlineData("X:1\nK:C\nC D|\n", "no title")]
    [InlineData("X:1\nT:t\nK:C\nC D|\n\nE F|\n", "after a blank line")]
    public void What_a_header_lacks_is_said_and_the_tune_read(string text, string message)
    {
        Assert.Single(Abc.Read(text).Value!);
        Assert.Contains(message, Abc.Findings(text), StringComparison.Ordinal);
    }

    [Fact]
    public void Hostile_input_ends_and_its_findings_are_few()
    {
        const string head = "X:1\nT:t\nM:4/4\nL:1/8\nK:C\nC8|";
        const int many = 1_000_000;
        string[] inputs =
        [
            head + new string('[', many),
            head + new string('(', many),
            head + new string('{', many),
            head + new string('"', many),
            head + new string(':', many),
            head + new string('>', many),
            head + new string('^', many),
            head + new string('\'', many),
            head + new string('!', many),
            head + new string('C', many),
            head + new string('?', many),
            head + new string('\n', many),
            head + string.Concat(Enumerable.Repeat("C|", many)),
            head + string.Concat(Enumerable.Repeat("|1C:", many)),
            head + string.Concat(Enumerable.Repeat("C/3 (7D>E ", many / 10)),
            head + "C" + new string('9', many) + "/" + new string('9', many),
            head + "Z999999999",
            head + string.Concat(Enumerable.Repeat("\nV:a\nC8|\nV:b", many / 100)),
            head + "\nw:" + string.Concat(Enumerable.Repeat("a-", many)),
            "P:" + new string('(', many) + "\n" + head,
            string.Concat(Enumerable.Repeat(head + "\n\n", 20000)),
            string.Concat(Enumerable.Repeat("%%begintext\n", many / 10)) + head,
        ];
        foreach (var input in inputs)
        {
            var reading = Hang.Never(() => Abc.Read(input), input[..Math.Min(60, input.Length)]);
            Assert.True(reading.Diagnostics.Count <= 1002);
            Assert.All(reading.Value ?? [], t => Assert.True(IsSound(t)));
        }
    }

    [Fact]
    public void Input_without_end_is_refused() =>
        Assert.Contains(
            "larger than 16 MB",
            AbcReader.Read(new Endless()).Diagnostics.Single().Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void Bytes_are_read_as_utf8_else_as_latin1()
    {
        static Reading<string> Decode(params byte[] bytes) => AbcReader.Decode(new MemoryStream(bytes));

        Assert.Equal("Ré", Decode(Encoding.UTF8.GetBytes("Ré")).Value);
        Assert.Empty(Decode(Encoding.UTF8.GetBytes("Ré")).Diagnostics);
        Assert.Equal("Ré", Decode(Encoding.Latin1.GetBytes("Ré")).Value);
        Assert.Single(Decode(Encoding.Latin1.GetBytes("Ré")).Diagnostics);
        Assert.Equal("Ré", Decode([0xFF, 0xFE, .. Encoding.Unicode.GetBytes("Ré")]).Value);
        Assert.Null(AbcReader.Decode(new MemoryStream(new byte[(16 << 20) + 1])).Value);
    }

    [Fact]
    public void No_damage_makes_the_reader_throw() =>
        Gen.Select(
                Gen.Int[0, Seed.Length - 1],
                Gen.Int[0, 12],
                Gen.String[Gen.Char["|:[]()\"{}<>-!+&%\\\n ^_=/,'0123456789ABCGKLMPQVXYZabcgwyz\0é♯"], 0, 6]
            )
            .Array[1, 8]
            .Select(edits =>
            {
                var text = Seed;
                foreach (var (at, cut, put) in edits)
                {
                    var start = Math.Min(at, text.Length);
                    text = text[..start] + put + text[Math.Min(start + cut, text.Length)..];
                }
                return text;
            })
            .Sample(
                text =>
                {
                    var reading = Abc.Read(text);
                    Assert.True(
                        reading.Value is not null || reading.Diagnostics.Any(d => d.Severity == Severity.Error)
                    );
                    Assert.All(reading.Value ?? [], t => Assert.True(IsSound(t)));
                    Assert.All(reading.Value ?? [], t => Assert.True(IsSound(Unfolding.Unfold(t))));
                },
                iter: 20000
            );

    // The promises of a tune: notes in order inside their bars without overlap, ties to the same pitch, numbered bars.
    private static bool IsSound(Tune tune)
    {
        var tied = (Pitch?)null;
        foreach (var bar in tune.Bars)
        {
            var at = ScoreTime.Zero;
            foreach (var note in bar.Notes)
            {
                if (note.At < at || note.Length <= ScoreTime.Zero || note.Pitch.Midi is < 0 or > 127)
                {
                    return false;
                }
                if (tied is { } pitch && (pitch != note.Pitch || note.At != at))
                {
                    return false;
                }
                at = note.At + note.Length;
                tied = note.TiedToNext ? note.Pitch : null;
            }
            if (
                at > bar.Length
                || bar.Number.Length == 0
                || bar.Chords.Any(c => c.At >= bar.Length)
                || (tied is not null && at != bar.Length)
            )
            {
                return false;
            }
        }
        return tied is null && tune.Bars.Count > 0;
    }

    private sealed class Endless : TextReader
    {
        public override int Read(char[] buffer, int index, int count)
        {
            buffer.AsSpan(index, count).Fill('C');
            return count;
        }
    }
}
