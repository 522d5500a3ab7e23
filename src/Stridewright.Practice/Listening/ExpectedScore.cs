using Stridewright.Music;

namespace Stridewright.Practice.Listening;

/// <summary>One note that a score asks for, in the order in which it is played.</summary>
/// <param name="Id">Of the score, else made of part, bar, voice and place (<see cref="ExpectedScore"/>).</param>
/// <param name="Beats">Onset in quarters from the first note of the unfolded score.</param>
/// <param name="Key">MIDI note number.</param>
/// <param name="Bar">Index among <see cref="ExpectedScore.Bars"/>.</param>
/// <param name="At">Place in its bar.</param>
/// <param name="Length">Sounding length in quarters, ties merged; 0 for a grace note.</param>
public sealed record ExpectedNote(string Id, double Beats, int Key, Hand Hand, int Bar, ScoreTime At, double Length)
{
    /// <summary>Place before the note it leads to, 1 the last; 0: no grace note. <see cref="Beats"/> is that of its
    /// principal.</summary>
    public int Grace { get; init; }

    public bool Rolled { get; init; }

    public bool Accent { get; init; }

    /// <summary>More may be struck than is written.</summary>
    public bool Ornamented { get; init; }
}

/// <summary>One bar as it is played.</summary>
/// <param name="Written">Index of the bar in the score.</param>
/// <param name="Start">Quarters from the first note; negative where that is not the bar's first moment.</param>
public sealed record ExpectedBar(NotesBar Bar, int Written, double Start)
{
    public double End => Start + Bar.Length.ToQuarters();
}

/// <summary>
/// What a score asks to be played: repeats and endings unfolded, ties merged, notes by onset, then hand (right first), then
/// key. A note without an id is called by its written bar, counted from 1, its voice and its place among that voice's notes,
/// such as <c>m12-v1-3</c>; a repeated bar's notes keep their ids.
/// </summary>
public sealed record ExpectedScore
{
    private const double SameMoment = 1e-6; // quarters; places are exact until they become numbers

    public required string Title { get; init; }

    public required ValueList<ExpectedNote> Notes { get; init; }

    /// <summary>Bars in playing order.</summary>
    public required ValueList<ExpectedBar> Bars { get; init; }

    public static ExpectedScore Of(ScoreNotes score)
    {
        ArgumentNullException.ThrowIfNull(score);
        return ScoreUnfolding.Of(score);
    }

    /// <summary>The same notes in one hand alone.</summary>
    public ExpectedScore In(Hand hand) => this with { Notes = Notes.Where(n => n.Hand == hand).ToValueList() };

    /// <summary>The notes of bars in playing order.</summary>
    public ExpectedScore Within(Func<ExpectedBar, bool> isWanted) =>
        this with
        {
            Notes = Notes.Where(n => isWanted(Bars[n.Bar])).ToValueList(),
        };

    internal static bool AreTogether(double a, double b) => Math.Abs(a - b) < SameMoment;
}
