using System.Text.Json.Serialization;
using Stridewright.Music;

namespace Stridewright.Workbench.Reports;

/// <summary>A lesson file (docs/lesson-file.md). Bars are printed numbers; <c>firstIndex</c> and the like count the written bars
/// of the piece from 0. Tempi are beats a minute of <see cref="Beat"/>.</summary>
public sealed record LessonDocument
{
    public const int PresentVersion = 1;

    public string Kind { get; } = "lesson";

    public int Version { get; } = PresentVersion;

    public required string Title { get; init; }

    public string? Player { get; init; }

    /// <summary>Such as <c>quarter</c> or <c>dotted quarter</c>.</summary>
    public required string Beat { get; init; }

    public required double BeatsPerMinute { get; init; }

    /// <summary>Fastest tempo at which the whole is comfortable; null: it does not depend on the tempo.</summary>
    public double? ComfortableBeatsPerMinute { get; init; }

    /// <summary>1 to 100.</summary>
    public required double Effort { get; init; }

    /// <summary>The whole piece as a file beside this one.</summary>
    public required string Score { get; init; }

    public required ValueList<LessonStep> Steps { get; init; }

    public required ValueList<LessonSkipped> Skipped { get; init; }

    public required ValueList<LessonDrill> Drills { get; init; }

    public required ValueList<LessonDay> Days { get; init; }

    /// <summary>Ids of the steps that the days do not come to the end of.</summary>
    public required ValueList<string> Left { get; init; }

    public required ValueList<LessonLimit> Limits { get; init; }

    public required ValueList<LessonCaution> Cautions { get; init; }

    public required ValueList<string> Heard { get; init; }

    public required ValueList<string> Remarks { get; init; }
}

/// <param name="Hands"><c>left</c>, <c>right</c> or <c>together</c>.</param>
/// <param name="Kind">Such as <c>left-stride</c>.</param>
/// <param name="File">MusicXML beside the lesson file; null: it was not asked for.</param>
/// <param name="FromBeats">Tempo to begin with.</param>
/// <param name="ToBeats">Tempo of its test.</param>
/// <param name="Ladder">Tempi from the one to the other.</param>
/// <param name="Again">Share of the strokes of the step before, of the same hands, that stand again.</param>
public sealed record LessonStep(
    string Id,
    string Hands,
    string Kind,
    string Name,
    string Aim,
    string? File,
    string FirstBar,
    string LastBar,
    int FirstIndex,
    int LastIndex,
    double Effort,
    double Again,
    double FromBeats,
    double ToBeats,
    ValueList<double> Ladder,
    LessonTest Test,
    ValueList<string> After
);

/// <summary>So many clean takes in a row, in each of which this share of the notes is right and nothing is held up.</summary>
public sealed record LessonTest(int CleanTakes, double BeatsPerMinute, double LeastRight);

/// <summary>A step that this player does not need.</summary>
public sealed record LessonSkipped(string Id, string Name, string Why);

/// <param name="Kind">Such as <c>leap</c>.</param>
/// <param name="Hand"><c>left</c>, <c>right</c>; null: both.</param>
/// <param name="Bars">Printed numbers of the bars that it serves.</param>
/// <param name="BarIndexes">The same as indexes.</param>
/// <param name="Serves">Kinds of remarks that it answers, in the words of <c>compare --json</c>.</param>
/// <param name="Heard">Of these, those that takes showed in its bars.</param>
/// <param name="Step">Id of the first step that has its notes.</param>
public sealed record LessonDrill(
    string Id,
    string Kind,
    string? Hand,
    string Name,
    string Claim,
    ValueList<string> How,
    string Why,
    string? File,
    ValueList<string> Bars,
    ValueList<int> BarIndexes,
    ValueList<string> Serves,
    ValueList<string> Heard,
    double FromBeats,
    double ToBeats,
    double Effort,
    string Step
)
{
    /// <summary>The leap or change of chord; null for other kinds.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public LessonMove? Move { get; init; }
}

/// <summary>MIDI numbers, lowest first.</summary>
public sealed record LessonMove(ValueList<int> From, ValueList<int> To, int Semitones, int Times, double Seconds);

/// <param name="Number">From 1, which is today.</param>
public sealed record LessonDay(int Number, int Minutes, ValueList<LessonTask> Tasks);

/// <param name="Kind"><c>warm-up</c>, <c>step</c>, <c>test</c>, <c>drill</c>, <c>review</c>, <c>play-through</c> or
/// <c>break</c>.</param>
/// <param name="Item">Id of the step or drill; null for a break.</param>
/// <param name="Name">Its name; null for a break.</param>
public sealed record LessonTask(
    string Kind,
    int Minutes,
    string? Item,
    string? Name,
    double? BeatsPerMinute,
    string Words
);

/// <summary>A limit that the plan keeps.</summary>
public sealed record LessonLimit(string Words, double Value, string Unit, string Source);

/// <summary>What health asks for.</summary>
public sealed record LessonCaution(string Sentence, string Source);
