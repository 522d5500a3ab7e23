using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// From the tune as it came to the lattice of its setting, tune to tune: back on the beat, into its key and register, with
/// its harmony, grown into its form.
/// </summary>
/// <param name="pace">Tempo that the setting was found to need; null: the one wanted.</param>
internal sealed class Planner(Tune written, Brief brief, Feel feel, Metre metre, double? pace = null)
{
    private readonly List<Diagnostic> _notes = [];
    private readonly bool _hasNotes = written.Bars.Any(b => b.Notes.Count > 0);

    /// <summary>The plan; its notes say what was chosen.</summary>
    public Plan Make()
    {
        if (!_hasNotes && !brief.LeftHandOnly)
        {
            Note(ArrangingMessages.NoNotesButChords);
        }
        var sung = brief.Singer is null ? null : SungKey.Of(written, brief, out _);
        var (tune, changes) = Enriched(Harmonised(InPlace(sung is null ? Straight(written) : written)));
        var fitted = Fitting.IsSettled(brief)
            ? new Fitted(brief.Form, pace)
            : new Fitting(tune, brief, feel, metre).Fit(pace);
        if (sung is not null && brief.Form is { IsUsual: true })
        {
            fitted = fitted with { Form = SungPiece.InOneKey(fitted.Form) };
        }
        var formed = Forming.Apply(tune, brief with { Form = fitted.Form });
        var piece = sung is null ? formed : formed.Accompanied();
        var lattice = Devising.Apply(LatticeReader.Read(piece, feel, keepsValues: sung is not null), brief);
        formed.Notes.Concat(Fitting.Remarks(brief.Form, fitted.Form)).ToList().ForEach(Note);
        if (!Feels.IsUsual(metre))
        {
            Note(ArrangingMessages.OtherMetre(metre));
        }
        if (lattice.IsDuple && _hasNotes)
        {
            Note(ArrangingMessages.Recast(lattice.Scale));
        }
        if (lattice.LostNotes > 0)
        {
            Note(ArrangingMessages.LostNotes(lattice.LostNotes));
        }
        var octaves = 0;
        if (sung is not null)
        {
            Note(SingingMessages.Sung(sung.Lowest, sung.Highest, brief.Singer?.Range));
            octaves = (sung.FromTune.Semitones - Register.For(written, brief.Tonic).Semitones) / 12;
        }
        return new Plan(piece, metre, lattice, changes, _notes.ToValueList())
        {
            Fitted = fitted,
            VoiceOctaves = octaves,
            Sung = sung,
        };
    }

    private Tune Straight(Tune tune)
    {
        var plain = Straightening.Apply(tune);
        if (plain.Moved > 0)
        {
            Note(ArrangingMessages.Straightened(plain.Moved));
        }
        return plain.Tune;
    }

    private Tune InPlace(Tune tune)
    {
        var interval = Register.For(tune, brief.Tonic);
        if (interval != Interval.Unison && _hasNotes)
        {
            Note(ArrangingMessages.Moved(interval));
        }
        return Register.Move(tune, interval);
    }

    private Tune Harmonised(Tune tune)
    {
        if (tune.Bars.Any(b => b.Chords.Any(c => !c.Chord.IsNoChord)))
        {
            return tune;
        }
        Note(ArrangingMessages.ChordsFound);
        return Harmonising.Apply(tune);
    }

    private (Tune Tune, ValueList<HarmonyChange> Changes) Enriched(Tune tune)
    {
        var enriched = Enriching.Apply(tune, brief.Harmony, feel);
        foreach (var change in enriched.Changes)
        {
            // In a form the tune's bars bear other numbers.
            var isAsWritten = Fitting.IsSettled(brief) && brief.Form is null;
            var place = Place.AtBar(isAsWritten ? change.Bar : ArrangingMessages.BarOfTune(change.Bar));
            _notes.Add(new Diagnostic(Severity.Note, place, ArrangingMessages.HarmonyChanged(change)));
        }
        return enriched;
    }

    private void Note(string message) => _notes.Add(new Diagnostic(Severity.Note, Place.Whole, message));
}

/// <summary>What is to be set.</summary>
/// <param name="Metre">The tune's main one.</param>
internal sealed record Plan(
    Piece Piece,
    Metre Metre,
    Lattice Lattice,
    ValueList<HarmonyChange> HarmonyChanges,
    ValueList<Diagnostic> Notes
)
{
    /// <summary>The form chosen and the tempo for it, or why there is none.</summary>
    public required Fitted Fitted { get; init; }

    /// <summary>Where the tune is sung; null: nobody sings.</summary>
    public SungKey? Sung { get; init; }

    /// <summary>Octaves from the piece's tune to the tune as sung.</summary>
    public int VoiceOctaves { get; init; }
}
