using Stridewright.Music;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

public sealed class OutputTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void An_existing_output_of_other_content_is_kept()
    {
        _folder.Put("out/ferry.mid", "older work");
        Assert.Null(Write(replace: false, out var problem, ("ferry.musicxml", "new"), ("ferry.mid", "new")));
        Assert.Contains("--replace", problem);
        Assert.Equal("older work", File.ReadAllText(_folder["out/ferry.mid"]));
        Assert.Equal(["ferry.mid"], _folder.Files("out"));
    }

    [Fact]
    public void An_existing_output_of_the_same_bytes_is_reported_unchanged()
    {
        var path = _folder.Put("out/ferry.mid", "same");
        var before = File.GetLastWriteTimeUtc(path);
        var files = Write(replace: false, out _, ("ferry.mid", "same"), ("ferry.pdf", "new"));
        Assert.Equal([true, false], files!.Select(f => f.Unchanged));
        Assert.Equal(before, File.GetLastWriteTimeUtc(path));
    }

    [Fact]
    public void An_existing_output_is_replaced_on_request()
    {
        var path = _folder.Put("out/ferry.mid", "older work");
        Assert.NotNull(Write(replace: true, out _, ("ferry.mid", "new")));
        Assert.Equal("new", File.ReadAllText(path));
        Assert.Equal(["ferry.mid"], _folder.Files("out"));
    }

    [Fact]
    public void An_input_of_the_run_is_never_replaced()
    {
        var input = _folder.Put("out/ferry.musicxml", "the tune itself");
        Assert.Null(Write(replace: true, out var problem, ("ferry.musicxml", "new")));
        Assert.Contains("the tune it comes from", problem);
        Assert.Equal("the tune itself", File.ReadAllText(input));
    }

    [Fact]
    public void An_input_is_known_through_a_linked_folder()
    {
        var input = _folder.Put("tunes/ferry.musicxml", "the tune itself");
        Directory.CreateSymbolicLink(_folder["link"], _folder["tunes"]);
        var files = new OutputFiles(_folder["link"], replace: true, [input]);
        Assert.Null(
            files.TryWrite([new OutputFile("ferry.musicxml", [1])], TestContext.Current.CancellationToken, out _)
        );
        Assert.Equal("the tune itself", File.ReadAllText(input));
    }

    [Fact]
    public void A_folder_in_the_place_of_an_output_is_reported()
    {
        Directory.CreateDirectory(_folder["out/ferry.mid"]);
        Assert.Null(Write(replace: true, out var problem, ("ferry.mid", "new")));
        Assert.Contains("is a folder", problem);
    }

    [Fact]
    public void A_name_too_long_for_the_system_leaves_nothing_behind()
    {
        Assert.Null(Write(replace: false, out var problem, ("a.mid", "1"), (new string('x', 300) + ".mid", "2")));
        Assert.NotEmpty(problem);
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void A_cancelled_write_leaves_nothing_behind()
    {
        using var stop = new CancellationTokenSource();
        IEnumerable<OutputFile> Outputs()
        {
            yield return new OutputFile("a.mid", [1]);
            stop.Cancel();
            yield return new OutputFile("b.mid", [2]);
        }
        var files = new OutputFiles(_folder["out"], replace: false, []);
        Assert.Throws<OperationCanceledException>(() => files.TryWrite(Outputs(), stop.Token, out _));
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void A_file_that_is_cancelled_while_it_is_made_leaves_nothing_behind()
    {
        using var stop = new CancellationTokenSource();
        IEnumerable<byte[]> Blocks()
        {
            yield return [1];
            Assert.Single(_folder.Files("out")); // under its temporary name
            stop.Cancel();
            yield return [2];
        }
        var files = new OutputFiles(_folder["out"], replace: false, []);
        Assert.Throws<OperationCanceledException>(() =>
            files.TryWrite([new OutputFile("a.wav", Blocks())], stop.Token, out _)
        );
        Assert.Empty(_folder.Files("out"));
    }

    [Fact]
    public void A_file_in_the_place_of_the_output_folder_is_reported_once()
    {
        _folder.Put("out", "a file");
        var request = new ArrangeRequest
        {
            Tunes = [_folder.Put("a.abc", "T:A\n"), _folder.Put("b.abc", "T:B\n")],
            OutputFolder = _folder["out"],
        };
        var report = new UseCases(new FakeTools()).Arrange(request, null, TestContext.Current.CancellationToken);
        Assert.Equal(ArrangeOutcome.NothingWritten, report.Outcome);
        Assert.Contains("is a file", Assert.Single(report.Problems).Message);
    }

    [Fact]
    public void Runs_at_the_same_time_never_replace_each_others_work()
    {
        const int Runs = 8;
        for (var round = 0; round < 25; round++)
        {
            var written = 0;
            var problems = new System.Collections.Concurrent.ConcurrentBag<string>();
            var output = $"ferry-{round}.mid";
            Parallel.For(
                0,
                Runs,
                i =>
                {
                    var files = new OutputFiles(_folder["out"], replace: false, []);
                    if (
                        files.TryWrite(
                            [new OutputFile(output, [(byte)i])],
                            TestContext.Current.CancellationToken,
                            out var problem
                        )
                        is null
                    )
                    {
                        problems.Add(problem);
                    }
                    else
                    {
                        Interlocked.Increment(ref written);
                    }
                }
            );
            Assert.Equal(1, written);
            Assert.All(problems, problem => Assert.Contains("--replace", problem));
        }
        Assert.Equal(25, _folder.Files("out").Length);
    }

    private ValueList<WrittenFile>? Write(bool replace, out string problem, params (string Name, string Text)[] outputs)
    {
        var files = new OutputFiles(_folder["out"], replace, [_folder["out/ferry.musicxml"]]);
        var list = outputs.Select(o => new OutputFile(o.Name, System.Text.Encoding.UTF8.GetBytes(o.Text)));
        return files.TryWrite(list, TestContext.Current.CancellationToken, out problem);
    }
}
