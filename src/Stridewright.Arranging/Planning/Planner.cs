using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>
/// From the tune as it came to the lattice of its setting, tune to tune: back on the beat, into its key and register, with
/// its harmony, grown into its form.
/// </summary>
internal sealed class Planner(Tune written, Brief brief, Feel feel, Metre metre)
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
        var (tune, changes) = Enriched(Harmonised(InPlace(Straight(written))));
        var piece = Forming.Apply(tune, brief.Form);
        var lattice = Devising.Apply(LatticeReader.Read(piece, feel), brief);
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
        return new Plan(piece, lattice, changes, _notes.ToValueList());
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
            _notes.Add(
                new Diagnostic(Severity.Note, Place.AtBar(change.Bar), ArrangingMessages.HarmonyChanged(change))
            );
        }
        return enriched;
    }

    private void Note(string message) => _notes.Add(new Diagnostic(Severity.Note, Place.Whole, message));
}

/// <summary>What is to be set.</summary>
internal sealed record Plan(
    Piece Piece,
    Lattice Lattice,
    ValueList<HarmonyChange> HarmonyChanges,
    ValueList<Diagnostic> Notes
);
