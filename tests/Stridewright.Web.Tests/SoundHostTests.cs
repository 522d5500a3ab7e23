using System.Buffers.Binary;
using System.Net;
using System.Text;
using NAudio.Midi;
using Stridewright.Testing;

namespace Stridewright.Web.Tests;

/// <summary>What the host tells of sound, held against the MIDI file that it hands out.</summary>
public sealed class SoundHostTests(Page page) : IClassFixture<Page>
{
    [Fact]
    public async Task What_is_heard_is_the_exported_midi_file()
    {
        var id = await Made("""{"feel":"stride"}""");
        var heard = await Page.Json(await page.Owner.GetAsync($"/api/settings/{id}/heard"));
        var midi = await page.Owner.GetByteArrayAsync($"/api/settings/{id}/files/midi");
        var file = new MidiFile(new MemoryStream(midi), strictChecking: true);
        var tempi = file.Events[0].OfType<TempoEvent>().OrderBy(t => t.AbsoluteTime).ToList();
        var exported = file
            .Events.Skip(1)
            .SelectMany(
                (track, i) => track.OfType<NoteOnEvent>().Select(n => (Hand: i == 0 ? "right" : "left", Note: n))
            )
            .Where(x => x.Note.Velocity > 0)
            .Select(x =>
                (
                    At: Math.Round(Seconds(x.Note.AbsoluteTime), 6),
                    Key: x.Note.NoteNumber,
                    x.Note.Velocity,
                    x.Hand,
                    Length: Math.Round(Seconds(x.Note.OffEvent!.AbsoluteTime) - Seconds(x.Note.AbsoluteTime), 6)
                )
            )
            .Order();
        var told = heard["notes"]!
            .AsArray()
            .Select(n =>
                (
                    At: Math.Round((double)n!["at"]!, 6),
                    Key: (int)n["key"]!,
                    Velocity: (int)n["velocity"]!,
                    Hand: (string)n["hand"]!,
                    Length: Math.Round((double)n["length"]!, 6)
                )
            )
            .Order();
        Assert.Equal(exported, told);
        var kinds = heard["notes"]!.AsArray().Select(n => (string)n!["kind"]!).ToHashSet();
        Assert.Superset(new HashSet<string> { "bass", "chord", "tune", "fill" }, kinds);
        Assert.Subset(new HashSet<string> { "bass", "chord", "tune", "fill", "inner", "run", "crushed" }, kinds);
        // 26 written bars in 4/4: four beats each, but for what a pick-up lacks.
        Assert.All(
            heard["bars"]!.AsArray().Where(b => (string)b!["number"]! != "0"),
            bar => Assert.Equal((4, 4), (bar!["beats"]!.AsArray().Count, (int)bar["count"]!))
        );

        double Seconds(long tick)
        {
            var (seconds, at, each) = (0.0, 0L, 500_000);
            foreach (var tempo in tempi.Where(t => t.AbsoluteTime < tick))
            {
                (seconds, at, each) = (
                    seconds + Part(tempo.AbsoluteTime),
                    tempo.AbsoluteTime,
                    tempo.MicrosecondsPerQuarterNote
                );
            }
            return seconds + Part(tick);

            double Part(long until) => (until - at) * (each / 1e6) / file.DeltaTicksPerQuarterNote;
        }
    }

    [Fact]
    public async Task A_setting_is_taken_away_as_sound()
    {
        var id = await Made("""{"leftLevel":1,"rightLevel":1}""");
        var answer = await page.Owner.GetAsync($"/api/settings/{id}/files/wav");
        Assert.Equal("audio/wav", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("the-ferry-bell.wav", answer.Content.Headers.ContentDisposition!.FileName);
        var bytes = await answer.Content.ReadAsByteArrayAsync();
        Assert.Equal("RIFF", Encoding.ASCII.GetString(bytes[..4]));
        Assert.Equal(bytes.Length - 8, (int)BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(4)));
        var heard = await Page.Json(await page.Owner.GetAsync($"/api/settings/{id}/heard"));
        Assert.InRange((bytes.Length - 44) / 176_400.0, (double)heard["seconds"]!, (double)heard["seconds"]! + 3);
    }

    [Fact]
    public async Task The_piano_is_told_key_by_key_and_nothing_beside_it()
    {
        var recording = await page.Owner.GetAsync("/piano/v10/57.ogg");
        Assert.Equal(HttpStatusCode.OK, recording.StatusCode);
        Assert.Contains("immutable", recording.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        // RFC 3533: every page of an Ogg stream begins so.
        Assert.Equal("OggS", Encoding.ASCII.GetString((await recording.Content.ReadAsByteArrayAsync())[..4]));
        foreach (
            var name in (string[])["58.ogg", "-57.ogg", "57", "A3v10.ogg", "..%2F..%2Fengraving%2Fverovio-module.mjs"]
        )
        {
            Assert.Equal(HttpStatusCode.NotFound, (await page.Owner.GetAsync("/piano/v10/" + name)).StatusCode);
        }
        Assert.Equal(HttpStatusCode.NotFound, (await page.Owner.GetAsync("/api/settings/none/heard")).StatusCode);
    }

    private async Task<string> Made(string wishes)
    {
        var file = Path.Combine(Corpus.CheckoutRoot, "samples", "ferry-bell.abc");
        var brought = await Page.Json(await page.PostFile("ferry-bell.abc", await File.ReadAllBytesAsync(file)));
        var wanted = $$"""{"tunes":"{{brought["id"]}}","number":1,"wishes":{{wishes}}}""";
        return (string)(await Page.Json(await page.PostJson("/api/settings", wanted)))["id"]!;
    }
}
