using Stridewright.Hands;
using Stridewright.Music;

namespace Stridewright.Arranging;

/// <summary>A finished setting.</summary>
public sealed record Arrangement
{
    public required Score Score { get; init; }

    /// <summary>The brief with everything settled that it left open.</summary>
    public required Brief Brief { get; init; }

    public required Feel Feel { get; init; }

    public required Key Key { get; init; }

    /// <summary>Printed tempo, in beats of <see cref="BeatUnit"/>.</summary>
    public required double BeatsPerMinute { get; init; }

    public required NoteValue BeatUnit { get; init; }

    /// <summary>Playing time in seconds, repeats included.</summary>
    public required double Seconds { get; init; }

    /// <summary>The judge's verdict; always playable.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Of the tune's notes in the score: all are 0 where the left hand stands alone.</summary>
    public required TuneKept Tune { get; init; }

    /// <summary>Lowest note of the voice, as it sounds; null: nobody sings.</summary>
    public Pitch? SungLowest { get; init; }

    /// <summary>Highest note of the voice.</summary>
    public Pitch? SungHighest { get; init; }

    /// <summary>The strains of its form one by one; empty where no form was asked for, and for the left hand
    /// alone.</summary>
    public ValueList<ChorusKept> Choruses { get; init; } = [];

    /// <summary>Tune, chords and bass line of the same setting; null: not asked for, or there is no tune.</summary>
    public Score? Sketch { get; init; }

    /// <summary>What was changed in the tune's harmony.</summary>
    public ValueList<HarmonyChange> HarmonyChanges { get; init; } = [];

    /// <summary>What was asked for and could not be played so.</summary>
    public ValueList<MannerFallen> FellBack { get; init; } = [];

    /// <summary>What was given up to stay within the effort wished.</summary>
    public ValueList<Concession> Conceded { get; init; } = [];

    /// <summary>What was chosen and what was given up, in sentences.</summary>
    public ValueList<Diagnostic> Notes { get; init; } = [];

    /// <summary>What was found, stage by stage.</summary>
    internal Solution? Solution { get; init; }
}

/// <summary>How the tune came through.</summary>
/// <param name="Notes">Notes of the tune.</param>
/// <param name="Kept">Of these, on top within one grid unit of their place, or where a device has put them.</param>
/// <param name="Early">Of the kept, anticipated.</param>
/// <param name="Late">Of the kept, delayed.</param>
/// <param name="Fillers">Right-hand onsets that are not the tune's.</param>
public sealed record TuneKept(int Notes, int Kept, int Early, int Late, int Fillers)
{
    /// <summary>Of the notes, left out because that was asked for.</summary>
    public int LeftOut { get; init; }

    /// <summary>Of the kept, under a line of the same hand or in the left thumb, as was asked for.</summary>
    public int Elsewhere { get; init; }
}

/// <summary>A manner that was asked for and could not be played in some of its bars.</summary>
/// <param name="Word">Of the manner, as in <see cref="Manners"/>.</param>
/// <param name="Asked">How many bars asked for it.</param>
/// <param name="Bars">Printed numbers of those that do otherwise.</param>
public sealed record MannerFallen(string Word, int Asked, ValueList<string> Bars);

/// <summary>What came of a brief: an arrangement, or the reason why there is none.</summary>
/// <param name="Arrangement">Null when refused.</param>
/// <param name="Refusal">The place, the limit and what would relax it; null when arranged.</param>
public sealed record ArrangeResult(Arrangement? Arrangement, Diagnostic? Refusal);
