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
    public const int Graces = 16;
    public const int Verses = 20;
    public const int Findings = 1000;

    /// <summary>Sections in an order written out.</summary>
    public const int Sections = 1000;

    /// <summary>The highest number of an ending, and the most often a part is repeated.</summary>
    public const int Times = 16;

    /// <summary>Longest note or rest, in whole notes.</summary>
    public static readonly ScoreTime Note = new(16, 1);

    /// <summary>All lengths are multiples of this: 512th notes and all tuplets up to nine. It keeps sums exact.</summary>
    public static readonly ScoreTime Grid = new(1, 512 * 9 * 5 * 7);
}
