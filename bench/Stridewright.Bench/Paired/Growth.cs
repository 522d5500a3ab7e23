using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.Abc;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Sound;

namespace Stridewright.Bench.Paired;

/// <summary>Every step from tune to file on ever longer tunes, per bar. Promise: a bar costs the same in all of them.</summary>
internal static class Growth
{
    private static readonly int[] Lengths = [32, 128, 512, 1024];
    private static string _only = "";

    /// <param name="only">Begins the names of the steps that are run; empty: all of them.</param>
    public static void Run(string only)
    {
        _only = only;
        var tunes = Lengths.ToDictionary(n => n, n => Material.ReadAbc(n / Material.BarsInStrain));
        var scores = Lengths.ToDictionary(n => n, n => Arranger.Arrange(tunes[n], new Brief()).Arrangement!.Score);
        var abc = Lengths.ToDictionary(n => n, n => Material.Abc(n / Material.BarsInStrain));
        var xml = Lengths.ToDictionary(n => n, n => Material.Xml(scores[n]));
        var played = Lengths.ToDictionary(n => n, n => Performer.Perform(scores[n]));

        Of("Arranging, level 4", 11, n => Arranger.Arrange(tunes[n], new Brief()));
        var bare = Lengths.ToDictionary(n => n, n => WithoutChords(tunes[n]));
        Of("Arranging a tune without chords, level 4", 11, n => Arranger.Arrange(bare[n], new Brief()));
        Of("Reading ABC", 15, n => AbcReader.Read(new StringReader(abc[n])).Value![0]);
        Of(
            "Reading a two-staff score from MusicXML",
            11,
            n => MusicXmlReader.ReadScore(new MemoryStream(xml[n])).Value!
        );
        Of("Reading a tune from MusicXML", 11, n => MusicXmlReader.ReadTune(new MemoryStream(xml[n])).Value!);
        var midi = Lengths.ToDictionary(n => n, n => Bytes(stream => MidiWriter.Write(played[n], stream)));
        Of("Reading a tune from MIDI", 11, n => MidiTuneReader.Read(new MemoryStream(midi[n])).Value!);
        Of("Judging", 11, n => Judge.Check(scores[n], new PlayerHands()));
        Of("Fingering", 11, n => Fingerer.Finger(scores[n], new PlayerHands()));
        Of("Playing", 11, n => Performer.Perform(scores[n]));
        Of("Writing MusicXML", 11, n => Material.Xml(scores[n]));
        Of("Writing compressed MusicXML", 11, n => Written(stream => MxlWriter.Write(xml[n], stream)));
        Of("Writing MIDI", 15, n => Written(stream => MidiWriter.Write(played[n], stream)));
        using var engraver = Engraver.Create(TimeSpan.FromMinutes(5));
        Of("Engraving to SVG", 5, n => engraver.Engrave(new MemoryStream(xml[n]), PageSetup.Default).Value!);
    }

    private static void Of(string title, int rounds, Func<int, object> work)
    {
        if (!title.StartsWith(_only, StringComparison.OrdinalIgnoreCase))
        {
            return;
        }
        Race.Run(
            title,
            "a bar",
            rounds,
            Lengths.Select(n => new Race.Runner(FormattableString.Invariant($"{n} bars"), n, () => work(n))).ToArray()
        );
    }

    private static Tune WithoutChords(Tune tune) =>
        tune with
        {
            Bars = tune.Bars.Select(bar => bar with { Chords = [] }).ToValueList(),
        };

    private static object Written(Action<Stream> write) => Bytes(write).Length;

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
