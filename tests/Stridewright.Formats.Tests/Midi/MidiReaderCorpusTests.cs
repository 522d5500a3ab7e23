using System.Globalization;
using System.Text.RegularExpressions;
using NAudio.Midi;
using Stridewright.Formats.Midi;
using Stridewright.Formats.Tests.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Midi;

/// <summary>The corpus's MIDI files, sound and broken, against its own table of them and against a general library.</summary>
public sealed partial class MidiReaderCorpusTests
{
    [Fact]
    public void Sound_files_hold_what_the_corpus_says()
    {
        foreach (var (path, quirk) in Rows("midi/valid/"))
        {
            var file = Read(path).Value!;
            var says = Quirk().Match(quirk);
            Assert.True(says.Success, path);
            int[] expected =
            [
                .. says.Groups.Cast<Group>().Skip(1).Select(g => int.Parse(g.Value, CultureInfo.InvariantCulture)),
            ];
            int[] found = [file.Format, file.Tracks.Count, file.TicksPerQuarter, file.Tracks.Sum(t => t.Strokes.Count)];
            Assert.Equal(expected, found);
        }
    }

    [Fact]
    public void Sound_files_give_a_tune()
    {
        foreach (var (path, _) in Rows("midi/valid/"))
        {
            var reading = MidiTuneReader.Read(new MemoryStream(File.ReadAllBytes(path)));
            ReaderLaws.Check(reading.Value!, path);
            Assert.All(reading.Diagnostics, d => Assert.NotNull(d.Place.Byte));
        }
    }

    /// <summary>Where the corpus leaves it open, a warning is enough; format 2 is read, but is no tune unless a part is
    /// named.</summary>
    [Fact]
    public void Broken_files_are_refused_with_byte_and_tick()
    {
        foreach (var (path, quirk) in Rows("midi/reject/"))
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var reading = MidiTuneReader.Read(new MemoryStream(File.ReadAllBytes(path)));
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 4 << 20);
            var worst = reading.Diagnostics.MaxBy(d => d.Severity);
            var loads = quirk.Contains("reject or", StringComparison.Ordinal);
            Assert.Equal(loads ? Severity.Warning : Severity.Error, worst?.Severity);
            Assert.Equal(loads, reading.Value is not null);
            Assert.NotNull(worst!.Place.Byte);
            Assert.True(worst.Message.Length > 15, worst.Message);
            // Inside a track, that is behind its head at byte 22, the tick is known too.
            if (worst.Place.Byte > 22 && !quirk.Contains("one byte too many", StringComparison.Ordinal))
            {
                Assert.NotNull(worst.Place.Tick);
            }
        }
    }

    /// <summary>All sound files and the 120 answer keys. The library does not pass over the unknown chunk of one
    /// file.</summary>
    [Fact]
    public void A_general_library_reads_the_same_notes()
    {
        var paths = Rows("midi/valid/")
            .Select(r => r.Path)
            .Where(p => !p.EndsWith("non-midi-track.mid", StringComparison.Ordinal))
            .Concat(Corpus.Files("corpus/abc", ".mid"));
        foreach (var path in paths)
        {
            var theirs = new MidiFile(path, strictChecking: false)
                .Events.SelectMany(track => track)
                .OfType<NoteOnEvent>()
                .Where(n => n.Velocity > 0 && n.OffEvent is not null)
                .Select(n => (n.AbsoluteTime, (long)n.NoteLength, n.NoteNumber, n.Velocity, n.Channel))
                .Order();
            var ours = Read(path)
                .Value!.Tracks.SelectMany(t => t.Strokes)
                .Select(s => (s.Tick, s.Length, s.Key, s.Velocity, s.Channel))
                .Order();
            Assert.Equal(theirs, ours);
        }
    }

    private static Reading<MidiContents> Read(string path) =>
        MidiReader.Read(new MemoryStream(File.ReadAllBytes(path)));

    // Files of a folder with the last column of the corpus's table.
    private static List<(string Path, string Quirk)> Rows(string folder)
    {
        var rows = File.ReadLines(Corpus.PathOf("corpus/MANIFEST.tsv"))
            .Select(line => line.Split('\t'))
            .Where(cells => cells[0].StartsWith(folder, StringComparison.Ordinal))
            .Select(cells => (Corpus.PathOf("corpus/" + cells[0]), cells[^1]))
            .ToList();
        Assert.NotEmpty(rows);
        return rows;
    }

    [GeneratedRegex(@"format (\d+), (\d+) tracks, division (\d+), (\d+) notes")]
    private static partial Regex Quirk();
}
