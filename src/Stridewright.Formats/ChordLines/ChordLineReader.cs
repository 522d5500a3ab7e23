using Stridewright.Music;

namespace Stridewright.Formats.ChordLines;

/// <summary>
/// Reads a line of chords such as <c>|: F | D7 . G7 C7 :| % | Bb/D |</c>. Bars stand between <c>|</c>; <c>||</c> is a
/// double bar line, <c>|:</c> and <c>:|</c> are a repeat, <c>%</c> or a bar left empty is the bar before once more.
/// Chords are parted by spaces and share their bar: two take half each (in 3/4 two beats and one); three a half and two
/// quarters (in 3/4 a beat each; in 6/8 half a bar, a quarter and an eighth); four, where the left hand strikes four
/// times, one stroke each. A <c>.</c> takes a share and holds the chord before it. <c>N.C.</c> is no chord.
/// </summary>
public static class ChordLineReader
{
    /// <summary>Longer lines are something else.</summary>
    public const int MostCharacters = 20_000;

    /// <summary>More bars than any piece of this music has.</summary>
    public const int MostBars = 1000;

    /// <summary>
    /// The line as a tune without notes, in C major for want of better knowledge. A line with a fault is not read: every
    /// fault is told with its column (and its line, where there are several).
    /// </summary>
    /// <param name="metre">2/4, 4/4, 3/4 or 6/8.</param>
    /// <exception cref="ArgumentException">Another metre.</exception>
    public static Reading<Tune> Read(string line, Metre metre, string title)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(title);
        var shares =
            ChordShares.Of(metre) ?? throw new ArgumentException($"no chord line is read in {metre}", nameof(metre));
        return line.Length > MostCharacters
            ? new(null, [new(Severity.Error, Place.Whole, ChordLineMessages.TooLong(MostCharacters))])
            : new LineReader(line, metre, shares, title).Read();
    }

    private sealed class LineReader(string line, Metre metre, ChordShares shares, string title)
    {
        private const int MostFaults = 20;
        private readonly List<Diagnostic> _faults = [];
        private readonly List<TuneBar> _bars = [];
        private readonly List<(string Text, int At)> _words = []; // of the bar being read
        private ChordSymbol? _sounding;
        private string _sign = ""; // the bar line last read
        private int? _repeat; // where an open repeat begins in the text
        private bool _starts; // the next bar begins a repeat

        public Reading<Tune> Read()
        {
            for (var at = 0; at < line.Length; )
            {
                var end = at + 1;
                if (IsSign(line[at]))
                {
                    for (; end < line.Length && IsSign(line[end]); end++) { }
                    BarLine(line[at..end], at);
                }
                else if (!char.IsWhiteSpace(line[at]))
                {
                    for (; end < line.Length && !IsSign(line[end]) && !char.IsWhiteSpace(line[end]); end++) { }
                    _words.Add((line[at..end], at));
                }
                at = end;
            }
            CloseBar();
            if (_repeat is { } open)
            {
                Fault(open, ChordLineMessages.NotClosed);
            }
            if (_faults.Count == 0 && !_bars.Any(b => b.Chords.Any(c => !c.Chord.IsNoChord)))
            {
                Fault(null, ChordLineMessages.NoChords);
            }
            return _faults.Count > 0 ? new(null, _faults.Take(MostFaults).ToValueList()) : new(Tune(), []);
        }

        private static bool IsSign(char c) => c is '|' or ':' or ']';

        private void BarLine(string sign, int at)
        {
            if (sign is not ("|" or "||" or "|]" or "|:" or "||:" or ":|" or ":||" or ":|]" or ":|:" or ":||:" or "::"))
            {
                Fault(at, ChordLineMessages.NoSign(sign));
                sign = "|";
            }
            if (_words.Count == 0 && sign == "|" && _sign == "|" && _bars.Count > 0)
            {
                _words.Add(("%", at));
            }
            CloseBar();
            if (sign[0] == ':')
            {
                EndRepeat(at);
            }
            else if (sign.Length > 1 && sign[1] != ':' && _bars.Count > 0)
            {
                Mark(_bars[^1].Marks with { DoubleBarAfter = true });
            }
            if (sign.Length > 1 && sign[^1] == ':')
            {
                if (_repeat is not null)
                {
                    Fault(at, ChordLineMessages.WithinRepeat);
                }
                (_repeat, _starts) = (at, true);
            }
            _sign = sign;
        }

        private void EndRepeat(int at)
        {
            if (_bars.Count == 0 || _starts)
            {
                Fault(at, ChordLineMessages.NothingToGoBackTo);
            }
            else
            {
                Mark(_bars[^1].Marks with { RepeatEnd = 2 });
            }
            (_repeat, _starts) = (null, false);
        }

        private void Mark(BarMarks marks) => _bars[^1] = _bars[^1] with { Marks = marks };

        private void CloseBar()
        {
            if (_words.Count == 0)
            {
                return;
            }
            if (_bars.Count == MostBars)
            {
                Fault(_words[0].At, ChordLineMessages.TooManyBars(MostBars));
            }
            if (_bars.Count < MostBars)
            {
                var chords = _words[0].Text == "%" ? BarBefore() : Chords();
                _bars.Add(
                    new TuneBar
                    {
                        Number = (_bars.Count + 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                        Metre = metre,
                        Key = default,
                        Length = metre.BarLength,
                        Chords = chords,
                        Marks = new BarMarks { RepeatStart = _starts },
                    }
                );
            }
            _starts = false;
            _words.Clear();
        }

        private ValueList<PlacedChord> BarBefore()
        {
            if (_words.Count > 1)
            {
                Fault(_words[1].At, ChordLineMessages.RepeatAmongOthers);
            }
            if (_bars.Count == 0)
            {
                Fault(_words[0].At, ChordLineMessages.NothingToRepeat);
                return [];
            }
            return _bars[^1].Chords;
        }

        private ValueList<PlacedChord> Chords()
        {
            var chords = new List<PlacedChord>();
            if (shares.Places(_words.Count) is not { } places)
            {
                Fault(_words[shares.Most].At, ChordLineMessages.TooManyInBar(_words.Count, shares.Most, metre));
                places = [.. _words.Select(_ => ScoreTime.Zero)];
            }
            for (var i = 0; i < _words.Count; i++)
            {
                if (ChordOf(_words[i]) is { } chord && (i == 0 || _words[i].Text != "."))
                {
                    chords.Add(new PlacedChord(places[i], chord));
                }
            }
            return chords.ToValueList();
        }

        private ChordSymbol? ChordOf((string Text, int At) word)
        {
            if (word.Text == ".")
            {
                if (_sounding is null)
                {
                    Fault(word.At, ChordLineMessages.NothingToHold);
                }
            }
            else if (word.Text == "%")
            {
                Fault(word.At, ChordLineMessages.RepeatAmongOthers);
            }
            else if (ChordText.TryParse(word.Text, out var chord))
            {
                _sounding = chord;
            }
            else
            {
                Fault(word.At, ChordLineMessages.NoChord(word.Text));
            }
            return _sounding;
        }

        private Tune Tune()
        {
            Mark(_bars[^1].Marks with { DoubleBarAfter = false, FinalBarAfter = true });
            return new Tune { Title = title, Bars = _bars.ToValueList() };
        }

        private void Fault(int? at, string message) =>
            _faults.Add(new Diagnostic(Severity.Error, at is { } index ? PlaceOf(index) : Place.Whole, message));

        private Place PlaceOf(int index)
        {
            var text = line.AsSpan(0, index);
            var column = index - (text.LastIndexOf('\n') + 1) + 1;
            return line.Contains('\n', StringComparison.Ordinal)
                ? Place.AtLine(text.Count('\n') + 1, column)
                : new Place(Column: column);
        }
    }
}
