using System.IO.Compression;
using Stridewright.Music;
using Stridewright.Workbench.Outputs;

namespace Stridewright.Workbench.Sheets;

/// <summary>A file that is taken away.</summary>
/// <param name="Name">Letters, digits and hyphens of the title, with an ending.</param>
/// <param name="Fault">Why there is none; empty where there is.</param>
public sealed record Taken(string Name, string MediaType, byte[] Bytes, string Fault = "");

/// <summary>Settings as files: one table of what there is.</summary>
public sealed class TakeAway(SheetDesk desk)
{
    private const string PdfType = "application/pdf";

    // The first day that a zip file can name, so that the same setting gives the same bytes.
    private static readonly DateTimeOffset Dateless = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly ValueList<Kind> Kinds =
    [
        new("pdf", ".pdf", PdfType, (desk, sheet, stop) => desk.File(sheet, OutputFormat.Pdf, stop)),
        new("large-print", "-large-print.pdf", PdfType, (desk, sheet, stop) => desk.Pdf(sheet, Large(sheet), stop)),
        new("reasons", "-with-reasons.pdf", PdfType, (desk, sheet, stop) => desk.Pdf(sheet, WithNotes(sheet), stop)),
        new("right-hand", "-right-hand.pdf", PdfType, (desk, sheet, stop) => desk.Pdf(sheet, Hand.Right, stop)),
        new("left-hand", "-left-hand.pdf", PdfType, (desk, sheet, stop) => desk.Pdf(sheet, Hand.Left, stop)),
        new(
            "musicxml",
            ".musicxml",
            "application/vnd.recordare.musicxml+xml",
            (desk, sheet, stop) => desk.File(sheet, OutputFormat.MusicXml, stop)
        ),
        new(
            "mxl",
            ".mxl",
            "application/vnd.recordare.musicxml",
            (desk, sheet, stop) => desk.File(sheet, OutputFormat.Mxl, stop)
        ),
        new("midi", ".mid", "audio/midi", (desk, sheet, stop) => desk.File(sheet, OutputFormat.Midi, stop)),
        new("phone", ".html", "text/html; charset=utf-8", (desk, sheet, stop) => desk.Phone(sheet, stop)),
    ];

    /// <summary>One file of a setting.</summary>
    /// <param name="format">One of <c>pdf</c>, <c>large-print</c>, <c>reasons</c>, <c>right-hand</c>, <c>left-hand</c>,
    /// <c>musicxml</c>, <c>mxl</c>, <c>midi</c>, <c>phone</c>, <c>arrangement</c>, <c>svg</c> and <c>png</c>.</param>
    /// <param name="page">From 1, for the pictures.</param>
    /// <returns>Null: there is no such format.</returns>
    public async Task<Taken?> File(Sheet sheet, string format, int page, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        switch (format)
        {
            case "arrangement":
                return Arrangement(sheet);
            case "svg" or "png" when page < 1 || page > sheet.Pages.Count:
                return Refused(WorkbenchMessages.NoSuchPage(page, sheet.Pages.Count));
            case "svg":
                return Picture(sheet, page, ".svg", "image/svg+xml", sheet.Pages[page - 1]);
            case "png":
                return Picture(sheet, page, ".png", "image/png", await desk.Png(sheet, page, cancellation));
            case "right-hand" or "left-hand" when sheet.Score!.LeftHandOnly:
                return Refused(WorkbenchMessages.OneHandOnly);
            default:
                return Kinds.FirstOrDefault(k => k.Name == format) is { } kind
                    ? new(sheet.Name + kind.Ending, kind.MediaType, await kind.Make(desk, sheet, cancellation))
                    : null;
        }
    }

    /// <summary>Writes every file of a setting into a zip file, one after the other. What could not be made is named in a
    /// text among them.</summary>
    public async Task WriteZip(Sheet sheet, Stream stream, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        await using var zip = await ZipArchive.CreateAsync(
            stream,
            ZipArchiveMode.Create,
            leaveOpen: true,
            entryNameEncoding: null,
            cancellation
        );
        var missing = new List<string>();
        foreach (var (format, page) in All(sheet))
        {
            var file = (await File(sheet, format, page, cancellation))!;
            if (file.Fault.Length > 0)
            {
                missing.Add(WorkbenchMessages.NotInZip(format, file.Fault));
                continue;
            }
            await Add(file.Name, to => to.WriteAsync(file.Bytes, cancellation).AsTask());
        }
        if (desk.FitsWav(sheet))
        {
            await Add(sheet.Name + ".wav", to => desk.WriteWav(sheet, to, cancellation));
        }
        else
        {
            missing.Add(WorkbenchMessages.NotInZip("wav", WorkbenchMessages.TooLongToSound));
        }
        if (missing.Count > 0)
        {
            var text = string.Concat(missing.Select(m => m + "\n"));
            var bytes = System.Text.Encoding.UTF8.GetBytes(text);
            await Add(WorkbenchMessages.MissingName, to => to.WriteAsync(bytes, cancellation).AsTask());
        }

        async Task Add(string name, Func<Stream, Task> write)
        {
            var entry = zip.CreateEntry(name);
            entry.LastWriteTime = Dateless;
            await using var to = await entry.OpenAsync(cancellation);
            await write(to);
        }
    }

    private static IEnumerable<(string Format, int Page)> All(Sheet sheet) =>
        Kinds
            .Select(k => k.Name)
            .Where(k => !(sheet.Score!.LeftHandOnly && k is "right-hand" or "left-hand"))
            .Append("arrangement")
            .Select(k => (k, 1))
            .Concat(sheet.Pages.SelectMany((_, i) => new[] { ("svg", i + 1), ("png", i + 1) }));

    private Taken Arrangement(Sheet sheet)
    {
        var piece = sheet.Piece!;
        var bytes = SavedArrangement.Of(
            desk.Tools,
            piece.Tune,
            piece.Brief,
            piece.Figures,
            out var problem,
            sheet.About!.Look.Shown
        );
        return bytes is null ? Refused(problem) : new(sheet.Name + ".stridewright", "text/plain; charset=utf-8", bytes);
    }

    private static Taken Picture(Sheet sheet, int page, string ending, string mediaType, byte[] bytes) =>
        new(
            sheet.Pages.Count == 1
                ? sheet.Name + ending
                : FormattableString.Invariant($"{sheet.Name}-page-{page}{ending}"),
            mediaType,
            bytes
        );

    private static SheetLook Large(Sheet sheet) => sheet.About!.Look with { LargePrint = true };

    private static SheetLook WithNotes(Sheet sheet) => sheet.About!.Look with { Notes = true };

    private static Taken Refused(string why) => new("", "", [], why);

    private sealed record Kind(
        string Name,
        string Ending,
        string MediaType,
        Func<SheetDesk, Sheet, CancellationToken, Task<byte[]>> Make
    );
}
