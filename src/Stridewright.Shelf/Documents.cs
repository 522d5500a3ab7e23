using Stridewright.Music;

namespace Stridewright.Shelf;

/// <summary>What a document is; the shelf never looks inside.</summary>
public enum DocumentKind
{
    Tune,
    Arrangement,
    Figure,
    Player,

    /// <summary>A performance that a player gave; found only where takes are asked for.</summary>
    Take,
}

/// <summary>The kinds by their words in the file, which never change.</summary>
internal static class DocumentKinds
{
    public static string WordOf(DocumentKind kind) =>
        kind switch
        {
            DocumentKind.Tune => "tune",
            DocumentKind.Arrangement => "arrangement",
            DocumentKind.Figure => "figure",
            DocumentKind.Player => "player",
            DocumentKind.Take => "take",
            _ => throw new ArgumentOutOfRangeException(nameof(kind)),
        };

    public static DocumentKind Of(string word) => Enum.GetValues<DocumentKind>().First(k => WordOf(k) == word);
}

/// <summary>What a document may be at most.</summary>
public static class DocumentLimits
{
    /// <summary>Characters of a title or of a version's name.</summary>
    public const int Title = 300;

    /// <summary>Characters of a tag, and tags of a document.</summary>
    public const int Tag = 60,
        Tags = 24;

    /// <summary>Characters of a text; no arrangement file may be longer.</summary>
    public const int Text = 1_000_000;

    /// <summary>Documents in one answer of a search.</summary>
    public const int Hits = 200;
}

/// <summary>What one version of a document holds.</summary>
/// <param name="Title">One line, not empty, at most <see cref="DocumentLimits.Title"/> characters.</param>
/// <param name="Key">Such as <c>F major</c>; null where there is none, as for a player.</param>
/// <param name="Metre">Such as <c>2/4</c>; null where there is none.</param>
/// <param name="Effort">1 to 100; null where there is none.</param>
/// <param name="Text">Whatever its kind writes, at most <see cref="DocumentLimits.Text"/> characters.</param>
public sealed record Content(
    string Title,
    string Text,
    string? Key = null,
    string? Metre = null,
    double? Effort = null
);

/// <summary>A version without its content's text.</summary>
/// <param name="Number">From 1 within its document.</param>
/// <param name="Saved">In UTC.</param>
/// <param name="Name">Given by a person; null: none.</param>
/// <param name="IsBeside">It came from a version that was no longer the last one, and lies beside the main line.</param>
public sealed record VersionHead(
    int Number,
    int From,
    DateTimeOffset Saved,
    string? Name,
    bool IsBeside,
    string Title,
    string? Key,
    string? Metre,
    double? Effort
);

/// <summary>A document without its text, as its current version has it.</summary>
/// <param name="Deleted">When it was put aside; null: it stands on the shelf.</param>
public sealed record DocumentHead(
    string Id,
    DocumentKind Kind,
    VersionHead Current,
    ValueList<string> Tags,
    DateTimeOffset? Deleted
);

/// <summary>A document as one of its versions has it.</summary>
/// <param name="Head">As the current version has it.</param>
/// <param name="Version">The version that was asked for.</param>
public sealed record Document(DocumentHead Head, VersionHead Version, string Text);

/// <summary>What is sought; null or empty where it does not matter.</summary>
public sealed record Sought
{
    /// <summary>Null: all that is looked for by title, so all but takes.</summary>
    public DocumentKind? Kind { get; init; }

    /// <summary>Each of its words stands in the title or in a tag.</summary>
    public string Words { get; init; } = "";

    public string? Key { get; init; }

    public string? Metre { get; init; }

    /// <summary>Effort from here, this counted in.</summary>
    public double? Easiest { get; init; }

    /// <summary>Effort to here, this counted in.</summary>
    public double? Hardest { get; init; }

    public string? Tag { get; init; }

    /// <summary>Those put aside instead of those that stand.</summary>
    public bool Deleted { get; init; }

    public int Skip { get; init; }

    /// <summary>At most <see cref="DocumentLimits.Hits"/>.</summary>
    public int Most { get; init; } = DocumentLimits.Hits;
}

/// <summary>What was found, the last saved first.</summary>
/// <param name="Count">Of all that fit, given here or not.</param>
/// <param name="Standing">What can be sought.</param>
public sealed record Found(ValueList<DocumentHead> Documents, int Count, Standing Standing);

/// <summary>All tags, keys and metres that stand on the shelf, in order.</summary>
public sealed record Standing(ValueList<string> Tags, ValueList<string> Keys, ValueList<string> Metres);

/// <summary>How a save went.</summary>
/// <param name="Document">As it stands now.</param>
/// <param name="Beside">Null: it was saved. Else another save came first: this is the version that what was given is kept
/// as, beside the main line.</param>
public sealed record Saved(DocumentHead Document, VersionHead? Beside);
