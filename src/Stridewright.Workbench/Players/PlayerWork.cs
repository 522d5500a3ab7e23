using System.Text;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Shows, makes and measures a player.</summary>
internal sealed class PlayerWork(ITools tools, PlayerRequest request)
{
    private readonly List<Problem> _problems = [];

    public PlayerReport Run(CancellationToken cancellation)
    {
        try
        {
            return Made(cancellation);
        }
        catch (OperationCanceledException)
        {
            throw;
        }
#pragma warning disable CA1031 // A fault of the program reaches the person as a sentence.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return new() { Problems = [new Problem("", null, "", WorkbenchMessages.Internal(fault))] };
        }
    }

    private PlayerReport Made(CancellationToken cancellation)
    {
        var before = request.File is { } file ? PlayerFile.Read(file, _problems, cancellation) : null;
        var name = request.Name ?? before?.Name;
        if (request.Out is not null && !Player.IsName(name))
        {
            Fail("name", WorkbenchMessages.PlayerName(Player.LongestName));
        }
        if (request.Out is { } target && !target.EndsWith(PlayerText.Ending, StringComparison.OrdinalIgnoreCase))
        {
            Fail("out", WorkbenchMessages.PlayerEnding(target, PlayerText.Ending));
        }
        var hands = Hands(before?.Hands ?? new PlayerHands());
        var measured = request.LeapTest is { } take ? Measured(take, hands.OctaveMm, cancellation) : null;
        hands = measured is null ? hands : With(hands, measured);
        if (_problems.Count > 0)
        {
            return new() { Problems = _problems.ToValueList() };
        }
        var notes = request.Notes ?? before?.Notes ?? "";
        var written = request.Out is { } path
            ? Write(path, new Player(name!, hands) { Notes = notes }, cancellation)
            : [];
        ValueList<WrittenFile> outputs =
        [
            .. written,
            .. request.LeapTestFolder is { } folder ? WriteTest(folder, cancellation) : [],
        ];
        return new()
        {
            Name = name,
            Notes = notes,
            Hands = ReportOf.Hands(hands),
            Right = ReportOf.OneHand(hands, Hand.Right),
            Left = ReportOf.OneHand(hands, Hand.Left),
            Measured = measured?.Sentences ?? [],
            Outputs = outputs,
            Problems = _problems.ToValueList(),
        };
    }

    // In the order of the words, whatever the order in which they were said.
    private PlayerHands Hands(PlayerHands hands)
    {
        if (request.Usual is { } usual)
        {
            if (UsualSpans.TryRead(usual, out var mm, out var problem))
            {
                hands = hands.WithSpan(mm);
            }
            else
            {
                Fail("usual", problem);
            }
        }
        return HandsSaying.Read(hands, request.Hands, _problems);
    }

    private LeapTestResult? Measured(string file, double octaveMm, CancellationToken cancellation)
    {
        if (InputBytes.TryRead(file, cancellation, out var problem) is not { } bytes)
        {
            Fail("leap-test", problem);
            return null;
        }
        var measured = LeapTestTake.Measure(tools, bytes, octaveMm, out problem);
        if (measured is null)
        {
            Fail("leap-test", problem);
        }
        return measured;
    }

    // What lies beyond all that a file can hold is left as it was.
    private static PlayerHands With(PlayerHands hands, LeapTestResult measured) =>
        HandsSaying.Read(hands, LeapTestTake.Said(measured), []);

    private ValueList<WrittenFile> WriteTest(string folder, CancellationToken cancellation)
    {
        var outputs = new OutputFiles(folder, request.Replace, []);
        var files = new[] { Hand.Left, Hand.Right }.SelectMany(hand =>
        {
            var (name, score) = ("leap-test-" + Arranging.Words.Of(hand), LeapTest.Write(hand));
            return new[]
            {
                new OutputFile(name + ".musicxml", tools.ToMusicXml(score)),
                new OutputFile(name + ".mid", tools.ToMidi(score)),
            };
        });
        if (outputs.TryWrite(files, cancellation, out var problem) is { } written)
        {
            return written;
        }
        Fail("write-leap-test", problem);
        return [];
    }

    private ValueList<WrittenFile> Write(string path, Player player, CancellationToken cancellation)
    {
        var folder = Path.GetDirectoryName(path);
        // The file that was read may be written anew.
        var outputs = new OutputFiles(string.IsNullOrEmpty(folder) ? "." : folder, request.Replace, []);
        var bytes = Encoding.UTF8.GetBytes(PlayerText.Write(player));
        if (
            outputs.TryWrite([new OutputFile(Path.GetFileName(path), bytes)], cancellation, out var problem) is
            { } written
        )
        {
            return written;
        }
        Fail("out", problem);
        return [];
    }

    private void Fail(string wish, string message) => _problems.Add(new Problem(wish, null, "", message));
}
