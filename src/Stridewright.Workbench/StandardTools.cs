using System.Text;
using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.Abc;
using Stridewright.Formats.ChordLines;
using Stridewright.Formats.Midi;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Sound;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>
/// The project's own readers, arranger, judge and writers. The engraver takes about a second to load: it is opened
/// when the first page is asked for and serves the whole run.
/// </summary>
internal sealed class StandardTools : ITools
{
    private const int HardBars = 3,
        MicrosecondsAtFirst = 500_000;

    // Staff heights in millimetres, down to the smallest that is read at a piano without trouble (common practice: 5 mm is
    // small print).
    private static readonly double[] SmallerPrint = [6, 5.5, 5];

    // The largest that the engraver sets: 1.36 times the usual.
    private const double LargePrint = 9;

    // A screen has a frame of its own.
    private const double NarrowestMargin = 5;

    // Room that a strip among text leaves above and below.
    private const double StripMargin = 1;
    private Engraver? _engraver;

    public Reading<ValueList<Tune>> ReadAbc(Stream stream, string? part)
    {
        var text = AbcReader.Decode(stream);
        if (text.Value is not { } source)
        {
            return new(null, text.Diagnostics);
        }
        var book = AbcReader.Read(new StringReader(source), part);
        return book with { Diagnostics = [.. text.Diagnostics, .. book.Diagnostics] };
    }

    public Reading<Tune> ReadMusicXmlTune(Stream stream, string? part) => MusicXmlReader.ReadTune(stream, part);

    public Reading<Tune> ReadChords(string line, Feel feel, string title)
    {
        var reading = ChordLineReader.Read(line, Feels.UsualMetre(feel), title);
        return reading with { Value = reading.Value is { } tune ? ChordKey.Settle(tune) : null };
    }

    public Reading<Tune> ReadMidiTune(Stream stream, string? part) => MidiTuneReader.Read(stream, part);

    public Reading<Performance> ReadTake(Stream stream)
    {
        var reading = MidiReader.Read(stream);
        if (reading.Value is not { } file)
        {
            return new(null, reading.Diagnostics);
        }
        var strokes = file
            .Tracks.SelectMany(t => t.Strokes)
            .Select(s => new KeyStroke(s.Tick, Math.Max(1, s.Length), s.Key, s.Velocity, Hand.Right))
            .OrderBy(s => s.Tick)
            .ThenBy(s => s.Key);
        var tempi = file.Tracks.SelectMany(t => t.Tempi).OrderBy(t => t.Tick).ToList();
        if (tempi is not [{ Tick: 0 }, ..])
        {
            tempi.Insert(0, new TempoChange(0, MicrosecondsAtFirst)); // Standard MIDI Files 1.0: 120 to the minute
        }
        var played = new Performance
        {
            TicksPerQuarter = file.TicksPerQuarter,
            Strokes = strokes.ToValueList(),
            Pedal = OnePedal(file).ToValueList(),
            Tempi = tempi.ToValueList(),
            EndTick = file.Tracks.Max(t => t.EndTick),
        };
        return new(played, reading.Diagnostics);
    }

    // The pedal is down while any track holds it; what is let up and pressed again at once is told in that order.
    private static IEnumerable<PedalChange> OnePedal(MidiContents file)
    {
        var holding = new HashSet<int>();
        var changes = file
            .Tracks.SelectMany(t => t.Pedal.Select(p => (Track: t.Number, Change: p)))
            .OrderBy(c => c.Change.Tick)
            .ThenBy(c => c.Change.Down);
        foreach (var (track, change) in changes)
        {
            var wasDown = holding.Count > 0;
            _ = change.Down ? holding.Add(track) : holding.Remove(track);
            if (wasDown != holding.Count > 0)
            {
                yield return change;
            }
        }
    }

    /// <summary>A take as a Standard MIDI File.</summary>
    public byte[] WriteTake(Performance take)
    {
        using var stream = new MemoryStream();
        MidiWriter.Write(take, stream);
        return stream.ToArray();
    }

    public FingersInPlace? FingersIn(byte[] file) => FingersInPlace.Of(file);

    public Reading<Score> ReadMusicXmlScore(Stream stream) => MusicXmlReader.ReadScore(stream);

    public Reading<ScoreNotes> ReadNotes(Stream stream) => MusicXmlReader.ReadNotes(stream);

    public bool TryReadSpan(string text, double octaveMm, out double mm, out string problem) =>
        SpanText.TryRead(text, octaveMm, out mm, out problem);

    public bool TryReadOctaveWidth(string text, out double mm, out string problem) =>
        OctaveWidthText.TryRead(text, out mm, out problem);

    public ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation) =>
        Arranger.Arrange(tune, brief, cancellation);

    public ValueList<ArrangeResult> ArrangeSeveral(Tune tune, Brief brief, int count, CancellationToken cancellation) =>
        SeveralSettings.Of(tune, brief, count, cancellation);

    public ValueList<BarReasons> Reasons(Arrangement arrangement) => Arranging.Reasons.Of(arrangement);

    public ValueList<Diagnostic> GivenUp(
        Tune tune,
        Arrangement arrangement,
        ValueList<BarReasons> reasons,
        CancellationToken cancellation
    ) => Concessions.ForHands(tune, arrangement, reasons, cancellation);

    public Score WithNotes(Arrangement arrangement) => NumberedNotes.Under(arrangement);

    public Tune Plain(Tune tune) => Arranger.Plain(tune).Tune;

    public Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute) =>
        Hands.Judge.Check(score, hands, quartersPerMinute);

    public FingeredScore Finger(
        Score score,
        PlayerHands hands,
        FingeringOptions options,
        CancellationToken cancellation
    ) => Fingerer.Finger(score, hands, options, cancellation);

    public Assessment Assess(Score score, PlayerHands hands, double? quartersPerMinute) =>
        Hands.Assess.Of(score, hands, quartersPerMinute);

    public ValueList<HardBar> HardestBars(Verdict verdict) =>
        verdict.HardestBars(HardBars).Select(bar => new HardBar(bar.Number, bar.Value)).ToValueList();

    public byte[] ToMusicXml(Score score) => Bytes(stream => MusicXmlWriter.Write(score, stream));

    public byte[] ToMxl(byte[] musicXml) => Bytes(stream => MxlWriter.Write(musicXml, stream));

    public byte[] ToMidi(Score score) => Bytes(stream => MidiWriter.Write(Perform(score), stream));

    public Performance Perform(Score score) => Performer.Perform(score);

    public bool FitsWav(Performance performance) => Wav.Fits(performance);

    public IEnumerable<byte[]> ToWav(
        Performance performance,
        IProgress<double>? progress,
        CancellationToken cancellation
    ) => Wav.Blocks(performance, new RecordedPiano(PianoFiles.Open), progress, cancellation);

    public string ToAbc(Tune tune) => AbcWriter.Write(tune);

    public byte[] ToMusicXml(Tune tune) => Bytes(stream => MusicXmlWriter.Write(tune, stream));

    public Reading<EngravedPages> Engrave(byte[] musicXml, PageWish wish, CancellationToken cancellation)
    {
        if (!Engraver.IsSupported)
        {
            return new(null, [new(Severity.Error, Place.Whole, Engraver.UnsupportedMessage)]);
        }
        _engraver ??= Engraver.Create();
        var setup = Setup(wish.Paper) with
        {
            Turns = wish.Turns,
            MostPages = wish.MostPages,
            Cut = wish.Cut,
            Once = wish.Once,
        };
        setup = wish.Strip ? setup with { Cut = true, Named = false, Header = false, EndMargin = StripMargin } : setup;
        setup = wish.LargePrint ? setup with { StaffHeight = LargePrint } : setup;
        if (wish.ScreenWidth is { } width)
        {
            setup = setup with
            {
                ScreenWidth = width,
                Named = false,
                Header = false,
                SideMargin = NarrowestMargin,
                EndMargin = NarrowestMargin,
            };
        }
        var engraved = Engrave(_engraver, musicXml, setup, cancellation);
        foreach (var height in wish.OnOnePage ? SmallerPrint : [])
        {
            if (engraved.Value is { Pages.Count: > 1 })
            {
                var smaller = Engrave(_engraver, musicXml, setup with { StaffHeight = height }, cancellation);
                engraved = smaller.Value is { Pages.Count: 1 } ? smaller : engraved;
            }
        }
        return new(engraved.Value is { } score ? Pages(score) : null, engraved.Diagnostics);
    }

    public EngravedPages Draw(StyleChart chart, Paper paper) => Pages(ChartPages.Draw(chart, Setup(paper)));

    public EngravedPages Draw(EffortChart chart, Paper paper) => Pages(EffortPages.Draw(chart, Setup(paper)));

    public Reading<DrawnHandout> Draw(HandoutSheet sheet, Paper paper, CancellationToken cancellation)
    {
        if (!Engraver.IsSupported)
        {
            return new(null, [new(Severity.Error, Place.Whole, Engraver.UnsupportedMessage)]);
        }
        _engraver ??= Engraver.Create();
        var drawing = Handout.Draw(_engraver, sheet, Setup(paper), cancellation);
        return new(
            drawing.Value is { } drawn
                ? new DrawnHandout(drawn.Page is { } page ? Pages(page) : null, drawn.Over, drawn.Rooms)
                : null,
            drawing.Diagnostics
        );
    }

    public Reading<EngravedPages> DrawSystem(HandoutMusic music, Paper paper, CancellationToken cancellation)
    {
        if (!Engraver.IsSupported)
        {
            return new(null, [new(Severity.Error, Place.Whole, Engraver.UnsupportedMessage)]);
        }
        _engraver ??= Engraver.Create();
        var drawing = Handout.OneSystem(_engraver, music, Setup(paper), cancellation);
        return new(drawing.Value is { } score ? Pages(score) : null, drawing.Diagnostics);
    }

    private static EngravedPages Pages(EngravedScore score)
    {
        var pages = new PackedPages(score.Pages);
        // Nothing else of the score is held on to.
        var rest = score with
        {
            Pages = [],
            TimeMap = [],
        };
        EngravedScore With(IEnumerable<byte[]> some) =>
            rest with
            {
                Pages = some.Select(Encoding.UTF8.GetString).ToValueList(),
            };
        return new(
            pages,
            () => Bytes(s => PdfWriter.Write(With(pages), s)),
            page => Bytes(s => PngWriter.Write(With([pages[page]]), 1, s))
        )
        {
            PageEnds = score.PageEnds,
        };
    }

    public EngravedPages ToBook(string title, IEnumerable<BookletPart> parts, Paper paper) =>
        Pages(BookletLayout.LayOut(title, parts, Setup(paper)));

    public byte[] ToBooklet(string title, IEnumerable<EngravedPages> scores, Paper paper)
    {
        var pages = scores.SelectMany(s => s.Svg).Select(Encoding.UTF8.GetString).ToValueList();
        return Bytes(stream => PdfWriter.Write(new EngravedScore(Setup(paper), title, pages, []), stream));
    }

    private static Reading<EngravedScore> Engrave(
        Engraver engraver,
        byte[] musicXml,
        PageSetup setup,
        CancellationToken cancellation
    )
    {
        using var source = new MemoryStream(musicXml);
        return engraver.Engrave(source, setup, cancellation);
    }

    private static PageSetup Setup(Paper paper) =>
        PageSetup.Default with
        {
            Paper = paper == Paper.A4 ? Engraving.Paper.A4 : Engraving.Paper.Letter,
        };

    public void Dispose() => _engraver?.Dispose();

    private static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
