using Stridewright.Hands;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Reads what is said of hands, in the order of the words, whatever the order in which they were said.</summary>
internal static class HandsSaying
{
    public static PlayerHands Read(PlayerHands hands, IEnumerable<HandsSaid> said, List<Problem> faults)
    {
        var given = said.ToList();
        foreach (var word in HandsText.Words)
        {
            foreach (var one in given.Where(h => h.Word == word.Word))
            {
                var (read, problem) = word.Read(hands, one.Value);
                if (read is null)
                {
                    faults.Add(new Problem(word.Word, null, "", problem));
                }
                hands = read ?? hands;
            }
        }
        foreach (var unknown in given.Where(h => HandsText.Words.All(w => w.Word != h.Word)))
        {
            faults.Add(new Problem(unknown.Word, null, "", WorkbenchMessages.NoHandsWord(unknown.Word)));
        }
        return hands;
    }
}
