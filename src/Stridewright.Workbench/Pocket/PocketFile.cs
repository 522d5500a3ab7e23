using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Pocket;

/// <summary>
/// One HTML file in which a phone or a tablet has all it takes to practise: the scores engraved for a narrow and for a wide
/// screen, their sound, the recorded piano, today's list. It asks nothing of any network: its policy forbids it, and lets no
/// script run but its own.
/// </summary>
internal sealed class PocketFile(ITools tools)
{
    // Millimetres of print of the usual size: two bars of 2/4 beside each other on a phone, four on a tablet.
    private const double Phone = 96,
        Tablet = 172;

    /// <summary>The file; null, with the reason, where a score cannot be engraved.</summary>
    public byte[]? Write(PocketWish wish, CancellationToken cancellation, out string problem)
    {
        var pages = new PocketPages();
        var screens = new StringBuilder();
        var parts = new List<PocketPartData>();
        foreach (var (index, part) in wish.Parts.Index())
        {
            var musicXml = tools.ToMusicXml(part.Score);
            foreach (var (screen, width) in new[] { ("narrow", Phone), ("wide", Tablet) })
            {
                var wanted = new PageWish(Paper.A4) { ScreenWidth = width };
                var engraving = tools.Engrave(musicXml, wanted, cancellation);
                if (engraving.Value is not { } engraved)
                {
                    problem = WorkbenchMessages.NotEngraved(
                        engraving.Diagnostics is [var fault, ..] ? fault.Message : ""
                    );
                    return null;
                }
                screens.Append(CultureInfo.InvariantCulture, $"<template id=\"{screen}-{index}\">");
                foreach (var svg in engraved.Svg)
                {
                    screens.Append(pages.Of(svg));
                }
                screens.Append("</template>\n");
            }
            parts.Add(PartOf(part));
        }
        problem = "";
        return Encoding.UTF8.GetBytes(Filled(wish, parts, pages, screens.ToString()));
    }

    private PocketPartData PartOf(PocketPart part)
    {
        var performance = tools.Perform(part.Score);
        var credits = new[] { part.Score.Subtitle, part.Score.Composer };
        return new(
            part.Title,
            credits.OfType<string>().Where(c => c.Length > 0).ToList(),
            PocketSound.Rounded(Heard.Of(part.Score, performance)),
            Math.Round(60e6 / performance.Tempi[0].MicrosecondsPerQuarter, 2)
        );
    }

    private static string Filled(
        PocketWish wish,
        IReadOnlyList<PocketPartData> parts,
        PocketPages pages,
        string screens
    )
    {
        var data = new PocketData(wish.Title, wish.Player, "", parts, wish.Today);
        var mark = SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(data, PocketJson.Default.PocketData));
        data = data with { Mark = Convert.ToHexStringLower(mark)[..16] };
        var face = pages.MusicFace is { } address ? PocketTemplate.FaceOf(address) : "";
        return PocketTemplate.Fill(
            style: face + PocketTemplate.Style,
            title: WebUtility.HtmlEncode(wish.Title),
            // Its writer escapes what could end the element.
            data: JsonSerializer.Serialize(data, PocketJson.Default.PocketData),
            signs: pages.Signs,
            screens,
            piano: Piano(parts)
        );
    }

    private static string Piano(IEnumerable<PocketPartData> parts)
    {
        var piano = new StringBuilder();
        foreach (var key in PocketSound.KeysFor(parts.Select(p => p.Heard)))
        {
            using var file = PianoFiles.OfKey(key)!;
            using var bytes = new MemoryStream();
            file.CopyTo(bytes);
            piano.Append(
                CultureInfo.InvariantCulture,
                $"<script type=\"audio/ogg\" data-key=\"{key}\">{Convert.ToBase64String(bytes.GetBuffer(), 0, (int)bytes.Length)}</script>\n"
            );
        }
        return piano.ToString();
    }
}
