using CsCheck;
using Stridewright.Formats.Midi;
using Stridewright.Formats.Tests.MusicXml;
using Stridewright.Music;
using Stridewright.Testing;

namespace Stridewright.Formats.Tests.Midi;

/// <summary>Sound files with bytes changed, cut out, doubled and blown up: always a tune or an error, each with its byte,
/// and in little memory. They run when other tests are done, whose memory they would spoil.</summary>
[Collection(Alone)]
public sealed class MidiFuzzTests
{
    private const string Alone = nameof(MidiFuzzTests);
    private const long MostMemory = 64 << 20;

    // Two tracks with all that the readers understand.
    private static readonly byte[] Seed = Smf.File(
        96,
        Smf.Track(
            Smf.Name("Melody"),
            Smf.Metre(0, 3, 2),
            Smf.Key(0, 1),
            Smf.Tempo(0, 500_000),
            Smf.Metre(576, 6, 3),
            Smf.Key(576, -2, minor: true),
            Smf.Line(0, 96, 1, 67, 71, 74, 79),
            Smf.Line(384, 32, 1, 67, 71, 74, 79, 76, 72),
            Smf.Chord(600, 90, 1, 60, 64, 67),
            Smf.Lyric(0, "la-"),
            Smf.Lyric(96, "la")
        ),
        Smf.Track(
            Smf.Chord(0, 288, 2, 43, 47, 50),
            Smf.Chord(288, 288, 2, 36, 52, 55),
            Smf.Line(576, 48, 2, 38, 45, 50)
        )
    );

    private static readonly byte[] Telling = [0, 0x7F, 0x80, 0xFF, 0xF0, 0x90, 0x51, 0x58];

    private static readonly Gen<byte[]> Damaged = Gen.Select(
            Gen.Int[0, 4],
            Gen.Double.Unit,
            Gen.Int[1, 12],
            Gen.OneOf(Gen.Byte, Gen.Int[0, Telling.Length - 1].Select(i => Telling[i]))
        )
        .Array[1, 6]
        .Select(edits =>
        {
            var bytes = Seed.ToList();
            foreach (var (kind, share, count, value) in edits)
            {
                var at = (int)(share * bytes.Count);
                var some = Math.Min(count, bytes.Count - at);
                switch (kind)
                {
                    case 0 when some > 0:
                        bytes[at] = value;
                        break;
                    case 1:
                        bytes.RemoveRange(at, some);
                        break;
                    case 2:
                        bytes.InsertRange(at, bytes.GetRange(at, some));
                        break;
                    case 3:
                        bytes.RemoveRange(at, bytes.Count - at);
                        break;
                    case 4:
                        // Four bytes at their largest: a length or a time.
                        bytes.InsertRange(at, [0xFF, 0xFF, 0xFF, 0x7F]);
                        break;
                    default:
                        break;
                }
            }
            return bytes.ToArray();
        });

    // Found by damage: the largest length there is, in a header cut off behind it.
    [Fact]
    public void A_header_cut_off_behind_a_huge_length_is_refused() =>
        AssertSound([.. "MThd"u8, 0xFF, 0xFF, 0xFF, 0xFF, 0x7F, 0]);

    [Fact]
    public void No_damage_makes_the_readers_throw_or_swell() => Damaged.Sample(AssertSound, iter: 20_000, threads: 1);

    [Fact]
    public void Damage_to_the_files_of_the_corpus_does_not_either()
    {
        var seeds = Corpus.Files("corpus/midi/valid", ".mid").Select(File.ReadAllBytes).ToArray();
        Gen.Select(Gen.Int[0, seeds.Length - 1], Gen.Select(Gen.Double.Unit, Gen.Byte).Array[1, 5])
            .Select(
                (seed, edits) =>
                {
                    var bytes = seeds[seed].ToArray();
                    foreach (var (share, value) in edits)
                    {
                        bytes[(int)(share * bytes.Length)] = value;
                    }
                    return bytes;
                }
            )
            .Sample(AssertSound, iter: 5_000, threads: 1);
    }

    // Files made to cost much.
    [Fact]
    public void Hostile_files_end_soon_and_small()
    {
        const int many = 200_000;
        byte[] Repeat(params byte[] bytes) =>
            [.. Enumerable.Repeat(bytes, many / bytes.Length * 3).SelectMany(b => b), .. Smf.EndOfTrack];
        byte[][] files =
        [
            // A strike a tick; strikes never released; long silences; notes hours long; a metre or key at each tick.
            Smf.File(1, Repeat(1, 0x90, 60, 64, 1, 0x80, 60, 64)),
            Smf.File(96, Repeat(0, 0x90, 60, 64)),
            Smf.File(1, Repeat(0x83, 0x7F, 0x90, 60, 64, 0x83, 0x7F, 0x80, 60, 64)),
            Smf.File(1, [0, 0x90, 60, 64, .. Repeat(0, 0x91, 62, 64, 0, 0x91, 66, 64), 0x83, 0xFF, 0x7F, 0x80, 60, 64]),
            Smf.File(
                1,
                [.. Repeat(1, 0xFF, 0x58, 2, 1, 5, 1, 0xFF, 0x58, 2, 2, 5)[..^3], 0, 0x90, 60, 64, .. Smf.EndOfTrack]
            ),
            Smf.File(32767, Repeat(1, 0x90, 60, 64, 0, 0xFF, 0x59, 2, 1, 0, 1, 0x80, 60, 64)),
            Smf.File(1, [0, 0xFF, 0x58, 2, 32, 0, .. Repeat(1, 0x90, 60, 64, 1, 0x91, 64, 64)]),
            [
                .. Smf.Header(1, 65535, 96),
                .. Enumerable.Repeat(Smf.Chunk("MTrk", Smf.Track(Smf.Note(0, 96, 60))), 20_000).SelectMany(c => c),
            ],
            [.. Smf.Header(1, 1, 96), .. new byte[many], .. Smf.Chunk("MTrk", Smf.Track(Smf.Note(0, 96, 60)))],
        ];
        Assert.All(files, AssertSound);
    }

    [CollectionDefinition(Alone, DisableParallelization = true)]
    public sealed class Collection;

    private static void AssertSound(byte[] bytes)
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var reading = Hang.Never(() => MidiTuneReader.Read(new MemoryStream(bytes)));
        // What passed through, of which little was held at a time; large files are held to the part that is kept.
        if (bytes.Length < 100_000)
        {
            Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, MostMemory);
        }
        Assert.InRange(reading.Diagnostics.Count, 0, 60);
        Assert.All(reading.Diagnostics, d => Assert.NotNull(d.Place.Byte));
        if (reading.Value is { } tune)
        {
            ReaderLaws.Check(tune, "damaged");
        }
        else
        {
            Assert.Equal(Severity.Error, reading.Diagnostics[0].Severity);
        }
    }
}
