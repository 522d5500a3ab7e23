using System.IO.Compression;
using System.Text;
using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Trials;

/// <summary>A way in: its files, how they are damaged, and its reader.</summary>
/// <param name="Folders">Below the folder of outside material.</param>
/// <param name="Read">Reads a file as the program does, checks what it got, and gives the tunes.</param>
internal sealed record FuzzFormat(
    string Name,
    string[] Folders,
    string[] Endings,
    Func<byte[], byte[], Random, byte[]> Damage,
    Func<byte[], IReadOnlyList<Tune>> Read
)
{
    /// <summary>Every format that has a reader.</summary>
    public static IReadOnlyList<FuzzFormat> All { get; } =
    [
        new("abc", ["corpus/abc"], [".abc"], DamageText, ReadAbc),
        new(
            "musicxml",
            ["corpus/musicxml/valid", "corpus/musicxml/reject"],
            [".musicxml", ".xml", ".mxl"],
            DamageXml,
            ReadXml
        ),
        new("midi", ["corpus/midi/valid", "corpus/midi/reject"], [".mid"], ByteMutation.Of, ReadMidi),
    ];

    private static byte[] DamageText(byte[] file, byte[] other, Random random) =>
        random.Next(20) == 0
            ? ByteMutation.Of(file, other, random)
            : Encoding.UTF8.GetBytes(
                TextMutation.Of(Encoding.UTF8.GetString(file), Encoding.UTF8.GetString(other), random)
            );

    // A compressed score is damaged as it is, or inside.
    private static byte[] DamageXml(byte[] file, byte[] other, Random random)
    {
        if (!IsZip(file))
        {
            return random.Next(3) > 0 && XmlMutation.Of(file, random) is { } damage
                ? damage
                : DamageText(file, IsZip(other) ? file : other, random);
        }
        if (random.Next(2) == 0)
        {
            return ByteMutation.Of(file, other, random);
        }
        try
        {
            var damaged = new MemoryStream();
            using (var from = new ZipArchive(new MemoryStream(file)))
            using (var to = new ZipArchive(damaged, ZipArchiveMode.Create, true))
            {
                foreach (var entry in from.Entries)
                {
                    using var content = new MemoryStream();
                    using (var source = entry.Open())
                    {
                        source.CopyTo(content);
                    }
                    using var target = to.CreateEntry(entry.FullName).Open();
                    target.Write(DamageXml(content.ToArray(), file, random));
                }
            }
            return damaged.ToArray();
        }
        catch (InvalidDataException)
        {
            return ByteMutation.Of(file, other, random);
        }
    }

    private static bool IsZip(byte[] file) => file is [(byte)'P', (byte)'K', ..];

    private static IReadOnlyList<Tune> ReadAbc(byte[] file)
    {
        if (Told(AbcReader.Decode(new MemoryStream(file))) is not { } text)
        {
            return [];
        }
        return Told(AbcReader.Read(new StringReader(text))) is { } tunes ? [.. tunes] : [];
    }

    private static IReadOnlyList<Tune> ReadMidi(byte[] file) =>
        Told(MidiTuneReader.Read(new MemoryStream(file))) is { } tune ? [tune] : [];

    private static IReadOnlyList<Tune> ReadXml(byte[] file)
    {
        if (Told(MusicXmlReader.ReadScore(new MemoryStream(file))) is { } score)
        {
            Judge.Check(score, new PlayerHands());
        }
        return Told(MusicXmlReader.ReadTune(new MemoryStream(file))) is { } tune ? [tune] : [];
    }

    // A reader gives something or says in an error why not.
    private static T? Told<T>(Reading<T> reading)
        where T : class =>
        reading.Value is not null || reading.Diagnostics.Any(d => d.Severity == Severity.Error)
            ? reading.Value
            : throw new InvalidOperationException("nothing was read and no error says why");
}
