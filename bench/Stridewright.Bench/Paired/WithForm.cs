using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Sound;

namespace Stridewright.Bench.Paired;

/// <summary>Every step from tune to file on a piece of 150 bars in its form, per bar, against 32 bars as they stand. Promise:
/// a bar costs the same in both, and a PDF at most 1.5 times its SVG.</summary>
internal static class WithForm
{
    private const int LongStrains = 19;

    public static void Run()
    {
        var long152 = Material.ReadAbc(LongStrains);
        foreach (var level in (int[])[1, 4, 6])
        {
            var brief = new Brief { LeftLevel = level, RightLevel = level };
            var formed = brief with { Form = Material.Form };
            Race.Run(
                $"Arranging, level {level}",
                "a bar",
                11,
                new("32 bars", 32, () => Arranger.Arrange(Material.Tune, brief)),
                new("152 bars", LongStrains * Material.BarsInStrain, () => Arranger.Arrange(long152, brief)),
                new("150 bars in form", Material.BarsInForm, () => Arranger.Arrange(Material.TwoStrains, formed)),
                new(
                    "438 bars in form",
                    Material.BarsInLongForm,
                    () => Arranger.Arrange(Material.TwoStrains, brief with { Form = Material.LongForm })
                ),
                new(
                    "150 bars accompanied",
                    Material.BarsInForm,
                    () => Arranger.Arrange(Material.TwoStrains, formed with { Singer = new Singer() })
                )
            );
        }
        var scores = new[]
        {
            Material.Score(4),
            Arranger.Arrange(Material.TwoStrains, new Brief { Form = Material.Form }).Arrangement!.Score,
        };
        if (scores[1].Bars.Count != Material.BarsInForm)
        {
            throw new InvalidOperationException($"the form has {scores[1].Bars.Count} bars");
        }
        var played = scores.Select(s => Performer.Perform(s)).ToArray();
        var xml = scores.Select(Material.Xml).ToArray();
        Of("Judging", i => Judge.Check(scores[i], new PlayerHands()));
        Of("Playing", i => Performer.Perform(scores[i]));
        Of("Writing MusicXML", i => Material.Xml(scores[i]));
        Of("Writing MIDI", i => Bytes(stream => MidiWriter.Write(played[i], stream)));
        Of("Reading a two-staff score from MusicXML", i => MusicXmlReader.ReadScore(new MemoryStream(xml[i])).Value!);
        using var engraver = Engraver.Create(TimeSpan.FromMinutes(5));
        Of("Engraving to SVG", i => engraver.Engrave(new MemoryStream(xml[i]), PageSetup.Default).Value!, 5);
        object Svg() => engraver.Engrave(new MemoryStream(xml[1]), PageSetup.Default).Value!;
        Race.Run(
            "Engraving 150 bars in form",
            "a bar",
            5,
            new("SVG", Material.BarsInForm, Svg),
            new("PDF with its SVG", Material.BarsInForm, () => Bytes(s => PdfWriter.Write((EngravedScore)Svg(), s)))
        );
    }

    private static void Of(string title, Func<int, object> work, int rounds = 11) =>
        Race.Run(
            title,
            "a bar",
            rounds,
            new("32 bars", 32, () => work(0)),
            new("150 bars in form", Material.BarsInForm, () => work(1))
        );

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
