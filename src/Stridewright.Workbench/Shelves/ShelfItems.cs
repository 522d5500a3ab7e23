using Stridewright.Music;
using Stridewright.Workbench.Sheets;

namespace Stridewright.Workbench.Shelves;

/// <summary>A document on the shelf, as its current version has it.</summary>
/// <param name="Kind"><c>tune</c>, <c>arrangement</c>, <c>figure</c>, <c>player</c> or <c>take</c>.</param>
/// <param name="Version">Number of the current version: a save names it.</param>
/// <param name="Saved">When that was saved.</param>
/// <param name="Key">Such as <c>F major</c>; null where there is none.</param>
/// <param name="Metre">Such as <c>2/4</c>; null where there is none.</param>
/// <param name="Effort">1 to 100; null where there is none.</param>
/// <param name="Deleted">When it was put aside; null: it stands on the shelf.</param>
public sealed record ShelfItem(
    string Id,
    string Kind,
    int Version,
    DateTimeOffset Saved,
    string Title,
    string? Key,
    string? Metre,
    double? Effort,
    ValueList<string> Tags,
    DateTimeOffset? Deleted
);

/// <summary>A version of a document.</summary>
/// <param name="Name">Given by a person; null: none.</param>
/// <param name="IsBeside">Another save came first: it was kept beside it.</param>
public sealed record ShelfVersion(
    int Number,
    DateTimeOffset Saved,
    string? Name,
    bool IsBeside,
    string Title,
    string? Key,
    string? Metre,
    double? Effort
);

/// <summary>What was found on the shelf, the last saved first.</summary>
/// <param name="Count">Of all that fit, given here or not.</param>
/// <param name="Tags">All tags on the shelf.</param>
/// <param name="Keys">All keys on the shelf.</param>
/// <param name="Metres">All metres on the shelf.</param>
public sealed record ShelfList(
    ValueList<ShelfItem> Items,
    int Count,
    ValueList<string> Tags,
    ValueList<string> Keys,
    ValueList<string> Metres
);

/// <summary>The versions of a document, the last first.</summary>
public sealed record ShelfHistory(ValueList<ShelfVersion> Versions);

/// <summary>How a save went.</summary>
/// <param name="Item">As it stands now.</param>
/// <param name="Beside">Null: it was saved. Else somebody saved first: what was given is kept as this version beside it.</param>
public sealed record ShelfSaved(ShelfItem Item, ShelfVersion? Beside);

/// <summary>What is sought on the shelf; null where it does not matter.</summary>
public sealed record ShelfWish
{
    public string? Kind { get; init; }

    public string? Words { get; init; }

    public string? Key { get; init; }

    public string? Metre { get; init; }

    /// <summary>Effort from here, this counted in.</summary>
    public double? Easiest { get; init; }

    /// <summary>Effort to here, this counted in.</summary>
    public double? Hardest { get; init; }

    public string? Tag { get; init; }

    /// <summary>Those put aside instead.</summary>
    public bool Deleted { get; init; }

    public int? Skip { get; init; }

    public int? Most { get; init; }
}

/// <summary>Something of the shelf, put on the desk.</summary>
/// <param name="Version">The one that was opened.</param>
/// <param name="Source">Its tune.</param>
/// <param name="Wishes">Its brief in words, as far as there are words for it; the rest stays with its tune.</param>
public sealed record ShelfOpened(ShelfItem Item, ShelfVersion Version, TuneSource Source, Wishes Wishes)
{
    /// <summary>How it was shown.</summary>
    public SheetLook Look { get; init; } = new();
}

/// <summary>The shelf did not do what was asked; the message says why and what to do.</summary>
public sealed class ShelfRefusedException : Exception
{
    public ShelfRefusedException() { }

    public ShelfRefusedException(string message)
        : base(message) { }

    public ShelfRefusedException(string message, Exception inner)
        : base(message, inner) { }

    /// <summary>What it is about is not on the shelf.</summary>
    public bool IsMissing { get; init; }

    /// <summary>The shelf itself cannot be used.</summary>
    public bool IsUnusable { get; init; }
}
