using Microsoft.EntityFrameworkCore;
using Stridewright.Music;
using Stridewright.Shelf.Storage;

namespace Stridewright.Shelf;

/// <summary>All that changes the shelf; each call is one transaction.</summary>
internal sealed class Saving(ShelfContext context, DateTimeOffset now)
{
    public DocumentHead Add(DocumentKind kind, Content content, ValueList<string> tags, string? sitting)
    {
        content = Checks.Of(content);
        var document = new DocumentRow
        {
            Id = Guid.NewGuid().ToString("N"),
            Kind = DocumentKinds.WordOf(kind),
            Made = now.UtcTicks,
            Current = 1,
        };
        document.Versions.Add(Row(document.Id, 1, from: 0, content, sitting));
        document.Tags.AddRange(Rows(document.Id, tags));
        context.Documents.Add(document);
        context.SaveChanges();
        return Reading.Head(context, document);
    }

    public Saved Save(string id, int from, Content content, string? sitting)
    {
        content = Checks.Of(content);
        var document = Reading.Of(context, id);
        var current = Reading.Version(context, id, document.Current);
        // Said twice, because the first answer was lost on its way, or because nothing is new.
        if ((current.Number == from || current.From == from) && ContentOf(current) == content)
        {
            return new(Reading.Head(context, document), null);
        }
        var last = context.Versions.Where(v => v.DocumentId == id).Max(v => v.Number);
        var row = Row(id, last + 1, from, content, sitting);
        row.IsBeside = from != current.Number;
        context.Versions.Add(row);
        document.Deleted = null;
        if (!row.IsBeside)
        {
            document.Current = row.Number;
            Thinning.After(context, current, row);
        }
        context.SaveChanges();
        return new(Reading.Head(context, document), row.IsBeside ? Reading.Head(row) : null);
    }

    public Saved Again(string id, int number, int from) =>
        Save(id, from, ContentOf(Reading.Version(context, id, number)), sitting: null);

    public DocumentHead Rename(string id, string title)
    {
        var current = Reading.Version(context, id, Reading.Of(context, id).Current);
        return Save(id, current.Number, ContentOf(current) with { Title = title }, sitting: null).Document;
    }

    public DocumentHead Copy(string id, int number)
    {
        var document = Reading.Of(context, id);
        var tags = Reading.Head(context, document).Tags;
        var content = ContentOf(Reading.Version(context, id, number));
        return Add(DocumentKinds.Of(document.Kind), content, tags, sitting: null);
    }

    public ValueList<VersionHead> Name(string id, int number, string? name)
    {
        Reading.Version(context, id, number).Name = name is null ? null : Checks.Title(name);
        context.SaveChanges();
        return Reading.History(context, Reading.Of(context, id));
    }

    public DocumentHead Tag(string id, ValueList<string> tags)
    {
        var document = Reading.Of(context, id);
        using var transaction = context.Database.BeginTransaction();
        context.Tags.Where(t => t.DocumentId == id).ExecuteDelete();
        context.Tags.AddRange(Rows(id, tags));
        context.SaveChanges();
        transaction.Commit();
        return Reading.Head(context, document);
    }

    public DocumentHead PutAside(string id, bool isAside)
    {
        var document = Reading.Of(context, id);
        document.Deleted = isAside ? document.Deleted ?? now.UtcTicks : null;
        context.SaveChanges();
        return Reading.Head(context, document);
    }

    public static int Purge(ShelfContext context, string? id)
    {
        if (id is not null && Reading.Of(context, id).Deleted is null)
        {
            throw new ShelfException(ShelfFault.Refused, ShelfMessages.StillStands);
        }
        // Versions and tags go with their document.
        return context.Documents.Where(d => d.Deleted != null && (id == null || d.Id == id)).ExecuteDelete();
    }

    public static int Forget(ShelfContext context, string id, string tag)
    {
        _ = Reading.Of(context, id);
        var folded = Folding.Of(tag);
        return context.Documents.Where(d => d.Id == id || d.Tags.Any(t => t.Sought == folded)).ExecuteDelete();
    }

    private static Content ContentOf(VersionRow row) => new(row.Title, row.Text, row.Key, row.Metre, row.Effort);

    private VersionRow Row(string id, int number, int from, Content content, string? sitting) =>
        new()
        {
            DocumentId = id,
            Number = number,
            From = from,
            Saved = now.UtcTicks,
            Sitting = sitting,
            Title = content.Title,
            Sought = Folding.Of(content.Title),
            Key = content.Key,
            Metre = content.Metre,
            Effort = content.Effort,
            Text = content.Text,
        };

    private static IEnumerable<TagRow> Rows(string id, ValueList<string> tags) =>
        Checks
            .Tags(tags)
            .Select(word => new TagRow
            {
                DocumentId = id,
                Sought = Folding.Of(word),
                Word = word,
            })
            .DistinctBy(t => t.Sought);
}
