namespace Stridewright.Practice.Listening.Reporting;

/// <summary>The swing that a score asks for.</summary>
internal sealed class AskedSwing
{
    private readonly ExpectedScore _score;
    private readonly double[] _ratios;

    public AskedSwing(ExpectedScore score)
    {
        _score = score;
        _ratios = new double[Math.Max(1, score.Bars.Count)];
        var swing = 1.0;
        for (var i = 0; i < score.Bars.Count; i++)
        {
            foreach (var direction in score.Bars[i].Bar.Directions)
            {
                swing = direction.Swing is { Short: > 0 } s ? (double)s.Long / s.Short : swing;
            }
            _ratios[i] = swing;
        }
        _ratios[0] = score.Bars.Count == 0 ? 1 : _ratios[0];
    }

    /// <summary>Long to short as asked in a bar; what is asked holds until it changes.</summary>
    public double Of(int bar) => _ratios[bar];

    /// <summary>Quarters from the beginning of the full bar that a note's bar is, or is the end of.</summary>
    public double PlaceOf(int bar, Music.ScoreTime at)
    {
        var written = _score.Bars[bar].Bar;
        var missing = written.Implicit ? Math.Max(0, (written.Metre.BarLength - written.Length).ToQuarters()) : 0;
        return at.ToQuarters() + missing;
    }

    /// <summary>Where a note is to be struck, in quarters from the first note: the right hand's half beats, and what lies
    /// between them, are swung, the left hand is straight.</summary>
    public double BeatsOf(ExpectedNote note)
    {
        var ratio = Of(note.Bar);
        if (ratio <= 1 || note.Hand == Music.Hand.Left)
        {
            return note.Beats;
        }
        var place = PlaceOf(note.Bar, note.At);
        var inBeat = place - Math.Floor(place);
        var turn = ratio / (1 + ratio);
        var swung = inBeat < 0.5 ? 2 * inBeat * turn : turn + 2 * (inBeat - 0.5) * (1 - turn);
        return note.Beats + swung - inBeat;
    }
}
