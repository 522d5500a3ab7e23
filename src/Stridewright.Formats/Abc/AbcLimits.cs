using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>What the reader takes in at most; beyond it there is a message, so that a broken file costs little.</summary>
internal static class AbcLimits
{
    /// <summary>Bytes, and likewise characters: a large book of tunes has about one million.</summary>
    public const int Size = 16 * 1024 * 1024;

    public const int Tunes = 5000;

    /// <summary>Lines of the header of a book, which is read again for each tune.</summary>
    public const int HeaderLines = 100;

    /// <summary>Bars of one voice as written; the longest dances have some hundred.</summary>
    public const int Bars = 2000;

    /// <summary>Notes and rests of one bar; a bar of 64th notes in 12/8 has 96.</summary>
    public const int NotesPerBar = 256;

    /// <summary>Characters of a field beyond which no more lines are joined to it.</summary>
    public const int FieldLength = 10000;

    public const int Voices = 32;
    public const int Graces = 64;
    public const int Verses = 20;

    /// <summary>The highest number of a verse.</summary>
    public const int VerseNumber = 99;

    public const int Findings = 1000;

    /// <summary>Sections in an order written out.</summary>
    public const int Sections = 1000;

    /// <summary>The highest number of an ending, and the most often a part is repeated.</summary>
    public const int Times = 32;

    /// <summary>Longest note or rest, in whole notes.</summary>
    public static readonly ScoreTime Note = new(64, 1);

    /// <summary>Largest number of a length, above and below the stroke.</summary>
    public const int Length = 1 << 20;

    /// <summary>Characters of a part's name.</summary>
    public const int PartName = 200;
}
