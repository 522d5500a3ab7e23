using System.Text;
using Stridewright.Arranging;
using Stridewright.Engraving;
using Stridewright.Formats.MusicXml;
using Stridewright.Hands;
using Stridewright.Music;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench.Tests;

/// <summary>
/// Stands for the musical parts: a "book" is text whose lines beginning with <c>T:</c> are tunes and whose lines
/// beginning with <c>!</c> are errors; outputs are the title and seed as text.
/// </summary>
internal sealed class FakeTools : ITools
{
    public List<string> Calls { get; } = [];

    public Func<Tune, Brief, ArrangeResult>? Arranging { get; init; }

    public Func<Score, Verdict> Judging { get; init; } = _ => new Verdict([], EffortOf(20));

    public string? EngravingFault { get; init; }

    public static Effort EffortOf(double overall)
    {
        var hand = new HandEffort
        {
            Value = overall,
            StrokesPerSecond = 3,
            KeysPerStroke = 1.5,
            MedianLeapBitsPerSecond = 3,
            StretchedShare = 0,
            SyncopatedShare = 0.1,
            LeapBitsPerSecond = 7,
            StrainedShare = 0,
            MeanStretch = 0.5,
        };
        return new Effort
        {
            Overall = overall,
            Bars = [],
            Right = hand,
            Left = hand,
        };
    }

    public static Score ScoreOf(string title, params string[] bars) =>
        new()
        {
            Title = title,
            Bars = bars.Select(number => new ScoreBar
                {
                    Number = number,
                    Implicit = number == "0",
                    Metre = Metre.TwoFour,
                    Key = default,
                    Length = Metre.TwoFour.BarLength,
                    Directions = [new Direction(default) { BeatsPerMinute = 96 }],
                })
                .ToValueList(),
        };

    public static ArrangeResult Done(Tune tune, Brief brief) =>
        new(
            new Arrangement
            {
                Score = ScoreOf($"{tune.Title} {brief.Seed}", "0", "1", "2", "3", "4"),
                Brief = brief,
                Feel = brief.Feel ?? Feel.Classic,
                Key = new Key(brief.Tonic ?? new Tone(-1), Mode.Major),
                BeatsPerMinute = 96,
                BeatUnit = new NoteValue(4),
                Seconds = 40,
                Verdict = new Verdict([], EffortOf(20)),
                Tune = new TuneKept(50, 50, 5, 1, 12),
            },
            null
        );

    public static ArrangeResult Refused(string message) =>
        new(null, new Diagnostic(Severity.Error, Place.AtBar("7"), message));

    public Reading<ValueList<Tune>> ReadAbc(Stream stream, string? part)
    {
        Calls.Add(part is null ? "abc" : "abc " + part);
        var lines = new StreamReader(stream).ReadToEnd().Split('\n');
        var tunes = lines.Where(l => l.StartsWith("T:", StringComparison.Ordinal)).Select(l => TuneOf(l[2..]));
        var errors = lines
            .Select((text, i) => (text, i))
            .Where(line => line.text.StartsWith('!'))
            .Select(line => new Diagnostic(Severity.Error, Place.AtLine(line.i + 1), line.text[1..]));
        return new Reading<ValueList<Tune>>(tunes.ToValueList(), errors.ToValueList());
    }

    public Reading<Tune> ReadMusicXmlTune(Stream stream, string? part)
    {
        Calls.Add(part is null ? "musicxml" : "musicxml " + part);
        return new Reading<Tune>(TuneOf("Sheet"), []);
    }

    public Reading<Tune> ReadMidiTune(Stream stream, string? part)
    {
        Calls.Add("midi");
        return new Reading<Tune>(TuneOf("Take"), []);
    }

    public Reading<Score> ReadMusicXmlScore(Stream stream)
    {
        Calls.Add("score");
        return new Reading<Score>(ScoreOf("Score", "1", "2"), []);
    }

    public Reading<Tune> ReadChords(string line, Feel feel, string title)
    {
        Calls.Add($"chords {line} {feel} {title}");
        return line.Contains('?', StringComparison.Ordinal)
            ? new Reading<Tune>(null, [new Diagnostic(Severity.Error, new Place(Column: 3), "no chord")])
            : new Reading<Tune>(TuneOf(title), []);
    }

    public bool TryReadSpan(string text, double octaveMm, out double mm, out string problem)
    {
        problem = "no span: " + text;
        return double.TryParse(text, out mm);
    }

    public bool TryReadOctaveWidth(string text, out double mm, out string problem)
    {
        problem = "no width: " + text;
        return double.TryParse(text, out mm);
    }

    public ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation)
    {
        Calls.Add("arrange " + tune.Title);
        return (Arranging ?? Done)(tune, brief);
    }

    public Verdict Judge(Score score, PlayerHands hands, double? quartersPerMinute)
    {
        Calls.Add(FormattableString.Invariant($"judge {hands.SpanMm} {quartersPerMinute}"));
        return Judging(score);
    }

    public FingeredScore Finger(
        Score score,
        PlayerHands hands,
        FingeringOptions options,
        CancellationToken cancellation
    )
    {
        Calls.Add(
            FormattableString.Invariant(
                $"finger {hands.SpanMm} {options.Density} {options.Keep} {options.QuartersPerMinute}"
            )
        );
        return new FingeredScore(score, [], []);
    }

    public FingersInPlace? FingersIn(byte[] file) => null;

    public byte[] ToMusicXml(Score score) => Encoding.UTF8.GetBytes("xml of " + score.Title);

    public byte[] ToMxl(byte[] musicXml) => [.. "mxl of "u8, .. musicXml];

    public byte[] ToMidi(Score score) => Encoding.UTF8.GetBytes("midi of " + score.Title);

    public ValueList<ArrangeResult> ArrangeSeveral(Tune tune, Brief brief, int count, CancellationToken cancellation) =>
        Enumerable.Range(0, count).Select(_ => Arrange(tune, brief, cancellation)).ToValueList();

    public ValueList<Diagnostic> GivenUp(
        Tune tune,
        Arrangement arrangement,
        ValueList<BarReasons> reasons,
        CancellationToken cancellation
    ) => [];

    public ValueList<BarReasons> Reasons(Arrangement arrangement) =>
        [new BarReasons(1, "1", [new FillReason(1, 2, null)]), new BarReasons(2, "2", [])];

    public Score WithNotes(Arrangement arrangement) =>
        arrangement.Score with
        {
            Title = arrangement.Score.Title + " with notes",
        };

    public Tune Plain(Tune tune) => tune with { Title = tune.Title + " plain" };

    public string ToAbc(Tune tune) => "T:" + tune.Title;

    public byte[] ToMusicXml(Tune tune) => Encoding.UTF8.GetBytes("sheet of " + tune.Title);

    public Performance Perform(Score score) =>
        new()
        {
            TicksPerQuarter = 480,
            Title = score.Title,
            Strokes = [],
            Tempi = [],
        };

    public bool FitsWav(Performance performance) => performance.Title != "endless";

    public IEnumerable<byte[]> ToWav(
        Performance performance,
        IProgress<double>? progress,
        CancellationToken cancellation
    ) => [Encoding.UTF8.GetBytes("sound of "), Encoding.UTF8.GetBytes(performance.Title)];

    public Reading<Performance> ReadTake(Stream stream) => throw new NotSupportedException();

    public byte[] WriteTake(Performance take) => throw new NotSupportedException();

    public Reading<ScoreNotes> ReadNotes(Stream stream) => throw new NotSupportedException();

    public Assessment Assess(Score score, PlayerHands hands, double? quartersPerMinute) =>
        new(Judge(score, hands, quartersPerMinute), "easy going")
        {
            Hardest = [],
            Comfortable = null,
            Right = new(null, null),
            Left = new(null, null),
            Change = null,
            Cautions = [],
        };

    public EngravedPages Draw(EffortChart chart, Paper paper) =>
        new(
            [
                [1],
            ],
            () => [2],
            _ => [3]
        );

    public ValueList<HardBar> HardestBars(Verdict verdict) => [new HardBar("3", verdict.Effort.Overall)];

    public Reading<EngravedPages> Engrave(byte[] musicXml, PageWish wish, CancellationToken cancellation)
    {
        Calls.Add("engrave");
        return EngravingFault is { } fault
            ? new(null, [new Diagnostic(Severity.Error, Place.Whole, fault)])
            : new(
                new EngravedPages(
                    ["<svg>1</svg>"u8.ToArray(), "<svg>2</svg>"u8.ToArray()],
                    () => Encoding.UTF8.GetBytes($"pdf of {Encoding.UTF8.GetString(musicXml)} on {wish.Paper}"),
                    page => Encoding.UTF8.GetBytes($"png {page}")
                ),
                []
            );
    }

    public EngravedPages Draw(StyleChart chart, Paper paper) =>
        new(
            ["<svg/>"u8.ToArray()],
            () => Encoding.UTF8.GetBytes($"pdf of {chart.Title} on {paper}"),
            page => Encoding.UTF8.GetBytes($"png of {chart.Title}")
        );

    public EngravedPages ToBook(string title, IEnumerable<BookletPart> parts, Paper paper) =>
        throw new NotSupportedException();

    public Reading<DrawnHandout> Draw(HandoutSheet sheet, Paper paper, CancellationToken cancellation) =>
        new(new DrawnHandout(null, 12, sheet.Parts.Select(p => new HandoutRoom(p.Name, 40)).ToValueList()), []);

    public Reading<EngravedPages> DrawSystem(HandoutMusic music, Paper paper, CancellationToken cancellation) =>
        Engrave(Encoding.UTF8.GetBytes(music.Scores[0].MusicXml), new PageWish(paper), cancellation);

    public byte[] ToBooklet(string title, IEnumerable<EngravedPages> scores, Paper paper) =>
        Encoding.UTF8.GetBytes($"booklet of {title}, {scores.Sum(s => s.Svg.Count)} pages on {paper}");

    public void Dispose() { }

    private static Tune TuneOf(string title) =>
        new()
        {
            Title = title,
            Bars =
            [
                new TuneBar
                {
                    Number = "1",
                    Metre = Metre.TwoFour,
                    Key = default,
                    Length = Metre.TwoFour.BarLength,
                },
            ],
        };
}
