using Stridewright.Arranging;
using Stridewright.Workbench.Inputs;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Wishes of one run that do not go together.</summary>
internal static class Contradictions
{
    /// <summary>More pages than the longest form fills.</summary>
    private const int MostPages = 40;

    /// <summary>What in a request cannot stand together, or is out of its range.</summary>
    public static IEnumerable<Problem> Of(ArrangeRequest request)
    {
        if (request.Chords is not null && request.Tunes.Count > 0)
        {
            yield return new Problem("chords", null, "", WorkbenchMessages.TunesAndChords);
        }
        if (request.Chords is null && request.Title is not null)
        {
            yield return new Problem("title", null, "", WorkbenchMessages.TitleOfChords);
        }
        if (request.AllKeys && request.Wishes.Key is not null)
        {
            yield return new Problem("all-keys", null, "", WorkbenchMessages.OneKeyOfAll);
        }
        if (request.Pages is { } pages)
        {
            if (pages is < 1 or > MostPages)
            {
                yield return new Problem("pages", null, "", WorkbenchMessages.Pages(pages, MostPages));
            }
            if (request.Wishes.Minutes is not null)
            {
                yield return new Problem("pages", null, "", WorkbenchMessages.MinutesAndPages);
            }
            if (request.Wishes.Form == "plain")
            {
                yield return new Problem("pages", null, "", WorkbenchMessages.PagesAndPlain);
            }
        }
        if (request.Settings is { } settings)
        {
            if (settings is < 1 or > SeveralSettings.Most)
            {
                yield return new Problem(
                    "settings",
                    null,
                    "",
                    WorkbenchMessages.Settings(settings, SeveralSettings.Most)
                );
            }
            if (request.Levels is not null || request.AllKeys || request.Pages is not null || request.Save is not null)
            {
                yield return new Problem("settings", null, "", WorkbenchMessages.SettingsOfOne);
            }
        }
        if (request.Save is { } save)
        {
            if (!save.EndsWith(InputKinds.ArrangementEnding, StringComparison.OrdinalIgnoreCase))
            {
                var message = WorkbenchMessages.SaveEnding(save, InputKinds.ArrangementEnding);
                yield return new Problem("save", null, "", message);
            }
            if (request.Levels is not null || request.AllKeys)
            {
                yield return new Problem("save", null, "", WorkbenchMessages.SaveOneSetting);
            }
        }
        if (request.Levels is not null && request.Wishes.Effort is not null)
        {
            yield return new Problem("effort", null, "", WorkbenchMessages.EffortAndLevels);
        }
        if (request.Levels is { } levels)
        {
            var wishes = request.Wishes;
            if (levels.First < Brief.LowestLevel || levels.Last > Brief.HighestLevel || levels.First > levels.Last)
            {
                var message = WorkbenchMessages.Levels(levels, Brief.LowestLevel, Brief.HighestLevel);
                yield return new Problem("levels", null, "", message);
            }
            if ((wishes.Level ?? wishes.LeftLevel ?? wishes.RightLevel) is not null)
            {
                yield return new Problem("levels", null, "", WorkbenchMessages.LevelsAndLevel);
            }
        }
    }
}
