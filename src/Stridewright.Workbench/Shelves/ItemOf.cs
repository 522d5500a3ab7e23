using Stridewright.Music;
using Stridewright.Shelf;

namespace Stridewright.Workbench.Shelves;

/// <summary>What the shelf answers, as a host shows it.</summary>
internal static class ItemOf
{
    public static ShelfItem Document(DocumentHead head)
    {
        var current = head.Current;
        return new(
            head.Id,
            Arranging.Words.Of(head.Kind),
            current.Number,
            current.Saved,
            current.Title,
            current.Key,
            current.Metre,
            current.Effort,
            head.Tags,
            head.Deleted
        );
    }

    public static ShelfVersion Version(VersionHead head) =>
        new(head.Number, head.Saved, head.Name, head.IsBeside, head.Title, head.Key, head.Metre, head.Effort);

    public static ShelfHistory History(ValueList<VersionHead> versions) => new(versions.Select(Version).ToValueList());

    public static ShelfSaved Saved(Saved saved) =>
        new(Document(saved.Document), saved.Beside is { } beside ? Version(beside) : null);

    /// <exception cref="ShelfRefusedException">It is none.</exception>
    public static DocumentKind? Kind(string? word) =>
        word is null ? null
        : Enum.GetValues<DocumentKind>()
            .Where(k => Arranging.Words.Of(k) == word)
            .Cast<DocumentKind?>()
            .FirstOrDefault()
            is { } kind
            ? kind
        : throw new ShelfRefusedException(WorkbenchMessages.NoKind(word));

    /// <summary>A title as the shelf takes it: of a tune without words in its title, one of our own.</summary>
    public static string Title(string title)
    {
        var line = new string(title.Where(c => !char.IsControl(c)).Take(DocumentLimits.Title).ToArray()).Trim();
        return line.Length > 0 ? line : WorkbenchMessages.UntitledName;
    }
}
