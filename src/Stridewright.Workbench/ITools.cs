using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>What the use cases ask of the other projects: the one seam between files and music.</summary>
internal interface ITools : IDisposable
{
    /// <param name="part">The voice that has the tune; null for the likeliest.</param>
    Reading<ValueList<Tune>> ReadAbc(Stream stream, string? part);

    /// <summary>A tune from MusicXML, plain or in its container.</summary>
    /// <param name="part">The part that has the tune; null for the likeliest.</param>
    Reading<Tune> ReadMusicXmlTune(Stream stream, string? part);

    /// <summary>A line of chords as a tune without notes, in its key and in the metre of the feel.</summary>
    Reading<Tune> ReadChords(string line, Feel feel, string title);

    /// <summary>A tune from a Standard MIDI File.</summary>
    /// <param name="part">Name or number of the part that has it; null: it is found.</param>
    Reading<Tune> ReadMidiTune(Stream stream, string? part);

    /// <summary>What was played, from a Standard MIDI File: all its tracks together.</summary>
    Reading<Performance> ReadTake(Stream stream);

    /// <summary>A take as a Standard MIDI File.</summary>
    byte[] WriteTake(Performance take);

    /// <summary>A piano score from MusicXML, plain or in its container.</summary>
    Reading<Score> ReadMusicXmlScore(Stream stream);

    /// <summary>The notes of any piano score in MusicXML, plain or in its container.</summary>
    Reading<ScoreNotes> ReadNotes(Stream stream);

    /// <summary>Reads a span such as <c>205</c>, <c>8.1in</c> or <c>ninth</c>, within the spans of hands.</summary>
    bool TryReadSpan(string text, double octaveMm, out double mm, out string problem);

    /// <summary>Reads the width of an octave such as <c>165.1</c> or <c>6.5in</c>, within those of keyboards.</summary>
    bool TryReadOctaveWidth(string text, out double mm, out string problem);

    ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation);

    /// <summary>Several settings of a tune, the usual one first, each unlike those before it.</summary>
    ValueList<ArrangeResult> ArrangeSeveral(Tune tune, Brief brief, int count, CancellationToken cancellation);

    /// <summary>Why each bar of an arrangement is as it is.</summary>
    ValueList<BarReasons> Reasons(Arrangement arrangement);

    /// <summary>What an arrangement gave up for the player's hands, with its bars.</summary>
    ValueList<Diagnostic> GivenUp(
        Tune tune,
        Arrangement arrangement,
        ValueList<BarReasons> reasons,
        CancellationToken cancellation
    );

    /// <summary>The score of an arrangement with its most telling reasons as numbered notes.</summary>
    Score WithNotes(Arrangement arrangement);

    /// <summary>The tune back on the beat, as it stands before it is ragged.</summary>
    Tune Plain(Tune tune);

    Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute);

    /// <summary>A score file whose fingers can be put where they stand; null when that cannot be.</summary>
    FingersInPlace? FingersIn(byte[] file);

    FingeredScore Finger(Score score, PlayerHands hands, FingeringOptions options, CancellationToken cancellation);

    /// <summary>Judges, and asks what would change the verdict.</summary>
    Assessment Assess(Score score, PlayerHands hands, double? quartersPerMinute);

    /// <summary>Up to three bars that ask most, hardest first.</summary>
    ValueList<HardBar> HardestBars(Verdict verdict);

    byte[] ToMusicXml(Score score);

    /// <summary>Puts the MusicXML of <see cref="ToMusicXml(Score)"/> into its compressed container.</summary>
    byte[] ToMxl(byte[] musicXml);

    byte[] ToMidi(Score score);

    /// <summary>The score as it is heard, which is what <see cref="ToMidi(Score)"/> writes.</summary>
    Performance Perform(Score score);

    /// <summary>True where a performance is short enough for a WAV file.</summary>
    bool FitsWav(Performance performance);

    /// <summary>A performance on the recorded piano as a WAV file, made block by block.</summary>
    /// <param name="progress">Told the share that is done, from 0 to 1.</param>
    IEnumerable<byte[]> ToWav(Performance performance, IProgress<double>? progress, CancellationToken cancellation);

    /// <summary>The tune in ABC, to be read back as the same tune.</summary>
    string ToAbc(Tune tune);

    /// <summary>A lead sheet.</summary>
    byte[] ToMusicXml(Tune tune);

    /// <summary>Lays the MusicXML of <c>ToMusicXml</c> out on pages.</summary>
    Reading<EngravedPages> Engrave(byte[] musicXml, PageWish wish, CancellationToken cancellation);

    /// <summary>Draws a chart on pages.</summary>
    EngravedPages Draw(StyleChart chart, Paper paper);

    /// <summary>Draws the effort along a piece on pages.</summary>
    EngravedPages Draw(EffortChart chart, Paper paper);

    /// <summary>Text and music on the pages of one booklet.</summary>
    EngravedPages ToBook(string title, IEnumerable<BookletPart> parts, Paper paper);

    /// <summary>Draws a hand-out on one page.</summary>
    Reading<DrawnHandout> Draw(HandoutSheet sheet, Paper paper, CancellationToken cancellation);

    /// <summary>Draws music in one system on a picture of its own size.</summary>
    Reading<EngravedPages> DrawSystem(HandoutMusic music, Paper paper, CancellationToken cancellation);

    /// <summary>One PDF of the pages of several engraved scores.</summary>
    byte[] ToBooklet(string title, IEnumerable<EngravedPages> scores, Paper paper);
}

/// <summary>What is wanted of a score's pages.</summary>
internal sealed record PageWish(Paper Paper)
{
    /// <summary>In the largest print that still fits one page, if there is one.</summary>
    public bool OnOnePage { get; init; }

    /// <summary>About a third larger than usual.</summary>
    public bool LargePrint { get; init; }

    /// <summary>One page, only as high as its music, to be set among text.</summary>
    public bool Strip { get; init; }

    /// <summary>Width of a screen in millimetres of print of the usual size, for pages that are as high as their music and
    /// bear nothing else; null: paper.</summary>
    public double? ScreenWidth { get; init; }

    /// <summary>On one picture that is as high as the music.</summary>
    public bool Cut { get; init; }

    /// <summary>Someone waits for it: a last bar or line may stand alone, and pages end where they are full.</summary>
    public bool Once { get; init; }

    /// <summary>Ids of bars after which a page may turn; empty: it does not matter.</summary>
    public ValueList<string> Turns { get; init; } = [];

    /// <summary>No page more is taken for the sake of such a turn than makes so many; null: any number.</summary>
    public int? MostPages { get; init; }
}

/// <summary>An engraved score.</summary>
/// <param name="Svg">One picture a page.</param>
/// <param name="Pdf">Draws the pages as one PDF.</param>
/// <param name="Png">Draws one page, counted from 0, as a picture.</param>
internal sealed record EngravedPages(IReadOnlyList<byte[]> Svg, Func<byte[]> Pdf, Func<int, byte[]> Png)
{
    /// <summary>Ids of the bars after which a page is turned.</summary>
    public ValueList<string> PageEnds { get; init; } = [];
}

/// <summary>A hand-out that was drawn.</summary>
/// <param name="Pages">One page; null: it does not fit.</param>
/// <param name="Over">By how many millimetres.</param>
/// <param name="Rooms">What each part takes.</param>
internal sealed record DrawnHandout(EngravedPages? Pages, double Over, ValueList<HandoutRoom> Rooms);
