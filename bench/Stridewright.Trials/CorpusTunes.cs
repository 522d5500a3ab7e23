using Stridewright.Arranging;
using Stridewright.Formats.Abc;
using Stridewright.Formats.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Trials;

/// <summary>A tune of the outside corpus, with its answer key where there is one.</summary>
/// <param name="Melody">Path of the MIDI file of its melody as played, repeats as ABC 2.1 has them; null: none.</param>
internal sealed record CorpusTune(string Path, string Name, Tune Tune, string? Melody);

/// <summary>Reads the corpus.</summary>
internal static class CorpusTunes
{
    public static IReadOnlyList<CorpusTune> Read(string shared)
    {
        var found = new List<CorpusTune>();
        var keys = Directory.CreateTempSubdirectory("stridewright-keys-").FullName;
        foreach (
            var path in Directory.GetFiles(Path.Combine(shared, "corpus", "abc"), "*.abc").Order(StringComparer.Ordinal)
        )
        {
            using var stream = File.OpenRead(path);
            var reading = AbcReader.Read(new StringReader(AbcReader.Decode(stream).Value!));
            var melody = AnswerKeys.Melody(path, keys);
            foreach (var tune in reading.Value ?? [])
            {
                found.Add(new(path, Path.GetFileNameWithoutExtension(path), tune, melody));
            }
        }
        var scores = Directory.GetFiles(Path.Combine(shared, "corpus", "musicxml", "valid"));
        foreach (var path in scores.Order(StringComparer.Ordinal))
        {
            using var stream = File.OpenRead(path);
            if (MusicXmlReader.ReadTune(stream).Value is { } tune)
            {
                found.Add(new(path, Path.GetFileNameWithoutExtension(path), tune, null));
            }
        }
        return found;
    }

    /// <summary>2/4, 4/4 and 2/2 tunes: every second for calibration, the others to measure. By file order.</summary>
    public static (List<CorpusTune> Fit, List<CorpusTune> Held) Split(IReadOnlyList<CorpusTune> all)
    {
        var duple = all.Where(t => Feels.IsDuple(Feels.MainMetre(t.Tune)) && t.Tune.Bars.Count >= 8).ToList();
        return (duple.Where((_, i) => i % 2 == 0).ToList(), duple.Where((_, i) => i % 2 == 1).ToList());
    }
}
