using Microsoft.EntityFrameworkCore;
using Stridewright.Music;
using Stridewright.Shelf.Storage;

namespace Stridewright.Shelf;

/// <summary>Finds documents by what their current version says of itself.</summary>
internal static class Searching
{
    private static readonly string TakeWord = DocumentKinds.WordOf(DocumentKind.Take);

    public static Found Find(ShelfContext context, Sought sought)
    {
        var hits = Fitting(context, sought);
        var count = hits.Count();
        var versions = Reading
            .Heads(
                hits.OrderByDescending(v => v.Saved)
                    .ThenBy(v => v.DocumentId)
                    .Skip(Math.Max(0, sought.Skip))
                    .Take(Math.Clamp(sought.Most, 0, DocumentLimits.Hits))
            )
            .ToList();
        var ids = versions.Select(v => v.Document).ToList();
        var documents = context.Documents.AsNoTracking().Where(d => ids.Contains(d.Id)).ToDictionary(d => d.Id);
        var tags = context
            .Tags.AsNoTracking()
            .Where(t => ids.Contains(t.DocumentId))
            .OrderBy(t => t.Sought)
            .ToLookup(t => t.DocumentId, t => t.Word);
        return new(
            versions.Select(v => Reading.Head(documents[v.Document], v.Version, tags[v.Document])).ToValueList(),
            count,
            Standing(context)
        );
    }

    /// <summary>All that stand of a kind, with their texts, as <see cref="Shelf.All"/> gives them.</summary>
    public static ValueList<Document> All(ShelfContext context, DocumentKind kind, string? tag)
    {
        var versions = Fitting(context, new Sought { Kind = kind, Tag = tag })
            .AsNoTracking()
            .OrderBy(v => v.DocumentId)
            .ToList();
        var word = DocumentKinds.WordOf(kind);
        var documents = context.Documents.AsNoTracking().Where(d => d.Kind == word).ToDictionary(d => d.Id);
        var tags = context
            .Tags.AsNoTracking()
            .Where(t => context.Documents.Any(d => d.Id == t.DocumentId && d.Kind == word))
            .OrderBy(t => t.Sought)
            .ToLookup(t => t.DocumentId, t => t.Word);
        return versions
            .Select(v =>
            {
                var head = Reading.Head(v);
                return new Document(Reading.Head(documents[v.DocumentId], head, tags[v.DocumentId]), head, v.Text);
            })
            .ToValueList();
    }

    private static IQueryable<VersionRow> Fitting(ShelfContext context, Sought sought)
    {
        var documents = context.Documents.Where(d => (d.Deleted != null) == sought.Deleted);
        if (sought.Kind is { } kind)
        {
            var word = DocumentKinds.WordOf(kind);
            documents = documents.Where(d => d.Kind == word);
        }
        else
        {
            documents = documents.Where(d => d.Kind != TakeWord);
        }
        if (sought.Tag is { } tag)
        {
            var folded = Folding.Of(tag);
            documents = documents.Where(d => d.Tags.Any(t => t.Sought == folded));
        }
        var versions =
            from document in documents
            join version in context.Versions
                on new { document.Id, Number = document.Current } equals new { Id = version.DocumentId, version.Number }
            select version;
        foreach (var word in Folding.Words(sought.Words))
        {
            versions = versions.Where(v =>
                v.Sought.Contains(word)
                || context.Tags.Any(t => t.DocumentId == v.DocumentId && t.Sought.Contains(word))
            );
        }
        if (sought.Key is { } key)
        {
            versions = versions.Where(v => v.Key == key);
        }
        if (sought.Metre is { } metre)
        {
            versions = versions.Where(v => v.Metre == metre);
        }
        if (sought.Easiest is { } easiest)
        {
            versions = versions.Where(v => v.Effort >= easiest);
        }
        if (sought.Hardest is { } hardest)
        {
            versions = versions.Where(v => v.Effort <= hardest);
        }
        return versions;
    }

    private static Standing Standing(ShelfContext context)
    {
        var current =
            from document in context.Documents
            join version in context.Versions
                on new { document.Id, Number = document.Current } equals new { Id = version.DocumentId, version.Number }
            where document.Deleted == null && document.Kind != TakeWord
            select version;
        // One spelling of each tag.
        var tags = context
            .Tags.Where(t =>
                context.Documents.Any(d => d.Id == t.DocumentId && d.Deleted == null && d.Kind != TakeWord)
            )
            .GroupBy(t => t.Sought)
            .Select(g => new { g.Key, Word = g.Min(t => t.Word)! })
            .OrderBy(g => g.Key)
            .Select(g => g.Word);
        return new(tags.ToValueList(), Distinct(current.Select(v => v.Key)), Distinct(current.Select(v => v.Metre)));
    }

    private static ValueList<string> Distinct(IQueryable<string?> words) =>
        words.Where(w => w != null).Distinct().OrderBy(w => w).Select(w => w!).ToValueList();
}
