using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>Makes hand-outs: one page each, in the largest print in which all stands on it.</summary>
public static class Handout
{
    // Staff heights in millimetres, down to the smallest that is read at a piano without trouble (common practice).
    private static readonly double[] Prints = [6.6, 6, 5.5, 5];

    /// <summary>The hand-out on the paper of a setup. It has no value, and an error, where its music cannot be engraved; what
    /// does not fit on one page is told with the room of each part.</summary>
    /// <exception cref="OperationCanceledException">The caller cancelled.</exception>
    public static Reading<HandoutDrawn> Draw(
        Engraver engraver,
        HandoutSheet sheet,
        PageSetup setup,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(engraver);
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(setup);
        var hasMusic = sheet.Parts.Any(p => p is HandoutMusic);
        // The smallest print tells whether another one is worth trying.
        IEnumerable<double> prints = hasMusic ? [Prints[0], Prints[^1], .. Prints[1..^1]] : [Prints[0]];
        var (best, rooms, over) = ((string?)null, ValueList<HandoutRoom>.Empty, 0.0);
        foreach (var print in prints)
        {
            var strips = Strips(engraver, sheet, setup with { StaffHeight = print }, cancellation);
            if (strips.Value is not { } cut)
            {
                return new(null, strips.Diagnostics);
            }
            var layout = new HandoutLayout(sheet, setup, cut);
            (rooms, over) = (layout.Rooms, layout.Over);
            best = over <= 0 ? layout.Draw() : best;
            // What fits in the largest print is done, and so is what fits in none.
            if (over <= 0 ? print != Prints[^1] : print == Prints[^1])
            {
                break;
            }
        }
        return new(
            best is null
                ? new HandoutDrawn(null, over, rooms)
                : new HandoutDrawn(new EngravedScore(setup, sheet.Title, [best], []), 0, rooms),
            []
        );
    }

    // One for every part; null for what is no music.
    private static Reading<IReadOnlyList<Strip?>> Strips(
        Engraver engraver,
        HandoutSheet sheet,
        PageSetup setup,
        CancellationToken cancellation
    )
    {
        var cut = setup with { Cut = true, Header = false, EndMargin = HandoutLayout.StripMargin };
        var strips = new List<Strip?>();
        foreach (var part in sheet.Parts)
        {
            if (part is not HandoutMusic music)
            {
                strips.Add(null);
                continue;
            }
            var engraved = engraver.Engrave(BesideXml.Join(music.Scores), cut, cancellation);
            if (engraved.Value is not { } score)
            {
                return new(null, engraved.Diagnostics);
            }
            strips.Add(new Strip(score.Pages[0], score.Width, score.Height));
        }
        return new(strips, []);
    }

    /// <summary>Some bars as one system on a picture of its own size.</summary>
    public static Reading<EngravedScore> OneSystem(
        Engraver engraver,
        HandoutMusic music,
        PageSetup setup,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(engraver);
        ArgumentNullException.ThrowIfNull(music);
        ArgumentNullException.ThrowIfNull(setup);
        var cut = setup with
        {
            Cut = true,
            OneSystem = true,
            Header = false,
            EndMargin = HandoutLayout.StripMargin,
            SideMargin = HandoutLayout.StripMargin,
        };
        return engraver.Engrave(BesideXml.Join(music.Scores), cut, cancellation);
    }
}
