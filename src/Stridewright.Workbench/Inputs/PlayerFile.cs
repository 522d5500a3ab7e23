using Stridewright.Hands;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Inputs;

/// <summary>Reads a player from a file.</summary>
internal static class PlayerFile
{
    /// <summary>The player; else null and at least one problem.</summary>
    public static Player? Read(string file, List<Problem> problems, CancellationToken cancellation)
    {
        var text = InputText.TryRead(file, PlayerText.MostCharacters, cancellation, out var problem);
        if (text is null)
        {
            problems.Add(new Problem(file, null, "", problem));
            return null;
        }
        var reading = PlayerText.Read(text);
        problems.AddRange(reading.Diagnostics.Select(d => new Problem(file, null, d.Place.ToString(), d.Message)));
        return reading.Value;
    }
}
