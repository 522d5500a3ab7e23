using Stridewright.Music;

namespace Stridewright.Formats.Abc;

/// <summary>A cursor over one line of music, with the small things that are read in several places.</summary>
internal sealed class AbcScanner(AbcLine line, AbcFindings findings)
{
    // Accidentals before one letter, of which the standard has two; also keeps a long run of them from being read over
    // and over.
    private const int MaxMarks = 4;

    private readonly string _text = line.Text;

    public int At { get; set; }

    public bool AtEnd => At >= _text.Length;

    public char Now => At < _text.Length ? _text[At] : '\0';

    public char Next => At + 1 < _text.Length ? _text[At + 1] : '\0';

    public AbcSpot Spot => new(line.Number, At + 1);

    public string Since(int start) => _text[start..At];

    public void SkipSpaces()
    {
        while (Now is ' ' or '\t')
        {
            At++;
        }
    }

    /// <summary>Place of a character at or after the cursor; -1 when there is none.</summary>
    public int Find(char wanted, int from) => from < _text.Length ? _text.IndexOf(wanted, from) : -1;

    public string Slice(int start, int end) => _text[start..end];

    /// <summary>Digits at the cursor; null when there are none, <paramref name="tooLarge"/> when the number is.</summary>
    public int? Number(int most, out bool tooLarge)
    {
        var start = At;
        while (char.IsAsciiDigit(Now))
        {
            At++;
        }
        tooLarge = At > start && !AbcFields.TryNumber(Since(start), most, out _);
        return At == start || tooLarge
            ? null
            : int.Parse(Since(start), System.Globalization.CultureInfo.InvariantCulture);
    }

    /// <summary>A length after a note, in unit lengths: <c>3</c>, <c>/2</c>, <c>//</c>, <c>3/2</c>, or nothing for 1.</summary>
    public ScoreTime Length(ScoreTime unit, AbcBar? bar)
    {
        const int most = AbcLimits.Length;
        var spot = Spot;
        var above = Number(most, out var bad) ?? 1;
        var below = 1L;
        while (Now == '/')
        {
            At++;
            var divisor = Number(most, out var tooLarge) ?? 2;
            bad |= tooLarge;
            below = Math.Min(below * divisor, most + 1);
        }
        if (bad || below > most)
        {
            findings.Warn(spot, AbcMessages.BadLength, bar);
            return ScoreTime.Whole;
        }
        var length = new ScoreTime(above, below);
        if (unit * length > AbcLimits.Note)
        {
            findings.Warn(spot, AbcMessages.TooLongNote(AbcLimits.Note.ToString()), bar);
            return ScoreTime.Whole;
        }
        return length;
    }

    /// <summary>A note's letter with accidentals and octave marks; null, with the cursor unmoved, when there is none.</summary>
    public (Step Step, int Octave, int? Accidental)? Letter(AbcBar? bar)
    {
        var start = At;
        int? accidental = null;
        while (Now is '^' or '_' or '=' && At - start < MaxMarks)
        {
            accidental = Math.Clamp(
                (accidental ?? 0)
                    + (
                        Now == '^' ? 1
                        : Now == '_' ? -1
                        : 0
                    ),
                -MaxMarks,
                MaxMarks
            );
            At++;
        }
        if (accidental is not null && (Now == '/' || char.IsAsciiDigit(Now)))
        {
            findings.Once(Severity.Warning, Spot, AbcMessages.MicroTone, bar);
            Length(default, bar);
            accidental = null;
        }
        var letter = "CDEFGABcdefgab".IndexOf(Now, StringComparison.Ordinal);
        if (letter < 0 || AtEnd)
        {
            At = start;
            return null;
        }
        At++;
        var octave = letter < 7 ? 4 : 5;
        while (Now is ',' or '\'')
        {
            octave = Math.Clamp(octave + (Now == '\'' ? 1 : -1), -9, 19);
            At++;
        }
        return ((Step)(letter % 7), octave, accidental);
    }
}
