using System.Text;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Outputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Shows, makes and measures a player.</summary>
internal sealed class PlayerWork(PlayerRequest request)
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
        if (_problems.Count > 0)
        {
            return new() { Problems = _problems.ToValueList() };
        }
        var notes = request.Notes ?? before?.Notes ?? "";
        var outputs = request.Out is { } path
            ? Write(path, new Player(name!, hands) { Notes = notes }, cancellation)
            : [];
        return new()
        {
            Name = name,
            Notes = notes,
            Hands = ReportOf.Hands(hands),
            Right = ReportOf.OneHand(hands, Hand.Right),
            Left = ReportOf.OneHand(hands, Hand.Left),
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
        foreach (var word in HandsText.Words)
        {
            foreach (var said in request.Hands.Where(h => h.Word == word.Word))
            {
                var (read, problem) = word.Read(hands, said.Value);
                if (read is null)
                {
                    Fail(word.Word, problem);
                }
                hands = read ?? hands;
            }
        }
        return hands;
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
