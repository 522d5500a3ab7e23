using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>What came of a run.</summary>
public enum ArrangeOutcome
{
    AllWritten,
    SomeWritten,
    NothingWritten,

    /// <summary>A wish cannot be understood: nothing was begun.</summary>
    BadWish,
    Cancelled,
}

/// <summary>What a run did: the settings written and what failed. The object of <c>--json</c>.</summary>
public sealed record ArrangeReport
{
    public string Kind { get; } = "arrange";

    public required ArrangeOutcome Outcome { get; init; }

    /// <summary>Tunes whose every output stands on disk, in order.</summary>
    public ValueList<WrittenTune> Written { get; init; } = [];

    /// <summary>What failed and why, in order.</summary>
    public ValueList<Problem> Problems { get; init; } = [];
}

/// <summary>Why something was not done.</summary>
/// <param name="File">The input as it was named, or the wish.</param>
/// <param name="Tune">Number and title of the tune within a book; null for a whole file.</param>
/// <param name="Place">Line, bar or entry; empty when the whole is meant.</param>
/// <param name="Message">What is wrong and what to do.</param>
public sealed record Problem(string File, string? Tune, string Place, string Message);

/// <summary>Something worth telling about a tune that was done all the same.</summary>
/// <param name="Severity"><c>note</c> or <c>warning</c>.</param>
public sealed record Remark(string Severity, string Place, string Message);

/// <summary>One tune that was arranged and written.</summary>
public sealed record WrittenTune
{
    /// <summary>The input as it was named.</summary>
    public required string File { get; init; }

    /// <summary>Place in its book from 1; null when the file holds one tune.</summary>
    public int? Number { get; init; }

    public required string Title { get; init; }

    public required ValueList<WrittenFile> Outputs { get; init; }

    public required Setting Setting { get; init; }

    /// <summary>What the reader repaired or left out.</summary>
    public ValueList<Remark> Reading { get; init; } = [];

    /// <summary>What its level adds to the one before; null where levels were not asked for.</summary>
    public string? Adds { get; init; }

    /// <summary>Why each bar is as it is; empty where nobody asked.</summary>
    public ValueList<BarWhy> Reasons { get; init; } = [];
}

/// <summary>Why a bar, by its printed number, is as it is.</summary>
public sealed record BarWhy(string Bar, ValueList<Why> Reasons);

/// <summary>One reason.</summary>
/// <param name="Kind">What it is about, such as <c>bass</c> or <c>shift</c>.</param>
/// <param name="Hand"><c>right</c>, <c>left</c> or <c>both</c>.</param>
/// <param name="At">Place in the bar as a part of a whole note, such as <c>3/16</c>; <c>0</c> where the whole bar is meant.</param>
public sealed record Why(string Kind, string Hand, string At, string Message);

/// <param name="Unchanged">The file stood there already with the same bytes.</param>
public sealed record WrittenFile(string Path, long Bytes, bool Unchanged);

/// <summary>What the arranger chose and how hard it is.</summary>
public sealed record Setting
{
    public required string Feel { get; init; }

    /// <summary>Such as <c>F major</c>.</summary>
    public required string Key { get; init; }

    /// <summary>Such as <c>2/4</c>.</summary>
    public required string Metre { get; init; }

    public required double BeatsPerMinute { get; init; }

    /// <summary>The beat counted, such as <c>quarter</c> or <c>dotted quarter</c>.</summary>
    public required string Beat { get; init; }

    public required int LeftLevel { get; init; }

    public required int RightLevel { get; init; }

    /// <summary>The left hand stands alone; then nothing of the tune is counted in <see cref="Tune"/>.</summary>
    public bool LeftHandOnly { get; init; }

    public required double Raggedness { get; init; }

    public required int Seed { get; init; }

    public required HandsUsed Hands { get; init; }

    /// <summary>Written bars, pick-ups not counted.</summary>
    public required int Bars { get; init; }

    /// <summary>Playing time, repeats included.</summary>
    public required double Seconds { get; init; }

    public required TuneSurvival Tune { get; init; }

    /// <summary>The form in one line; null where the tune was set as it stands.</summary>
    public string? Form { get; init; }

    /// <summary>The strains of the form one by one.</summary>
    public ValueList<ChorusReport> Choruses { get; init; } = [];

    public required EffortReport Effort { get; init; }

    public ValueList<HardBar> HardestBars { get; init; } = [];

    /// <summary>Where the voice sings; null: the piano plays the tune. Then of <see cref="Tune"/> only the fillers are
    /// counted.</summary>
    public SungRange? Voice { get; init; }

    /// <summary>What was changed in the tune's harmony.</summary>
    public ValueList<ChangedHarmony> HarmonyChanges { get; init; } = [];

    /// <summary>What was chosen and given up.</summary>
    public ValueList<Remark> Remarks { get; init; } = [];
}

/// <summary>The voice's lowest and highest note as they sound, such as <c>C4</c> and <c>D5</c>.</summary>
public sealed record SungRange(string Lowest, string Highest);

/// <summary>Chords that stand for others from a bar of the tune on.</summary>
public sealed record ChangedHarmony(string Bar, string Kind, string Before, string After);

public sealed record HandsUsed(double SpanMm, double OctaveMm, bool NoOctaves)
{
    /// <summary>What else is said of the hands, in the words of a player file, such as <c>left-span 195</c>.</summary>
    public ValueList<string> Also { get; init; } = [];
}

/// <summary>How the tune came through, in notes of the tune; fillers are right-hand onsets that are not the tune's.</summary>
public sealed record TuneSurvival(int Notes, int Kept, int Early, int Late, int Fillers)
{
    /// <summary>Of the notes, left out because that was asked for.</summary>
    public int LeftOut { get; init; }

    /// <summary>Of the kept, put by a device elsewhere than on top.</summary>
    public int Elsewhere { get; init; }
}

/// <summary>Effort as Hands measures it; overall 1 to 100.</summary>
public sealed record EffortReport(double Overall, HandEffortReport Right, HandEffortReport Left)
{
    /// <summary>The overall effort in words, such as <c>asks for steady practice</c>.</summary>
    public string Words { get; init; } = "";
}

/// <summary>One hand's part: strokes and bits per second, shares 0 to 1.</summary>
public sealed record HandEffortReport(
    double StrokesPerSecond,
    double LeapBitsPerSecond,
    double StrainedShare,
    double MeanStretch
)
{
    /// <summary>The hand's own effort, 1 to 100.</summary>
    public double Value { get; init; } = 1;

    /// <summary>What it is made of: reach, strain, leap, density, repetition, independence, reading; empty for a hand that
    /// rests.</summary>
    public ValueList<EffortPartReport> Parts { get; init; } = [];
}

/// <summary>One part of a hand's effort.</summary>
/// <param name="Kind">Such as <c>leap</c>.</param>
/// <param name="Words">The same for a reader, such as <c>fast leaps</c>.</param>
/// <param name="Points">What it adds to the hand's effort.</param>
public sealed record EffortPartReport(string Kind, string Words, double Points);

/// <summary>A bar by its printed number and its effort, 1 to 100.</summary>
public sealed record HardBar(string Bar, double Effort);

/// <summary>One strain of a form.</summary>
/// <param name="Part">Its heading.</param>
/// <param name="Bar">Printed number of its first bar.</param>
/// <param name="Notes">Notes of the tune in it.</param>
/// <param name="Kept">Of these, on top near their place.</param>
/// <param name="RightDiffers">Share of the right hand's strokes that differ from when it was heard before; null: it was
/// not.</param>
/// <param name="LeftDiffers">The same of the left hand's.</param>
public sealed record ChorusReport(
    string Part,
    string Bar,
    int Notes,
    int Kept,
    double? RightDiffers,
    double? LeftDiffers
);
