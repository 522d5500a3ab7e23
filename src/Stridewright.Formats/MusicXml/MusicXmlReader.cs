using Stridewright.Music;

namespace Stridewright.Formats.MusicXml;

/// <summary>
/// Reads MusicXML (up to 4.0, part-wise or time-wise), plain or compressed. Nothing outside the stream is opened; what a
/// file may ask for is bounded, and whatever is wrong with it becomes a finding with its place, never an exception.
/// Faults of the stream itself (<see cref="IOException"/>) pass through.
/// </summary>
public static class MusicXmlReader
{
    /// <summary>
    /// Reads the tune at sounding pitch with its chord symbols, wherever in the file they stand. Of several parts it is
    /// the one that is called like a tune (voice, melody, lead …), else the first with words, else the first with chord
    /// symbols, else the first with notes, percussion aside; there, on the top staff, the voice with words, else the
    /// upper one; of notes struck together the top one. Null, with an error among the findings, when there is neither
    /// note nor chord symbol, or no such part.
    /// </summary>
    /// <param name="part">Another choice: <c>PART</c>, <c>PART:VOICE</c> or <c>:VOICE</c>, where PART is a part's name,
    /// abbreviation, id or number from 1, and VOICE the text of the <c>voice</c> element of its notes.</param>
    public static Reading<Tune> ReadTune(Stream source, string? part = null) =>
        Read(source, (file, findings) => new TuneBuilder(file, part, findings).Build());

    /// <summary>Reads a piano score on two staves (or in two parts of one staff each). Null, with an error among the
    /// findings, when there are not two staves.</summary>
    public static Reading<Score> ReadScore(Stream source) =>
        Read(source, (file, findings) => new ScoreBuilder(file, findings).Build());

    /// <summary>Reads the notes of any piano score and the order of its bars, without asking that it fit two staves and
    /// whole bars: those of the first part on two staves, else of all parts. Null, with an error among the findings, when
    /// nothing in it sounds.</summary>
    public static Reading<ScoreNotes> ReadNotes(Stream source)
    {
        var reading = Read(source, (file, findings) => new NotesBuilder(file, findings).Build());
        // Here jumps are followed.
        return reading.Value?.Bars.Any(b => b.Routes != Routes.None) == true
            ? reading with
            {
                Diagnostics = reading.Diagnostics.Where(d => !MusicXmlMessages.IsJump(d.Message)).ToValueList(),
            }
            : reading;
    }

    private static Reading<T> Read<T>(Stream source, Func<ScoreFile, Findings, T?> build)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(source);
        var findings = new Findings();
        var value = Open(source, findings) is { } root ? build(ScoreFile.Of(root), findings) : null;
        return new Reading<T>(value, findings.ToValueList());
    }

    private static Element? Open(Stream source, Findings findings)
    {
        if (Bytes(source) is not { } bytes)
        {
            findings.Fail(Place.Whole, MusicXmlMessages.TooLarge);
            return null;
        }
        if (MxlContainer.IsZip(bytes))
        {
            if (MxlContainer.Extract(bytes, findings) is not { } score)
            {
                return null;
            }
            bytes = score;
        }
        if (bytes.Length == 0)
        {
            findings.Fail(Place.Whole, MusicXmlMessages.Empty);
            return null;
        }
        return XmlLoader.Load(bytes, RefuseRoot, findings);
    }

    private static string? RefuseRoot(string root) =>
        root is "score-partwise" or "score-timewise" ? null : MusicXmlMessages.WrongRoot(Element.Clean(root) ?? "");

    private static byte[]? Bytes(Stream source)
    {
        using var kept = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int count;
        while ((count = source.Read(buffer)) > 0)
        {
            kept.Write(buffer, 0, count);
            if (kept.Length > MusicXmlLimits.Bytes)
            {
                return null;
            }
        }
        return kept.ToArray();
    }
}
