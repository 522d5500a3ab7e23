namespace Stridewright.Shelf.Storage;

/// <summary>A document, whatever it holds.</summary>
internal sealed class DocumentRow
{
    public required string Id { get; set; }

    /// <summary>A word of <see cref="DocumentKinds"/>.</summary>
    public required string Kind { get; set; }

    /// <summary>Instants are UTC ticks of 100 ns.</summary>
    public long Made { get; set; }

    /// <summary>When it was put aside; null: it stands on the shelf.</summary>
    public long? Deleted { get; set; }

    /// <summary>Number of the version that holds. A save checks it, so that none goes over another.</summary>
    public int Current { get; set; }

    public List<VersionRow> Versions { get; set; } = [];

    public List<TagRow> Tags { get; set; } = [];
}

/// <summary>A document as it stood once.</summary>
internal sealed class VersionRow
{
    public required string DocumentId { get; set; }

    /// <summary>From 1 within its document; never used twice.</summary>
    public int Number { get; set; }

    /// <summary>The version it was made from; 0 for the first.</summary>
    public int From { get; set; }

    public long Saved { get; set; }

    /// <summary>Given by a person; such a version is never thinned out. Null: none.</summary>
    public string? Name { get; set; }

    /// <summary>One stretch of work on one page; null: a save of its own.</summary>
    public string? Sitting { get; set; }

    /// <summary>It came too late for the main line, and lies beside it.</summary>
    public bool IsBeside { get; set; }

    public required string Title { get; set; }

    /// <summary>The title for searching: small letters without marks.</summary>
    public required string Sought { get; set; }

    public string? Key { get; set; }

    public string? Metre { get; set; }

    public double? Effort { get; set; }

    public required string Text { get; set; }
}

/// <summary>A word that a person put on a document.</summary>
internal sealed class TagRow
{
    public required string DocumentId { get; set; }

    /// <summary>As for searching: small letters without marks.</summary>
    public required string Sought { get; set; }

    /// <summary>As it was written.</summary>
    public required string Word { get; set; }
}
