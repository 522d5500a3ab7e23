using Stridewright.Testing;
using Stridewright.Workbench;

namespace Stridewright.Cli.Tests;

/// <summary>The corpus's MIDI files through the whole of <c>arrange</c>.</summary>
public sealed class MidiRunTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-midi-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Every_sound_file_gives_a_setting()
    {
        var (code, _, error) = Run(Corpus.PathOf("corpus/midi/valid"));
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(
            Corpus.Files("corpus/midi/valid", ".mid").Select(Path.GetFileNameWithoutExtension),
            _folder.EnumerateFiles().Select(f => Path.GetFileNameWithoutExtension(f.Name)).Order(StringComparer.Ordinal)
        );
    }

    /// <summary>Refused with the byte, or (three of them, by the corpus's own table) read with a warning that has it.</summary>
    [Fact]
    public void Every_broken_file_is_refused_or_read_with_a_warning_and_its_byte()
    {
        var read = 0;
        foreach (var file in Corpus.Files("corpus/midi/reject", ".mid"))
        {
            var (code, output, error) = Run(file);
            Assert.True(code is 0 or 2, error);
            Assert.Matches(@"byte \d+", code == 0 ? output : error);
            Assert.DoesNotContain("went wrong inside", error, StringComparison.Ordinal);
            read += code == 0 ? 1 : 0;
        }
        Assert.Equal(3, read);
    }

    private (int Code, string Output, string Error) Run(string tunes)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        string[] args = ["arrange", tunes, "--out", _folder.FullName, "--format", "musicxml", "--replace"];
        var code = new CommandLineApp(UseCases.Open, output, error).Run(args, TestContext.Current.CancellationToken);
        return (code, output.ToString(), error.ToString());
    }
}
