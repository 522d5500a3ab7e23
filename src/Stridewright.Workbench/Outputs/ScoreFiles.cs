using Stridewright.Music;
using Stridewright.Workbench.Pocket;

namespace Stridewright.Workbench.Outputs;

/// <summary>One score in the formats that were asked for.</summary>
/// <param name="played">Told the share of a score that was played into a sound file.</param>
/// <param name="player">Name of the player that they are for; null: nobody's.</param>
internal sealed class ScoreFiles(
    ITools tools,
    ValueList<OutputFormat> formats,
    IProgress<double>? played = null,
    string? player = null
)
{
    /// <summary>Null, with the reason, when the score cannot be engraved, or is too long to be sounded.</summary>
    /// <param name="name">Of the files, without ending.</param>
    /// <param name="score">To be played.</param>
    /// <param name="toWrite">MusicXML to write in place of what is engraved; null: the same.</param>
    public IEnumerable<OutputFile>? Of(
        string name,
        byte[] musicXml,
        Score score,
        PageWish wish,
        CancellationToken cancellation,
        out EngravedPages? pages,
        out string problem,
        byte[]? toWrite = null
    )
    {
        pages = null;
        problem = "";
        if (formats.Contains(OutputFormat.Wav) && !tools.FitsWav(tools.Perform(score)))
        {
            problem = WorkbenchMessages.TooLongToSound;
            return null;
        }
        var phone = formats.Contains(OutputFormat.Phone) ? Phone(score, cancellation, out problem) : null;
        if (problem.Length > 0)
        {
            return null;
        }
        if (!formats.Any(f => f is OutputFormat.Pdf or OutputFormat.Svg or OutputFormat.Png))
        {
            return Files(name, toWrite ?? musicXml, score, null, phone, cancellation);
        }
        var engraving = tools.Engrave(musicXml, wish, cancellation);
        if (engraving.Value is { } engraved)
        {
            pages = engraved;
            return Files(name, toWrite ?? musicXml, score, engraved, phone, cancellation);
        }
        problem = WorkbenchMessages.NotEngraved(engraving.Diagnostics is [var fault, ..] ? fault.Message : "");
        return null;
    }

    private byte[]? Phone(Score score, CancellationToken cancellation, out string problem)
    {
        var wish = new PocketWish
        {
            Title = score.Title,
            Player = player,
            Parts = [new(score.Title, score)],
        };
        return new PocketFile(tools).Write(wish, cancellation, out problem);
    }

    // One after the other, so that no more than one picture is in memory.
    private IEnumerable<OutputFile> Files(
        string name,
        byte[] musicXml,
        Score score,
        EngravedPages? pages,
        byte[]? phone,
        CancellationToken cancellation
    )
    {
        foreach (var format in Enum.GetValues<OutputFormat>().Where(formats.Contains))
        {
            IEnumerable<OutputFile> files = format switch
            {
                OutputFormat.MusicXml => [new(name + ".musicxml", musicXml)],
                OutputFormat.Mxl => [new(name + ".mxl", tools.ToMxl(musicXml))],
                OutputFormat.Midi => [new(name + ".mid", tools.ToMidi(score))],
                OutputFormat.Wav => [new(name + ".wav", tools.ToWav(tools.Perform(score), played, cancellation))],
                OutputFormat.Phone => [new(name + ".html", phone!)],
                OutputFormat.Pdf => [new(name + ".pdf", pages!.Pdf())],
                OutputFormat.Svg => pages!.Svg.Select((page, i) => Page(i, ".svg", page)),
                _ => pages!.Svg.Select((_, i) => Page(i, ".png", pages.Png(i))),
            };
            foreach (var file in files)
            {
                yield return file;
            }
        }
        OutputFile Page(int index, string ending, byte[] bytes) =>
            new(
                pages!.Svg.Count == 1 ? name + ending : FormattableString.Invariant($"{name}-page-{index + 1}{ending}"),
                bytes
            );
    }
}
