using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Arranging.Tests.Laws;

/// <summary>
/// Every tenth tune of the outside corpus at levels 1 to 6 and three spans, held against the independent audit and the
/// MusicXML schema. All of it: `dotnet run --project bench/Stridewright.Trials -- corpus ../shared OUT`.
/// </summary>
public sealed class CorpusTenthTests : IDisposable
{
    private static readonly int[] Spans = [185, 205, 230];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("stridewright-tenth-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Every_tenth_tune_passes_the_independent_audit_at_all_levels_and_spans()
    {
        var tunes = Tenth().ToList();
        Assert.True(tunes.Count >= 14);
        int notes = 0,
            kept = 0;
        foreach (var span in Spans)
        {
            var scores = new List<(string Score, string? Melody)>();
            foreach (var (name, tune, melody) in tunes)
            {
                for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
                {
                    var brief = new Brief
                    {
                        LeftLevel = level,
                        RightLevel = level,
                        Hands = new PlayerHands { SpanMm = span },
                    };
                    var result = Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken);
                    Assert.True(result.Arrangement is not null, $"{name} level {level} span {span}: {result.Refusal}");
                    notes += result.Arrangement.Tune.Notes;
                    kept += result.Arrangement.Tune.Kept;
                    var path = Path.Combine(_folder.FullName, $"{name}.{level}.{span}.musicxml");
                    using (var file = File.Create(path))
                    {
                        MusicXmlWriter.Write(result.Arrangement.Score, file);
                    }
                    using var written = File.OpenRead(path);
                    Assert.Empty(MusicXmlSchema.Faults(written));
                    scores.Add((path, melody));
                }
            }
            Assert.Empty(Audit.Failures(span, [.. scores.Where(s => s.Melody is null)]));
            Assert.Empty(Audit.Failures(span, [.. scores.Where(s => s.Melody is not null)]));
        }
        Assert.True(kept >= 0.99 * notes, $"{kept} of {notes}");
    }

    // Asked of levels: nine tenths of the onsets and off-beat chords of each stand again in the next, for nine tunes of ten.
    [Fact]
    public void Levels_stand_again_in_the_next_for_nine_tunes_of_ten()
    {
        int nesting = 0,
            tunes = 0;
        foreach (var (name, tune, _) in Every(2).Where(t => t.Tune.Bars.Count >= 8))
        {
            var levels = new List<string>();
            for (var level = Brief.LowestLevel; level <= Brief.HighestLevel; level++)
            {
                var brief = new Brief { LeftLevel = level, RightLevel = level };
                var path = Path.Combine(_folder.FullName, $"{name}.{level}.musicxml");
                using var file = File.Create(path);
                MusicXmlWriter.Write(
                    Arranger.Arrange(tune, brief, TestContext.Current.CancellationToken).Arrangement!.Score,
                    file
                );
                levels.Add(path);
            }
            tunes++;
            var steps = Audit.Nesting(205, levels);
            Assert.Equal(levels.Count - 1, steps.Count);
            nesting += steps.All(s => s is { Right: >= 0.9, Left: >= 0.9 }) ? 1 : 0;
        }
        Assert.True(nesting >= 0.9 * tunes, $"{nesting} of {tunes}");
    }

    [Fact]
    public void Effort_rises_from_the_first_level_to_the_last() =>
        Assert.All(
            Tenth().Where(t => t.Tune.Bars.Count >= 8),
            t =>
            {
                var efforts = Enumerable.Range(1, 6).Select(level => EffortOf(t.Tune, level)).ToList();
                Assert.True(efforts[^1] > efforts[0] + 5, $"{t.Name}: {string.Join(" ", efforts)}");
            }
        );

    private static double EffortOf(Tune tune, int level) =>
        Arranger.Arrange(tune, new Brief { LeftLevel = level, RightLevel = level }).Arrangement!.Verdict.Effort.Overall;

    private IEnumerable<(string Name, Tune Tune, string? Melody)> Tenth() => Every(10);

    private IEnumerable<(string Name, Tune Tune, string? Melody)> Every(int step)
    {
        var abc = Corpus.Files("corpus/abc", ".abc").Where((_, i) => i % step == 0);
        foreach (var path in abc)
        {
            var name = Path.GetFileNameWithoutExtension(path);
            var tune = AbcReader.Read(new StringReader(File.ReadAllText(path))).Value![0];
            yield return (name, tune, AnswerKeys.Melody(path, _folder.FullName));
        }
        foreach (var path in Corpus.Files("corpus/musicxml/valid", ".mxl", ".musicxml").Where((_, i) => i % step == 0))
        {
            using var file = File.OpenRead(path);
            if (MusicXmlReader.ReadTune(file).Value is { } tune)
            {
                yield return (Path.GetFileNameWithoutExtension(path), tune, null);
            }
        }
    }
}
