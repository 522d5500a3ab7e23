using Stridewright.Practice.Listening;
using Stridewright.Workbench.Listening;

namespace Stridewright.Workbench.Tests.Listening;

/// <summary>What a keyboard told, as a take; through a MIDI file and back it is the same.</summary>
public sealed class TakeEventsTests
{
    [Fact]
    public void Keys_and_pedal_come_back_out_of_the_file_as_they_were_told()
    {
        using var tools = new StandardTools();
        PlayedEvent[] told =
        [
            new(1, 48, 70),
            new(1.0021, 64, 60),
            new(1.1, Pedal: true),
            new(1.4, 48),
            // The same key again without a release: it is let go by that.
            new(1.5, 64, 50),
            new(1.9, 64),
            new(2.2, Pedal: false),
            // Never let go: it sounds half a second beyond the end.
            new(2.5, 72, 40),
        ];
        // Told out of order, as two pages of events may be.
        var performance = TakeEvents.Performance("By hand", [.. told.Skip(4), .. told.Take(4)]);
        using var file = new MemoryStream(tools.WriteTake(performance));
        var take = Take.Of(tools.ReadTake(file).Value!);
        Assert.Equal(
            [(1.0, 1.4, 48, 70), (1.0021, 1.5, 64, 60), (1.5, 1.9, 64, 50), (2.5, 3.0, 72, 40)],
            take.Notes.Select(n => (Near(n.Onset), Near(n.Release), n.Key, n.Velocity))
        );
        Assert.Equal([(1.1, 2.2)], take.Pedal.Select(p => (Near(p.Down), Near(p.Up))));
    }

    // A tick lasts a tenth of a millisecond.
    private static double Near(double seconds) => Math.Round(seconds, 4);
}
