using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Stridewright.Music;
using Stridewright.Practice.Lessons;
using Stridewright.Workbench.Reports;

namespace Stridewright.Workbench;

/// <summary>Puts a lesson into the plain words and numbers of a lesson file.</summary>
internal static class LessonDocumentOf
{
    private static readonly LessonJsonContext Context = new(
        new JsonSerializerOptions(LessonJsonContext.Default.Options)
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    public static byte[] Bytes(LessonDocument document) =>
        JsonSerializer.SerializeToUtf8Bytes(document, Context.LessonDocument);

    /// <param name="score">File of the whole piece.</param>
    /// <param name="fileOf">File of a step or drill by its id; null: none is written.</param>
    public static LessonDocument Lesson(Lesson lesson, string score, Func<string, string?> fileOf)
    {
        var names = lesson
            .Steps.Select(s => (s.Id, s.Name))
            .Concat(lesson.Drills.Select(d => (d.Id, d.Name)))
            .ToDictionary(x => x.Id, x => x.Name);
        return new()
        {
            Title = lesson.Title,
            Player = lesson.Player,
            Beat = LessonMessages.BeatName(lesson.Beat),
            BeatsPerMinute = Rounded(lesson.BeatsPerMinute),
            ComfortableBeatsPerMinute = lesson.ComfortableBeats,
            Effort = Rounded(lesson.Effort),
            Score = score,
            Steps = lesson.Steps.Select(s => Step(s, lesson.Goal, fileOf(s.Id))).ToValueList(),
            Skipped = lesson.Skipped.Select(s => new LessonSkipped(s.Step.Id, s.Step.Name, s.Why)).ToValueList(),
            Drills = lesson.Drills.Select(d => Drill(d, lesson.Goal, fileOf(d.Id))).ToValueList(),
            Days = lesson
                .Plan.Days.Select(d => new LessonDay(
                    d.Number,
                    d.Minutes,
                    d.Tasks.Select(t => new LessonTask(
                            Kebab(t.Kind),
                            t.Minutes,
                            t.Item,
                            t.Item is { } item ? names[item] : null,
                            t.BeatsPerMinute,
                            t.Words
                        ))
                        .ToValueList()
                ))
                .ToValueList(),
            Left = lesson.Plan.Left,
            Limits = lesson.Plan.Limits.Select(l => new LessonLimit(l.Words, l.Value, l.Unit, l.Source)).ToValueList(),
            Cautions = lesson.Cautions.Select(c => new LessonCaution(c.Sentence, c.Source)).ToValueList(),
            Heard = lesson.Heard,
            Remarks = lesson.Remarks,
        };
    }

    private static LessonStep Step(PathStep step, Score goal, string? file) =>
        new(
            step.Id,
            LessonMessages.WordOf(step.Hands),
            Kebab(step.Kind),
            step.Name,
            step.Aim,
            file,
            goal.Bars[step.First].Number,
            goal.Bars[step.Last].Number,
            step.First,
            step.Last,
            Rounded(step.Effort),
            Math.Round(step.Again, 3),
            step.Tempo.From,
            step.Tempo.To,
            step.Tempo.Ladder,
            new(step.Test.CleanTakes, step.Test.BeatsPerMinute, step.Test.LeastRight),
            step.After
        );

    private static LessonDrill Drill(Drill drill, Score goal, string? file) =>
        new(
            drill.Id,
            LessonMessages.WordOf(drill.Kind),
            drill.Hand is { } hand ? (hand == Hand.Left ? "left" : "right") : null,
            drill.Name,
            drill.Claim,
            drill.How,
            drill.Why,
            file,
            drill.Bars.Select(b => goal.Bars[b].Number).ToValueList(),
            drill.Bars,
            drill.Serves.Select(HeardOf.KindOf).ToValueList(),
            drill.Heard.Select(HeardOf.KindOf).ToValueList(),
            drill.Tempo.From,
            drill.Tempo.To,
            Rounded(drill.Effort),
            drill.Step
        )
        {
            Move = drill.Move is { } m ? new(m.From, m.To, m.Semitones, m.Times, m.Seconds) : null,
        };

    private static string Kebab<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(value.ToString());

    private static double Rounded(double value) => Math.Round(value, 1);
}

[JsonSourceGenerationOptions(
    GenerationMode = JsonSourceGenerationMode.Metadata,
    WriteIndented = true,
    NewLine = "\n",
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase
)]
[JsonSerializable(typeof(LessonDocument))]
internal sealed partial class LessonJsonContext : JsonSerializerContext;
