using Stridewright.Music;

namespace Stridewright.Engraving;

/// <summary>What stands on a hand-out: a head, parts one below the other, a foot.</summary>
/// <param name="Title">In the head; empty: none.</param>
/// <param name="Subtitle">Below it, such as which bars; empty: none.</param>
/// <param name="Parts">From the top.</param>
public sealed record HandoutSheet(string Title, string Subtitle, ValueList<HandoutPart> Parts)
{
    /// <summary>Who wrote the tune; empty: nobody is named.</summary>
    public string Composer { get; init; } = "";

    /// <summary>Whose page it is; empty: a line to write the name on; null: nobody's.</summary>
    public string? Pupil { get; init; }

    /// <summary>Lines at the foot: the credit, and what the law asks for.</summary>
    public ValueList<string> Foot { get; init; } = [];
}

/// <summary>A part of a hand-out.</summary>
/// <param name="Name">What it is called where it has to be left out.</param>
/// <param name="Heading">Above it; empty: none.</param>
public abstract record HandoutPart(string Name, string Heading);

/// <summary>Some bars of music in MusicXML of our own writer; of several scores with the same bars each stands below the other with its name
/// beside it, bar under bar.</summary>
public sealed record HandoutMusic(string Name, string Heading, ValueList<NamedXml> Scores) : HandoutPart(Name, Heading);

/// <summary>A score under a name.</summary>
/// <param name="Label">Beside its staves, where there are several scores.</param>
public sealed record NamedXml(string Label, string MusicXml);

/// <summary>Lines of words, each broken where it must be.</summary>
public sealed record HandoutWords(string Name, string Heading, ValueList<string> Lines) : HandoutPart(Name, Heading);

/// <summary>Empty systems of two staves to write on.</summary>
public sealed record HandoutStaves(string Name, string Heading, int Systems) : HandoutPart(Name, Heading);

/// <summary>Still drawings of a keyboard, all of the same stretch; short ones stand two in a row.</summary>
/// <param name="Key">What the marks mean, below them.</param>
public sealed record HandoutKeyboards(string Name, string Heading, ValueList<KeyboardDrawing> Drawings, string Key)
    : HandoutPart(Name, Heading);

/// <summary>A stretch of a keyboard with keys marked on it. Lengths are in millimetres.</summary>
/// <param name="Caption">Below it.</param>
/// <param name="WhiteWidth">Width of a white key.</param>
/// <param name="BlackWidth">Width of a black key.</param>
/// <param name="Keys">From left to right; it begins and ends with a white key.</param>
public sealed record KeyboardDrawing(string Caption, double WhiteWidth, double BlackWidth, ValueList<DrawnKey> Keys)
{
    /// <summary>How many octaves it shows.</summary>
    public int Octaves => Keys.Count(k => !k.IsBlack) / 7;
}

/// <summary>A key.</summary>
/// <param name="Centre">From a fixed origin.</param>
/// <param name="Name">Under it, such as <c>C4</c>; empty: none.</param>
public sealed record DrawnKey(double Centre, bool IsBlack, string Name)
{
    /// <summary>What marks it, the first stroke lowest: the hand by the shape, the finger inside.</summary>
    public ValueList<KeyMark> Marks { get; init; } = [];
}

/// <summary>A mark on a key: the right hand's are round, the left hand's square.</summary>
/// <param name="Finger">1 to 5; null: none is said.</param>
/// <param name="IsFirst">It is struck before the others of its hand: solid, where those are hollow.</param>
public sealed record KeyMark(Hand Hand, int? Finger, bool IsFirst);

/// <summary>A hand-out on its page, or why there is none.</summary>
/// <param name="Page">One page; null: it does not fit.</param>
/// <param name="Over">By how much it is too high in the smallest print, in millimetres.</param>
/// <param name="Rooms">The height of each part in that print, in millimetres, in their order.</param>
public sealed record HandoutDrawn(EngravedScore? Page, double Over, ValueList<HandoutRoom> Rooms);

/// <summary>The room that a part takes.</summary>
public sealed record HandoutRoom(string Name, double Height);
