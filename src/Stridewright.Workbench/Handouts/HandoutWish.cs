using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Handouts;

/// <summary>What is wanted on a hand-out.</summary>
public sealed record HandoutWish
{
    /// <summary>Longest own text, credit and name, in characters.</summary>
    public const int LongestText = 2000,
        LongestCredit = 300,
        LongestName = 80;

    /// <summary>Most empty systems, keyboards, and bars of one system.</summary>
    public const int MostStaves = 8,
        MostKeyboards = 4,
        MostInOneSystem = 16;

    /// <summary>Usual number of empty systems.</summary>
    public const int UsualStaves = 2;

    /// <summary>Printed numbers such as <c>5-8</c>; null: all bars.</summary>
    public string? Bars { get; init; }

    /// <summary>Words of <see cref="HandoutItems"/> in the order in which they stand on the page; empty: the score.</summary>
    public ValueList<string> Items { get; init; } = [];

    /// <summary>Which levels stand below each other, 1 to 6; empty: the setting's own and its neighbours.</summary>
    public ValueList<int> Levels { get; init; } = [];

    /// <summary>Printed numbers of bars that are drawn on a keyboard; empty: the first of the bars.</summary>
    public ValueList<string> Keyboard { get; init; } = [];

    /// <summary>How many empty systems; null: <see cref="UsualStaves"/>.</summary>
    public int? Staves { get; init; }

    /// <summary>Own words; lines end in <c>\n</c>.</summary>
    public string? Text { get; init; }

    /// <summary>Whose page it is; empty: a line for the name; null: nothing is said.</summary>
    public string? Pupil { get; init; }

    /// <summary>Whom the tune and the setting are owed to; null: nobody is named but the composer.</summary>
    public string? Credit { get; init; }

    /// <summary>The tune is stated to be free of rights: the caution is left out.</summary>
    public bool Free { get; init; }

    /// <summary>Fingers stand at the notes.</summary>
    public bool Fingering { get; init; }

    /// <summary>Only the music that is named first, in one system on a picture of its own size.</summary>
    public bool OneSystem { get; init; }
}

/// <summary>The words for what can stand on a hand-out.</summary>
public static class HandoutItems
{
    public const string Score = "score",
        Plain = "plain",
        Hands = "hands",
        Levels = "levels",
        Keyboard = "keyboard",
        Reasons = "reasons",
        Staves = "staves",
        Text = "text";

    public static readonly ValueList<string> All = [Score, Plain, Hands, Levels, Keyboard, Reasons, Text, Staves];
}

/// <summary>A hand-out of a tune or an arrangement, as a file.</summary>
public sealed record HandoutRequest
{
    /// <summary>Tune or arrangement file.</summary>
    public required string File { get; init; }

    /// <summary>Number of the tune in a book, from 1; null: it is the only one.</summary>
    public int? Number { get; init; }

    /// <summary>The brief; what is not said is the arrangement file's.</summary>
    public Wishes Wishes { get; init; } = new();

    public HandoutWish Wish { get; init; } = new();

    public Paper Paper { get; init; } = Paper.A4;

    /// <summary>File to write, ending in .pdf, .svg or .png.</summary>
    public required string Out { get; init; }

    /// <summary>An existing file of other content may be replaced.</summary>
    public bool Replace { get; init; }
}

/// <summary>What came of a hand-out. The object of <c>handout --json</c>.</summary>
public sealed record HandoutReport
{
    public string Kind { get; } = "handout";

    public required string File { get; init; }

    public ValueList<WrittenFile> Outputs { get; init; } = [];

    public ValueList<Problem> Problems { get; init; } = [];

    /// <summary>A wish cannot be understood; the file of its problem names it.</summary>
    public bool IsBadWish { get; init; }

    public bool Cancelled { get; init; }
}
