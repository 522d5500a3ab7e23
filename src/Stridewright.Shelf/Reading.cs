using Stridewright.Music;
using Stridewright.Shelf.Storage;

namespace Stridewright.Shelf;

/// <summary>Rows as what the shelf answers.</summary>
internal static class Reading
{
    /// <exception cref="ShelfException">There is none.</exception>
    public static DocumentRow Of(ShelfContext context, string id) =>
        context.Documents.Find(id) ?? throw new ShelfException(ShelfFault.Missing, ShelfMessages.NoSuchDocument);

    /// <exception cref="ShelfException">There is none.</exception>
    public static VersionRow Version(ShelfContext context, string id, int number) =>
        context.Versions.Find(id, number)
        ?? throw new ShelfException(ShelfFault.Missing, ShelfMessages.NoSuchVersion(number));

    public static DocumentHead Head(ShelfContext context, DocumentRow document)
    {
        var tags = context.Tags.Where(t => t.DocumentId == document.Id).OrderBy(t => t.Sought).Select(t => t.Word);
        return Head(document, Head(Version(context, document.Id, document.Current)), tags);
    }

    public static DocumentHead Head(DocumentRow document, VersionHead current, IEnumerable<string> tags) =>
        new(
            document.Id,
            DocumentKinds.Of(document.Kind),
            current,
            tags.ToValueList(),
            document.Deleted is { } ticks ? At(ticks) : null
        );

    public static VersionHead Head(VersionRow row) =>
        new(row.Number, row.From, At(row.Saved), row.Name, row.IsBeside, row.Title, row.Key, row.Metre, row.Effort);

    /// <summary>The versions without their texts, the last first.</summary>
    public static ValueList<VersionHead> History(ShelfContext context, DocumentRow document) =>
        Heads(context.Versions.Where(v => v.DocumentId == document.Id).OrderByDescending(v => v.Number))
            .Select(v => v.Version)
            .ToValueList();

    /// <summary>Version heads with the documents they belong to; their texts stay in the file.</summary>
    public static IEnumerable<(string Document, VersionHead Version)> Heads(IQueryable<VersionRow> versions) =>
        versions
            .Select(v => new
            {
                v.DocumentId,
                v.Number,
                v.From,
                v.Saved,
                v.Name,
                v.IsBeside,
                v.Title,
                v.Key,
                v.Metre,
                v.Effort,
            })
            .AsEnumerable()
            .Select(v =>
                (
                    v.DocumentId,
                    new VersionHead(
                        v.Number,
                        v.From,
                        At(v.Saved),
                        v.Name,
                        v.IsBeside,
                        v.Title,
                        v.Key,
                        v.Metre,
                        v.Effort
                    )
                )
            );

    private static DateTimeOffset At(long ticks) => new(ticks, TimeSpan.Zero);
}
