using Stridewright.Shelf.Storage;

namespace Stridewright.Shelf;

/// <summary>
/// Keeps a history that can be read: what one sitting saves by itself stays at most every two minutes, and a document has
/// at most two hundred versions without a name. The current version, named ones, those beside the main line and the first
/// never go.
/// </summary>
internal static class Thinning
{
    public static readonly TimeSpan Apart = TimeSpan.FromMinutes(2);

    public const int MostUnnamed = 200;

    /// <param name="before">The version that was current until now.</param>
    /// <param name="now">The version that is being saved from it.</param>
    public static void After(ShelfContext context, VersionRow before, VersionRow now)
    {
        var isPassing = IsPassing(context, before, now);
        if (isPassing)
        {
            context.Versions.Remove(before);
        }
        var unnamed = context
            .Versions.Where(v => v.DocumentId == now.DocumentId && v.Name == null && !v.IsBeside)
            .OrderBy(v => v.Number)
            .Select(v => new { v.Number, v.Saved })
            .ToList();
        // Of a long history the version goes that stands nearest behind another.
        if (unnamed.Count >= MostUnnamed && !isPassing)
        {
            var nearest = unnamed.Zip(unnamed.Skip(1)).MinBy(pair => pair.Second.Saved - pair.First.Saved).Second;
            context.Versions.Remove(Reading.Version(context, now.DocumentId, nearest.Number));
        }
    }

    // Only a moment of a sitting that goes on.
    private static bool IsPassing(ShelfContext context, VersionRow before, VersionRow now)
    {
        if (before.Name is not null || before.Sitting is null || before.Sitting != now.Sitting)
        {
            return false;
        }
        var stands = context
            .Versions.Where(v => v.DocumentId == now.DocumentId && v.Number < before.Number && !v.IsBeside)
            .OrderByDescending(v => v.Number)
            .Select(v => new { v.Sitting, v.Saved })
            .FirstOrDefault();
        return stands is not null && stands.Sitting == before.Sitting && before.Saved - stands.Saved < Apart.Ticks;
    }
}
