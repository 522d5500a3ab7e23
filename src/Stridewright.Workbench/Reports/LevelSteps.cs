using Stridewright.Arranging;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>Tells of the settings of a tune, from the easiest up, what each adds to the one before in its key.</summary>
internal sealed class LevelSteps
{
    private readonly Dictionary<string, Score> _easier = [];

    /// <summary>The next tune begins.</summary>
    public void Clear() => _easier.Clear();

    /// <summary>What this setting adds.</summary>
    public string Adds(Arrangement arrangement)
    {
        var key = arrangement.Key.ToString();
        var step = _easier.TryGetValue(key, out var easier) ? LevelStep.Between(easier, arrangement.Score) : null;
        _easier[key] = arrangement.Score;
        return WorkbenchMessages.Adds(arrangement.Brief.LeftLevel, arrangement.Score.LeftHandOnly, step);
    }
}
