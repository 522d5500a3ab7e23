using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>Sets a tune for the hands of a brief.</summary>
public static class Arranger
{
    /// <summary>Longest tune that is set, in bars as written and in bars of the setting.</summary>
    public const int MostBars = 4096;

    /// <summary>Most notes of a tune that is set: a thousand bars of sixteenths.</summary>
    public const int MostNotes = 16_384;

    /// <summary>Longest tune that is set, in whole notes.</summary>
    public const int MostWholes = 4096;

    private const int MostFittings = 4;

    /// <summary>
    /// Deterministic: the same tune and brief give the same arrangement. A tune that cannot be set as the brief wants is
    /// refused with the reason; nothing is given back that the judge has not passed.
    /// </summary>
    /// <exception cref="OperationCanceledException">When <paramref name="cancellation"/> is signalled.</exception>
    public static ArrangeResult Arrange(Tune tune, Brief brief, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(tune);
        ArgumentNullException.ThrowIfNull(brief);
        if (brief.Figures.Count > 0)
        {
            var result = Arrange(tune, brief with { Figures = [] }, cancellation);
            if (result.Arrangement is not { } done)
            {
                return result;
            }
            var with = OwnFigures.Preferred(done, brief.Figures, out var bars, cancellation);
            var put = FigureMessages.Put(bars.Select(i => with.Score.Bars[i].Number).ToList());
            var note = new Diagnostic(Severity.Note, Place.Whole, put);
            return result with { Arrangement = with with { Notes = [.. with.Notes, note] } };
        }
        if (brief is { MostEffort: { } ceiling, Settled: null })
        {
            return new EffortCeiling(b => Arrange(tune, b, cancellation)).Under(
                brief with
                {
                    MostEffort = null,
                },
                ceiling
            );
        }
        if (!tune.Bars.Any(b => b.Notes.Count > 0 || b.Chords.Any(c => !c.Chord.IsNoChord)))
        {
            return Refused(ArrangingMessages.NoNotes);
        }
        if (tune.Bars.Count > MostBars)
        {
            return Refused(ArrangingMessages.TooLong(tune.Bars.Count, MostBars));
        }
        var notes = tune.Bars.Sum(b => b.Notes.Count);
        var wholes = tune.Bars.Sum(b => b.Length.ToQuarters() / 4);
        if (notes > MostNotes || wholes > MostWholes)
        {
            return Refused(ArrangingMessages.TooMuch(notes, MostNotes, wholes, MostWholes));
        }
        tune = Unfolding.WithRepeatStarts(Unfolding.BySectionOrder(tune));
        if (brief.Form is { IsUsual: false } form && Forming.Fault(tune, form) is { } fault)
        {
            return Refused(fault);
        }
        if (brief.Singer is not null)
        {
            brief = brief with { Form = SungPiece.InOneOctave(brief.Form) };
            if (SungKey.Of(tune, brief, out var unsung) is not { } sung)
            {
                return Refused(unsung);
            }
            brief = brief with { Tonic = sung.Tonic };
        }
        if (Register.BeyondTheKeys(tune, brief.Tonic) is { } bar)
        {
            return Refused(ArrangingMessages.BeyondTheKeys, Place.AtBar(bar));
        }
        var metre = Feels.MainMetre(tune);
        var feel = brief.Feel ?? (brief.Singer is null ? Feels.For(metre) : Feels.UnderVoice(metre));
        return Feels.Fit(feel, metre)
            ? InTime(tune, brief, feel, metre, cancellation)
            : Refused(ArrangingMessages.FeelDoesNotFit(feel, metre));
    }

    // A setting that had to be slowed lasts longer than its form was chosen for: it is fitted again at that tempo.
    private static ArrangeResult InTime(Tune tune, Brief brief, Feel feel, Metre metre, CancellationToken cancellation)
    {
        double? pace = null;
        for (var attempt = 0; ; attempt++)
        {
            var result = new Setting(tune, brief, feel, metre, Prices.Standard, pace).Work(cancellation);
            if (brief.Seconds is not { } wanted || result.Arrangement is not { } done)
            {
                return result;
            }
            if (Math.Abs(done.Seconds - wanted) <= Fitting.Within)
            {
                return result;
            }
            if (attempt == MostFittings)
            {
                return Refused(FormMessages.Slow(wanted, done.Seconds));
            }
            pace = done.BeatsPerMinute;
        }
    }

    /// <summary>The tune as it stands before it is ragged: its sections in their order, every repeat's start marked, and
    /// back on the beat.</summary>
    public static Straightened Plain(Tune tune)
    {
        ArgumentNullException.ThrowIfNull(tune);
        return Straightening.Apply(Unfolding.WithRepeatStarts(Unfolding.BySectionOrder(tune)));
    }

    internal static ArrangeResult Refused(string why, Place? place = null) =>
        new(null, new Diagnostic(Severity.Error, place ?? Place.Whole, why));
}
