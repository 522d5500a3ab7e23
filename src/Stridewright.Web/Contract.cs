using Stridewright.Music;
using Stridewright.Workbench;
using Stridewright.Workbench.Listening;
using Stridewright.Workbench.Reports;
using Stridewright.Workbench.Shelves;

namespace Stridewright.Web;

/// <summary>Something found in what was brought. Lines and columns count from 1.</summary>
/// <param name="Severity"><c>note</c>, <c>warning</c> or <c>error</c>.</param>
/// <param name="Place">The place in words, such as <c>line 4, column 12, bar 3</c>; empty where the whole is meant.</param>
public sealed record Finding(string Severity, int? Line, int? Column, string? Bar, string Place, string Message);

/// <summary>One tune of what was brought.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Key">Such as <c>F major</c>.</param>
/// <param name="Metre">Such as <c>2/4</c>.</param>
/// <param name="Bars">Written bars, pick-ups counted.</param>
/// <param name="ChordsOnly">It has no notes, and is set for the left hand alone.</param>
public sealed record BroughtTune(
    int Number,
    string Title,
    string? Composer,
    string Key,
    string Metre,
    int Bars,
    bool ChordsOnly
);

/// <summary>What was brought, and what was understood of it.</summary>
/// <param name="Id">To ask for settings of its tunes while it is at hand.</param>
/// <param name="Tunes">Empty where nothing could be read: then a finding is an error.</param>
public sealed record Brought(string Id, string Name, ValueList<BroughtTune> Tunes, ValueList<Finding> Findings);

/// <summary>Typed text: a tune in ABC, or chords alone.</summary>
public sealed record TypedText(string Text);

/// <summary>The brief, in the words of the command line; null where nothing was said.</summary>
public sealed record BriefWishes
{
    public string? Feel { get; init; }
    public int? Level { get; init; }
    public int? LeftLevel { get; init; }
    public int? RightLevel { get; init; }
    public double? Raggedness { get; init; }
    public string? Key { get; init; }
    public double? BeatsPerMinute { get; init; }

    /// <summary>Id of the player on the shelf whose hands are meant; what is said below goes before it.</summary>
    public string? Player { get; init; }
    public string? Span { get; init; }
    public bool NoOctaves { get; init; }
    public bool LeftHandOnly { get; init; }
    public bool Lyrics { get; init; }
    public bool ShowPlain { get; init; }

    /// <summary>Chord symbols are left out of what is printed.</summary>
    public bool NoChords { get; init; }

    /// <summary>Fingers are printed.</summary>
    public bool Fingers { get; init; }

    /// <summary>The reasons are printed, numbered.</summary>
    public bool Notes { get; init; }

    /// <summary>All is printed about a third larger.</summary>
    public bool LargePrint { get; init; }
    public string? Harmony { get; init; }
    public string? Form { get; init; }
    public string? Minutes { get; init; }
    public int? Seed { get; init; }
}

/// <summary>A setting that is wanted.</summary>
/// <param name="Tunes">Id of what was brought.</param>
/// <param name="Number">Of the tune in it, from 1.</param>
/// <param name="Paper"><c>a4</c> or <c>letter</c>; null: a4.</param>
public sealed record SettingWanted(string Tunes, int Number, BriefWishes Wishes, string? Paper = null);

/// <summary>A setting that was made.</summary>
/// <param name="Id">To fetch its pages and files while it is at hand.</param>
/// <param name="Pages">How many.</param>
/// <param name="Tune">What was chosen and how hard it is, as the command line reports it.</param>
public sealed record SettingMade(string Id, int Pages, WrittenTune Tune);

/// <summary>What came of work on a bar.</summary>
/// <param name="Tunes">Id of the tune with all that is kept, for further settings: it is number 1 there.</param>
/// <param name="Changed">Printed numbers of the bars that are other than before.</param>
public sealed record SpotMade(SettingMade Setting, string Tunes, ValueList<string> Changed);

/// <summary>A hand-out that is wanted.</summary>
/// <param name="Bars">Printed numbers such as <c>5-8</c>; null: all.</param>
/// <param name="Items">In this order: <c>score</c>, <c>plain</c>, <c>hands</c>, <c>levels</c>, <c>keyboard</c>,
/// <c>reasons</c>, <c>text</c>, <c>staves</c>.</param>
/// <param name="Levels">1 to 6; empty: the setting's own and its neighbours.</param>
/// <param name="Keyboard">Printed numbers of the bars that are drawn; empty: the first.</param>
/// <param name="Staves">How many empty systems.</param>
/// <param name="Text">Own words.</param>
/// <param name="Pupil">Whose page it is; empty: a line for the name; null: nobody's.</param>
/// <param name="Free">The tune is free of rights: the caution is left out.</param>
/// <param name="OneSystem">Only the music, in one system on a picture of its own size.</param>
/// <param name="Paper"><c>a4</c> or <c>letter</c>; null: a4.</param>
public sealed record HandoutWanted(
    string? Bars = null,
    IReadOnlyList<string>? Items = null,
    IReadOnlyList<int>? Levels = null,
    IReadOnlyList<string>? Keyboard = null,
    int? Staves = null,
    string? Text = null,
    string? Pupil = null,
    string? Credit = null,
    bool Free = false,
    bool Fingering = false,
    bool OneSystem = false,
    string? Paper = null
);

/// <summary>A hand-out that was made.</summary>
/// <param name="Id">To take it away while it is at hand.</param>
/// <param name="Svg">Its one page.</param>
public sealed record HandoutMade(string Id, string Svg);

/// <summary>Another whole setting of the same tune and brief.</summary>
/// <param name="Motif">Share of bars whose rhythm is another than in the setting that was there.</param>
/// <param name="Bass">The same of the basses.</param>
public sealed record OtherMade(SpotMade Made, double Motif, double Bass);

/// <summary>Two settings to be laid beside each other, by their ids.</summary>
public sealed record PairWanted(string First, string Second);

/// <summary>A player to be kept.</summary>
/// <param name="From">Number of the version that it was made from; of a new one it does not matter.</param>
public sealed record PlayerWanted(PlayerSaid Player, int From = 1);

/// <summary>A tune or a setting engraved, one SVG a page.</summary>
public sealed record TunePages(ValueList<string> Pages);

/// <summary>A tune to be kept by itself.</summary>
/// <param name="Tunes">Id of what was brought.</param>
/// <param name="Number">Of the tune in it, from 1.</param>
public sealed record TuneWanted(string Tunes, int Number);

/// <summary>A figure to be kept by itself.</summary>
/// <param name="Setting">Id of a setting that was made.</param>
/// <param name="Figure">Its name there.</param>
public sealed record FigureWanted(string Setting, string Figure);

/// <summary>A setting to be kept on the shelf.</summary>
/// <param name="Setting">Id of a setting that was made.</param>
/// <param name="Sitting">Letters and digits that the page chose for itself when it was loaded: what one sitting saves in
/// quick succession may be thinned out.</param>
public sealed record KeepWanted(string Setting, string? Sitting = null);

/// <summary>A setting to be kept as a new version of an arrangement.</summary>
/// <param name="From">Number of the version that it was made from.</param>
public sealed record SaveWanted(string Setting, int From, string? Sitting = null);

/// <summary>An arrangement or a tune of the shelf, put on the desk.</summary>
/// <param name="Wishes">Its brief, as far as it has words on the page; the rest stays with its tune.</param>
public sealed record Opened(ShelfItem Item, ShelfVersion Version, Brought Brought, BriefWishes Wishes);

/// <summary>A new title.</summary>
public sealed record TitleWanted(string Title);

/// <summary>Tags instead of those that were there.</summary>
public sealed record TagsWanted(IReadOnlyList<string> Tags);

/// <summary>A name for a version; null takes it away.</summary>
public sealed record NameWanted(string? Name);

/// <summary>An old version is to hold again.</summary>
/// <param name="From">Number of the version that holds now.</param>
public sealed record AgainWanted(int From);

/// <summary>A backup was put back.</summary>
/// <param name="Before">File of the data folder in which the shelf is kept as it was.</param>
public sealed record Restored(string Before);

/// <summary>How many were thrown away.</summary>
public sealed record Purged(int Count);

/// <summary>A take that stands on the shelf.</summary>
public sealed record TakeBegun(string Take);

/// <summary>What was played next in a take.</summary>
/// <param name="From">How many events were told before these.</param>
public sealed record TakePlayed(int From, IReadOnlyList<PlayedEvent> Events);

/// <summary>How many events of a take are kept. Fewer than were told: tell again from there.</summary>
public sealed record TakeTold(int Count);

/// <summary>One thing that is wrong.</summary>
/// <param name="Subject">The wish, or what was brought; empty where the request itself is meant.</param>
/// <param name="Place">Line or bar in words; empty where the whole is meant.</param>
public sealed record FaultPlace(string Subject, string Place, string Message);

/// <summary>Why something was not done (RFC 9457).</summary>
/// <param name="Title">The status in words.</param>
/// <param name="Detail">What is wrong and what to do.</param>
/// <param name="Problems">One by one, with their places.</param>
public sealed record Fault(string Type, string Title, int Status, string Detail, ValueList<FaultPlace> Problems);
